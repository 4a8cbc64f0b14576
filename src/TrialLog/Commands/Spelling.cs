using TrialLog.Application.Text;

namespace TrialLog.Commands;

/// <summary>How values are spelled in options: <c>none</c> clears what can be cleared.</summary>
internal static class Spelling
{
    /// <summary>What clears a value.</summary>
    public const string None = "none";

    /// <summary>Whether a value is to be cleared.</summary>
    public static bool IsNone(string? text) => string.Equals(text?.Trim(), None, StringComparison.OrdinalIgnoreCase);

    /// <summary>The text after an option was given: unchanged without it, null for <c>none</c>.</summary>
    public static string? Changed(string? text, string? before) => text is null ? before : IsNone(text) ? null : text;

    /// <summary>The value after an option was given: unchanged without it, null for <c>none</c>.</summary>
    public static T? Changed<T>(string? text, T? before, TextForm<T> form)
        where T : struct => text is null ? before : IsNone(text) ? null : form.Read(text);
}
