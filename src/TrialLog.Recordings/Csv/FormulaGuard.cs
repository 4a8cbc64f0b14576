using System.Text.RegularExpressions;

namespace TrialLog.Recordings.Csv;

/// <summary>
/// Text that a spreadsheet would run as a formula (it begins with = + - @, also in their full-width forms, a tab or a line break) is
/// written with an apostrophe before it, which spreadsheets take as "this is text". Reading takes one apostrophe off again. Text that
/// already begins with apostrophes and then such a character gets one more, so nothing is lost either way.
/// The characters are those of the OWASP page on CSV injection.
/// </summary>
public static partial class FormulaGuard
{
    [GeneratedRegex(@"\A'*[=+\-@\t\r\n＝＋－＠]", RegexOptions.CultureInvariant)]
    private static partial Regex Runs();

    /// <summary>The text as it is put in a cell.</summary>
    public static string Guard(string text) => Runs().IsMatch(text) ? "'" + text : text;

    /// <summary>The text that a cell stands for.</summary>
    public static string Undo(string cell) => cell.StartsWith('\'') && Runs().IsMatch(cell) ? cell[1..] : cell;
}
