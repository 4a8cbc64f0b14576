using Terminal.Gui.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;

namespace TrialLog.Screens.Paint;

/// <summary>Breaks text at spaces, never between a number and its unit.</summary>
internal static class WordWrap
{
    /// <summary>As <see cref="Lines"/>, but where that is more than so many rows only the sentences that are whole within them.</summary>
    public static IReadOnlyList<string> Sentences(string text, int width, int rows)
    {
        IReadOnlyList<string> lines = Lines(text, width);
        for (int end = text.Length; lines.Count > rows && end > 0;)
        {
            end = Math.Max(0, text.LastIndexOf(". ", end - 1, StringComparison.Ordinal));
            lines = Lines(end == 0 ? "" : text[..(end + 1)], width);
        }

        return lines;
    }

    /// <summary>The text in lines of at most so many columns; line breaks in it are kept.</summary>
    public static IReadOnlyList<string> Lines(string text, int width)
    {
        width = Math.Max(8, width);
        var lines = new List<string>();
        foreach (string paragraph in text.Split('\n'))
        {
            string indent = paragraph[..(paragraph.Length - paragraph.TrimStart(' ').Length)];
            lines.AddRange(Application.Wording.Lines.Of(paragraph, width - indent.Length, part => part.GetColumns())
                .Select(line => indent + line));
        }

        return lines;
    }
}
