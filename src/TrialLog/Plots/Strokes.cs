using System.Text;
using TrialLog.Domain.Values;

namespace TrialLog.Plots;

/// <summary>Which glyphs a terminal can show.</summary>
internal enum Strokes
{
    /// <summary>Braille dots, quarter and eighth blocks, line drawing.</summary>
    Fine,

    /// <summary>Seven-bit characters only.</summary>
    Ascii,
}

/// <summary>Finds out which glyphs a terminal can show, and puts words into them.</summary>
internal static class StrokesOf
{
    /// <summary>
    /// What the environment asks for: fine where the locale speaks UTF-8, ASCII elsewhere and on the bare Linux console,
    /// whose font has no Braille. <c>TRIALLOG_ASCII=1</c> forces ASCII.
    /// </summary>
    public static Strokes Environment(Func<string, string?> variable)
    {
        if (variable("TRIALLOG_ASCII") is { Length: > 0 } forced && forced != "0")
            return Strokes.Ascii;
        if (variable("TERM") is "linux" or "dumb" or "vt100" or "vt220")
            return Strokes.Ascii;
        return OperatingSystem.IsWindows() || SpeaksUtf8(Locale(variable)) ? Strokes.Fine : Strokes.Ascii;
    }

    /// <summary>
    /// As <see cref="Environment"/>, for sentences: what goes to a file or a pipe is UTF-8 unless the locale or <c>TRIALLOG_ASCII</c> says
    /// otherwise.
    /// </summary>
    public static Strokes Sentences(Func<string, string?> variable, bool isTerminal) =>
        isTerminal || variable("TRIALLOG_ASCII") is { Length: > 0 } ? Environment(variable)
            : OperatingSystem.IsWindows() || Locale(variable) is not { } locale || SpeaksUtf8(locale) ? Strokes.Fine : Strokes.Ascii;

    private static string? Locale(Func<string, string?> variable) =>
        new[] { "LC_ALL", "LC_CTYPE", "LANG" }.Select(variable).FirstOrDefault(value => !string.IsNullOrEmpty(value));

    private static bool SpeaksUtf8(string? locale) =>
        locale?.Replace("-", "", StringComparison.Ordinal).Contains("utf8", StringComparison.OrdinalIgnoreCase) == true;

    /// <summary>The text with every glyph that this terminal may lack written in others.</summary>
    public static string Write(this Strokes strokes, string text)
    {
        if (strokes == Strokes.Fine || text.All(char.IsAscii))
            return text;
        var plain = new StringBuilder(text.Length);
        // A letter that is lost keeps at least its letter without the accent.
        foreach (char glyph in Accents.Decompose(text))
        {
            // 49¾ would become 493/4.
            if (glyph is '¼' or '½' or '¾' or '⅛' or '⅜' or '⅝' or '⅞' && plain.Length > 0 && char.IsAsciiDigit(plain[^1]))
                plain.Append(' ');
            plain.Append(char.IsAscii(glyph) ? glyph.ToString() : InAscii(glyph));
        }

        return plain.ToString();
    }

    private static string InAscii(char glyph) => glyph switch
    {
        '¼' => "1/4",
        '½' => "1/2",
        '¾' => "3/4",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '–' or '—' or '−' or '─' or '╌' => "-",
        '━' => "=",
        '…' => "...",
        '·' or '•' or '∙' => ".",
        '×' => "x",
        '±' => "+/-",
        '“' or '”' => "\"",
        '‘' or '’' => "'",
        '│' or '┃' => "|",
        '└' or '┴' or '┤' or '├' or '┼' => "+",
        '░' or '▒' => "~",
        '◆' => "*",
        '▲' => "^",
        '▼' => "v",
        '▸' or '►' or '→' => ">",
        '◂' or '◄' or '←' => "<",
        '↑' => "^",
        '↓' => "v",
        '✓' => "+",
        '✗' => "x",
        '²' => "2",
        '³' => "3",
        '≤' => "<=",
        '≥' => ">=",
        '°' => "deg",
        '█' => "#",
        '▘' => "o",
        '○' => "0",
        '┄' => ":",
        '◖' => "(",
        '┠' => "T",
        '\u00A0' => " ",
        '\u2068' or '\u2069' or (>= '\u0300' and <= '\u036F') => "",
        _ => "?",
    };
}
