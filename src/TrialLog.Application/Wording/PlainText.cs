using System.Text;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Wording;

/// <summary>Text that somebody typed, made fit to stand in a page among our own sentences.</summary>
internal static class PlainText
{
    private const char FirstStrongIsolate = '\u2068', PopDirectionalIsolate = '\u2069', Replacement = '\uFFFD';

    /// <summary>
    /// One line: control and direction-changing characters replaced, and text with letters that run from right to left
    /// isolated, so that it cannot reorder what stands beside it.
    /// </summary>
    public static string Line(string? text)
    {
        string visible = Paired(Quoted.Visible(text));
        return visible.EnumerateRunes().Any(RunsLeftwards) ? FirstStrongIsolate + visible + PopDirectionalIsolate : visible;
    }

    /// <summary>
    /// Whether a terminal may be driven, or its text turned round, by that character; line ends and tabs are none of these.
    /// </summary>
    public static bool DrivesATerminal(char c) =>
        (char.IsControl(c) && c is not ('\n' or '\r' or '\t')) || c is >= '\u202A' and <= '\u202E' or '\u2066' or '\u2067';

    /// <summary>As <see cref="Line"/>, keeping the line breaks.</summary>
    public static string Lines(string? text) =>
        string.Join('\n', (text ?? "").ReplaceLineEndings("\n").Split('\n').Select(Line));

    /// <summary>
    /// The text with every character that no page may hold replaced: controls but the line feed, changes of direction but
    /// the isolates that <see cref="Line"/> puts, and halves of pairs.
    /// </summary>
    public static string Permitted(string text) => string.Concat(Paired(text).Select(c =>
        (char.IsControl(c) && c != '\n') || c is >= '\u202A' and <= '\u202E' or '\u2066' or '\u2067' or >= '\uFFFE' ? Replacement : c));

    // Runes decode a lone surrogate to the replacement character.
    private static string Paired(string text) => string.Concat(text.EnumerateRunes());

    // Hebrew, Arabic, Syriac, Thaana, N'Ko and their presentation forms, and the right-to-left blocks of the first plane.
    private static bool RunsLeftwards(Rune rune) => rune.Value is
        >= 0x0590 and <= 0x08FF or 0x200F or >= 0xFB1D and <= 0xFDFF or >= 0xFE70 and <= 0xFEFF
        or >= 0x10800 and <= 0x10FFF or >= 0x1E800 and <= 0x1EFFF;
}
