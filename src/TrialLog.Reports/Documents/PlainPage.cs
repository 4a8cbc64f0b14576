using System.Globalization;
using System.Text;

namespace TrialLog.Reports;

/// <summary>Writes a document as plain text for a terminal or a plain printer.</summary>
internal static class PlainPage
{
    private const int Width = 80;

    /// <summary>Writes the page.</summary>
    public static string Write(Document document)
    {
        var page = new StringBuilder();
        page.Append(Wrapped(document.Title)).Append(Wrapped(document.Subtitle));
        foreach (Section section in document.Sections)
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
        Facts facts => string.Concat(facts.Items.Select(fact => Wrapped($"{fact.Label}: {fact.Value}{(fact.Meaning is { } meaning ? $" ({meaning})" : "")}"))),
        Bullets bullets => string.Concat(bullets.Items.Select(item => Wrapped(item, bullets.Warn ? "! " : "- "))),
        Table table => Of(table),
        Figure figure => Wrapped($"{figure.Picture.Title}: {figure.Picture.Description}"),
        Quotation quotation => Wrapped(quotation.Text, "  ") + Wrapped($"({quotation.By})", "  "),
        Cards cards => string.Concat(cards.Items.Select(Of)),
        _ => throw new ArgumentException($"No plain text for {block.GetType().Name}.", nameof(block)),
    };

    private static string Of(CardToFill card) =>
        "\n" + Wrapped(card.Heading) + Wrapped(card.Plan, "  ")
        + string.Concat(card.Lengths.Select((length, at) => $"  {at + 1}. {Clean(length),-12} time ________  effort ____  sore ____\n"))
        + Wrapped(card.Reason, "  ") + (card.Caution is { } caution ? Wrapped(caution, "! ") : "");

    private static string Of(Table table)
    {
        List<string[]> rows = [[.. table.Columns.Select(column => Clean(column.Name))],
            .. table.Rows.Select(row => row.Select(cell => Clean(cell.Replace('\n', ';'))).ToArray())];
        int[] widths = [.. table.Columns.Select((_, at) => rows.Max(row => Cells(row[at])))];
        var text = new StringBuilder();
        foreach (string[] row in rows)
            text.Append(string.Join("  ", row.Select((cell, at) => Padded(cell, widths[at], table.Columns[at].Number))).TrimEnd()).Append('\n');
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
        foreach (string paragraph in PlainText.Permitted(text).Split('\n'))
        {
            string line = lead;
            bool empty = true;
            foreach (string word in Clean(paragraph).Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                if (!empty && Cells(line) + 1 + Cells(word) > Width)
                {
                    wrapped.Append(line).Append('\n');
                    (line, empty) = (new string(' ', lead.Length), true);
                }

                line += empty ? word : " " + word;
                empty = false;
            }

            wrapped.Append(line.TrimEnd()).Append('\n');
        }

        return wrapped.ToString();
    }

    private static string Clean(string text) => PlainText.Permitted(text.Replace('\n', ' '));
}
