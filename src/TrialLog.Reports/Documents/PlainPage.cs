using System.Globalization;
using System.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Pictures;

namespace TrialLog.Reports.Documents;

/// <summary>Writes a document as plain text for a terminal or a plain printer.</summary>
internal static class PlainPage
{
    private const int Width = 80, NarrowestColumn = 4;

    /// <summary>Writes the page.</summary>
    public static string Write(Document document)
    {
        var page = new StringBuilder();
        page.Append(Wrapped(document.Title)).Append(Wrapped(document.Subtitle));
        foreach (Section section in document.All)
        {
            page.Append('\n').Append(Clean(section.Heading).ToUpperInvariant()).Append('\n');
            foreach (Block block in section.Blocks.SelectMany(block => block.OneByOne))
                page.Append(Of(block));
        }

        return page.Append('\n').Append(Wrapped(document.Footer)).ToString();
    }

    private static string Of(Block block) => block switch
    {
        Paragraph paragraph => Wrapped(paragraph.Text),
        Subheading subheading => "\n" + Wrapped(subheading.Text),
        Facts facts =>
            string.Concat(
            facts.Items.Select(fact => Wrapped($"{fact.Label}: {fact.Value}{(fact.Meaning is { } meaning ? $" ({meaning})" : "")}"))),
        Bullets bullets => string.Concat(bullets.Items.Select(item => Wrapped(item, bullets.Warn ? "! " : "- "))),
        Table table => Of(table),
        Figure figure => Wrapped($"{figure.Picture.Title}: {figure.Picture.Description}"),
        Quotation quotation => Wrapped(quotation.Text, "  ") + Wrapped($"({quotation.By})", "  "),
        LargeLengths lengths => string.Concat(lengths.Items.Select((length, at) => $"  {at + 1}. {Clean(length)}\n")),
        Cards cards => string.Concat(cards.Items.Select(Of)),
        _ => throw new ArgumentException($"No plain text for {block.GetType().Name}.", nameof(block)),
    };

    private static string Of(CardToFill card) =>
        "\n" + Wrapped(card.Heading) + (card.Caution is { } caution ? Wrapped(caution, "! ") : "") + Wrapped(card.Plan, "  ")
        + string.Concat(card.Lengths.Select((length, at) => $"  {at + 1}. {Clean(length),-12} time ________  effort ____  sore ____\n"))
        + Wrapped(card.Reason, "  ");

    // Where a table is too wide, its last column, if of words, goes on a line below each row, and cells break into lines.
    private static string Of(Table table)
    {
        string[] headings = [.. table.Columns.Select(column => Clean(column.Name))];
        List<string[]> rows = [.. table.Rows.Select(row => row.Select(cell => Clean(cell.Replace('\n', ';'))).ToArray())];
        int[] widths = [.. headings.Select((heading, at) => Math.Max(Cells(heading), Widest(rows, at)))];
        bool lastBelow = Total(widths) > Width && !table.Columns[^1].Number;
        if (lastBelow)
            widths = [.. headings[..^1].Select((heading, at) => Math.Max(heading.Split(' ').Max(Cells), Widest(rows, at)))];
        while (Total(widths) > Width && widths.Max() > NarrowestColumn)
            widths[Array.IndexOf(widths, widths.Max())]--;

        var text = new StringBuilder(Beside(headings, widths, table.Columns));
        foreach (string[] row in rows)
        {
            text.Append(Beside(row, widths, table.Columns));
            if (lastBelow && row[^1] != Say.Nothing)
                text.Append(Wrapped($"{headings[^1]}: {row[^1]}", "    "));
        }

        return text.ToString();
    }

    private static int Widest(List<string[]> rows, int column) => rows.Select(row => Cells(row[column])).DefaultIfEmpty(0).Max();

    private static int Total(int[] widths) => widths.Sum() + 2 * (widths.Length - 1);

    private static string Beside(string[] row, int[] widths, IReadOnlyList<Column> columns)
    {
        List<string>[] cells = [.. widths.Select((width, at) => Lines(row[at], width))];
        var text = new StringBuilder();
        for (int line = 0; line < cells.Max(cell => cell.Count); line++)
            text.Append(
                string.Join("  ", cells.Select((cell, at) => Padded(line < cell.Count ? cell[line] : "", widths[at], columns[at].Number)))
                .TrimEnd()).Append('\n');
        return text.ToString();
    }

    private static string Padded(string cell, int width, bool right)
    {
        string room = new(' ', width - Cells(cell));
        return right ? room + cell : cell + room;
    }

    // Counts what a reader sees as characters, so that accents and joined emoji keep columns straight where a terminal allows it.
    private static int Cells(string text) => new StringInfo(text).LengthInTextElements;

    private static string Wrapped(string text, string lead = "")
    {
        var wrapped = new StringBuilder();
        string indent = lead;
        foreach (string line in PlainText.Permitted(text).Split('\n').SelectMany(paragraph => Lines(paragraph, Width - lead.Length)))
        {
            wrapped.Append((indent + line).TrimEnd()).Append('\n');
            indent = new string(' ', lead.Length);
        }

        return wrapped.ToString();
    }

    // At least one line, however empty.
    private static List<string> Lines(string text, int width)
    {
        List<string> lines = [""];
        foreach (string word in Application.Wording.Lines.Words(Clean(text)).SelectMany(word => Broken(word, width)))
        {
            if (lines[^1].Length > 0 && Cells(lines[^1]) + 1 + Cells(word) > width)
                lines.Add("");
            lines[^1] += lines[^1].Length > 0 ? " " + word : word;
        }

        return lines;
    }

    private static IEnumerable<string> Broken(string word, int width)
    {
        var characters = new StringInfo(word);
        for (int from = 0; from < characters.LengthInTextElements; from += width)
            yield return characters.SubstringByTextElements(from, Math.Min(width, characters.LengthInTextElements - from));
    }

    private static string Clean(string text) => PlainText.Permitted(text.Replace('\n', ' '));
}
