using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Formats;

/// <summary>What a recording says was done.</summary>
internal static class Sports
{
    private static readonly HashSet<string> Ashore = new(StringComparer.OrdinalIgnoreCase)
    {
        "running", "run", "biking", "cycling", "ride", "swimming", "walking", "walk", "skiing", "mountaineering", "hiking", "hike",
            "flying", "motorcycling", "driving",
    };

    /// <summary>The word, in lower case; null for none, and for <c>other</c>.</summary>
    public static string? Of(ReadOnlySpan<char> text) =>
        text.Trim() is var word && (word.Length is 0 or > 40 || word.Equals("other", StringComparison.OrdinalIgnoreCase)) ? null
            : word.ToString().ToLowerInvariant();

    /// <summary>Whether it is surely no paddling.</summary>
    public static bool IsNoPaddling(string? sport) => sport is not null && Ashore.Contains(sport);
}
