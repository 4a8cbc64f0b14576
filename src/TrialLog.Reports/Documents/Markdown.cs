using System.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Pictures;

namespace TrialLog.Reports.Documents;

/// <summary>Writes a document as CommonMark with pipe tables. Text is escaped, so that none of it can become markup.</summary>
internal static class Markdown
{
    private const string Special = "\\`*_[]<>|#~&!$^";

    /// <summary>Writes the page.</summary>
    public static string Write(Document document)
    {
        var page = new StringBuilder();
        page.Append("# ").Append(OneLine(document.Title)).Append("\n\n").Append(Escaped(document.Subtitle)).Append('\n');
        foreach (Section section in document.All)
        {
            page.Append("\n## ").Append(OneLine(section.Heading)).Append('\n');
            foreach (Block block in section.Blocks.SelectMany(block => block.OneByOne))
                page.Append('\n').Append(Of(block)).Append('\n');
        }

        return page.Append("\n---\n\n").Append(Escaped(document.Footer)).Append('\n').ToString();
    }

    private static string Of(Block block) => block switch
    {
        Paragraph { Answers: true } answer => $"**{Escaped(answer.Text)}**",
        Paragraph paragraph => Escaped(paragraph.Text),
        Subheading subheading => $"### {OneLine(subheading.Text)}",
        Facts facts =>
            Lines(facts.Items, fact => $"- {OneLine(fact.Label)}: " +
            $"**{OneLine(fact.Value)}**{(fact.Meaning is { } meaning ? $" ({OneLine(meaning)})" : "")}"),
        Bullets bullets => Lines(bullets.Items, item => $"- {OneLine(item)}"),
        Table table => Of(table),
        Figure figure => $"*{OneLine(figure.Picture.Title)}.* {Escaped(figure.Picture.Description)}",
        Quotation quotation =>
            Lines(PlainText.Permitted(quotation.Text).Split('\n'), line => $"> {Escaped(line)}  ") + $"\n> — {OneLine(quotation.By)}",
        LargeLengths lengths => Lines(lengths.Items.Select((length, at) => $"{at + 1}. {OneLine(length)}"), line => line),
        Cards cards => string.Join("\n\n", cards.Items.Select(Of)),
        _ => throw new ArgumentException($"No Markdown for {block.GetType().Name}.", nameof(block)),
    };

    private static string Of(Table table)
    {
        var lines = new List<string>
        {
            Row(table.Columns.Select(column => OneLine(column.Name))),
            "|" + string.Concat(table.Columns.Select(column => column.Number ? " ---: |" : " --- |")),
        };
        lines.AddRange(table.Rows.Select(row => Row(row.Select(cell => Escaped(cell, "<br>")))));
        return $"{Escaped(table.Caption)}\n\n{string.Join('\n', lines)}";

        static string Row(IEnumerable<string> cells) => $"| {string.Join(" | ", cells)} |";
    }

    private static string Of(CardToFill card) =>
        $"### {OneLine(card.Heading)}\n\n"
        + (card.Caution is { } caution ? $"**{Escaped(caution)}**\n\n" : "")
        + $"{Escaped(card.Plan)}\n\n"
        + Lines(card.Lengths.Select((length, at) => (length, at)), piece => $"{piece.at + 1}. {OneLine(piece.length)}")
        + $"\n\n{Escaped(card.Reason)}";

    private static string Lines<T>(IEnumerable<T> items, Func<T, string> line) => string.Join('\n', items.Select(line));

    private static string OneLine(string text) => Escaped(text, " ");

    private static string Escaped(string text, string lineBreak = "  \n")
    {
        var escaped = new StringBuilder(text.Length + 16);
        foreach (string line in PlainText.Permitted(text).Split('\n'))
        {
            if (escaped.Length > 0)
                escaped.Append(lineBreak);
            AppendLine(escaped, line.TrimStart());
        }

        return escaped.ToString();
    }

    private static void AppendLine(StringBuilder escaped, string line)
    {
        for (int i = 0; i < line.Length; i++)
        {
            // At the start of a line these open a list or underline a heading; a digit's point or bracket opens a numbered list.
            bool opens = (i == 0 && line[i] is '-' or '+' or '=')
                || (line[i] is '.' or ')' && i is > 0 and < 10 && line.AsSpan(0, i).IndexOfAnyExceptInRange('0', '9') < 0
                    && (i + 1 == line.Length || line[i + 1] == ' '));
            if (opens || Special.Contains(line[i]))
                escaped.Append('\\');
            escaped.Append(line[i]);
        }
    }
}
