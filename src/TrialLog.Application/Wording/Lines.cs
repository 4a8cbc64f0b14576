using System.Text;
using System.Text.RegularExpressions;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Wording;

/// <summary>Breaks text into lines; a number is never parted from its fraction or its unit.</summary>
internal static partial class Lines
{
    private const char NoBreak = '\u00A0';

    [GeneratedRegex(
        @"(?<=[0-9]) (?=[0-9]+/[0-9])|(?<=[0-9¼½¾⅛⅜⅝⅞]) (?=(?:in|cm|mm|km|m|ft|mi|s|min|h|%|/km)(?![\p{L}/]))|(?<=\bh) (?=[0-9]+ ?min\b)",
        RegexOptions.CultureInvariant)]
    private static partial Regex InsideQuantity();

    /// <summary>The text with a no-break space between each number and its unit, for pages that break lines themselves.</summary>
    public static string Glued(string text) => InsideQuantity().Replace(text, NoBreak.ToString());

    /// <summary>The words of a text, a number and its unit being one word.</summary>
    public static IEnumerable<string> Words(string text) =>
        Glued(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word.Replace(NoBreak, ' '));

    /// <summary>
    /// The text in lines of at most <paramref name="width"/> columns, a word that is longer on a line of its own; at least one line.
    /// </summary>
    /// <param name="text">The text; its own line breaks count as blanks.</param>
    /// <param name="width">Columns.</param>
    /// <param name="cells">How many columns a text takes; null counts characters.</param>
    public static IReadOnlyList<string> Of(string text, int width, Func<string, int>? cells = null)
    {
        cells ??= static part => part.Length;
        var lines = new List<string>();
        var line = new StringBuilder();
        int used = 0;
        foreach (string word in Words(text.ReplaceLineEndings(" ")))
        {
            int wide = cells(word);
            if (line.Length > 0 && used + 1 + wide > width)
            {
                lines.Add(line.ToString());
                line.Clear();
                used = 0;
            }

            if (line.Length > 0)
            {
                line.Append(' ');
                used++;
            }

            line.Append(word);
            used += wide;
        }

        lines.Add(line.ToString());
        return lines;
    }
}
