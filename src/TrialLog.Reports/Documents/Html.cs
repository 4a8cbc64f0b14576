using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Pictures;

namespace TrialLog.Reports.Documents;

/// <summary>
/// Writes a document as one HTML page that needs nothing else: no script, no network, its style inside. Every text goes
/// through an XML writer, so none of it can become markup, and the page's own policy forbids whatever would load or run.
/// </summary>
internal static partial class Html
{
    // Between a number, its fraction and its unit no line may break.
    [GeneratedRegex("(?<=[0-9]) (?=[¼½¾⅛⅜⅝⅞])|(?<=[0-9¼½¾⅛⅜⅝⅞]) (?=(?:in|cm|km|m|s|%|/km)(?![a-z]))", RegexOptions.CultureInvariant)]
    private static partial Regex NumberSpace();

    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'; form-action 'none'; base-uri 'none'";
    private static readonly string Style = ReadStyle();

    /// <summary>Writes the page.</summary>
    public static string Write(Document document)
    {
        var page = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        Append(page, new XElement("meta", new XAttribute("http-equiv", "Content-Security-Policy"), new XAttribute("content", Policy)));
        Append(page,
            new XElement("meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")));
        Append(page, new XElement("title", PlainText.Permitted(document.Title)));
        page.Append("<style>\n").Append(Style).Append("</style>\n</head>\n<body>\n");
        Append(page, new XElement("header", Text("h1", document.Title), Text("p", document.Subtitle)));
        page.Append("<main>\n");
        bool folds = document.Appendices.Count > 0;
        for (int i = 0; i < document.Sections.Count; i++)
        {
            string name = $"section-{i + 1}";
            Section section = document.Sections[i];
            if (folds || i + 1 < document.Sections.Count)
                AppendSection(page, section, name);
            else
                AppendEnd(page, document.Footer, () => AppendSection(page, section, name));
        }

        if (folds)
            AppendAppendices(page, document.Appendices, document.Footer);
        page.Append("</main>\n");
        return page.Append("</body>\n</html>\n").ToString();
    }

    private static void AppendSection(StringBuilder page, Section section, string name)
    {
        page.Append("<section aria-labelledby=\"").Append(name).Append(section.BeginsASheet ? "\" class=\"sheet\">\n" : "\">\n");
        Append(page, Text("h2", section.Heading, new XAttribute("id", name)));
        AppendBlocks(page, section, name);
        page.Append("</section>\n");
    }

    private static void AppendBlocks(StringBuilder page, Section section, string name)
    {
        int table = 0;
        foreach (Block block in section.Blocks)
            Append(page, Of(block, $"{name}-table-{(block is Table ? ++table : table)}"));
    }

    // Closed on a screen; the style opens them on paper. A browser opens one that a link of the contents leads into.
    private static void AppendAppendices(StringBuilder page, IReadOnlyList<Section> appendices, string last)
    {
        Append(page, new XElement("nav", Class("contents"), new XAttribute("aria-labelledby", "contents"),
            Text("h2", "Contents", new XAttribute("id", "contents")),
            new XElement(
                "ol", appendices.Select(
                (section, at) => new XElement("li", Text("a", section.Heading, new XAttribute("href", $"#appendix-{at + 1}")))))));
        for (int i = 0; i < appendices.Count; i++)
        {
            string name = $"appendix-{i + 1}";
            Section appendix = appendices[i];
            if (i + 1 < appendices.Count)
                AppendAppendix(page, appendix, name);
            else
                AppendEnd(page, last, () => AppendAppendix(page, appendix, name));
        }
    }

    private static void AppendAppendix(StringBuilder page, Section appendix, string name)
    {
        page.Append("<details class=\"appendix\">\n");
        Append(page, new XElement("summary", Text("h2", appendix.Heading, new XAttribute("id", name))));
        AppendBlocks(page, appendix, name);
        page.Append("</details>\n");
    }

    // On paper the page's last line stays with what is before it: no sheet for a single line.
    private static void AppendEnd(StringBuilder page, string last, Action before)
    {
        page.Append("<div class=\"end\">\n");
        before();
        Append(page, Text("p", last, Class("version")));
        page.Append("</div>\n");
    }

    private static XElement Of(Block block, string name) => block switch
    {
        Paragraph paragraph => Text("p", paragraph.Text, paragraph.Answers ? Class("answer") : null),
        Subheading subheading => Text("h3", subheading.Text),
        Facts facts => new XElement("table", Class("facts"),
            Text("caption", "In figures", Class("unseen")),
            new XElement(
                "tbody",
                facts.Items.Select(
                fact => new XElement("tr", Text("th", fact.Label, new XAttribute("scope", "row")), Text("td", fact.Value, Class("figure")),
                facts.Items.All(one => one.Meaning is null) ? null : Text("td", fact.Meaning ?? "", Class("meaning")))))),
        Bullets bullets => new XElement("ul", bullets.Warn ? Class("warn") : null, bullets.Items.Select(item => Text("li", item))),
        Table rows => Of(rows, name),
        Figure figure => new XElement("figure", figure.Picture.Svg,
            new XElement("figcaption", Text("strong", figure.Picture.Title + "."), " ", PlainText.Permitted(figure.Picture.Key))),
        PictureRow pictures => new XElement("div", Class("pictures"), pictures.Items.Select(item => Of(item, name))),
        PictureAndCard both => new XElement("div", Class("beside"), Of(both.Picture, name), Of(both.Card, name)),
        Quotation quotation => new XElement("blockquote", Text("p", quotation.Text), Text("footer", quotation.By)),
        LargeLengths lengths => new XElement("ol", Class("large"), lengths.Items.Select(item => Text("li", item))),
        Cards cards => new XElement("div", Class("cards"), cards.Items.Select(Of)),
        _ => throw new ArgumentException($"No HTML for {block.GetType().Name}.", nameof(block)),
    };

    // A table wider than a phone scrolls in its own region, which the keyboard can reach; one that stacks needs no scrolling there.
    private static XElement Of(Table table, string name) =>
        new("div", Class(table.Stacks ? "scroll stacks" : "scroll"), new XAttribute("role", "region"),
        new XAttribute("aria-labelledby", name), new XAttribute("tabindex", "0"),
        new XElement("table",
            Text("caption", table.Caption, new XAttribute("id", name)),
            new XElement("thead", new XElement("tr", table.Columns.Select(column =>
                Text("th", column.Name, new XAttribute("scope", "col"), column.Number ? Class("number") : null)))),
            new XElement("tbody", table.Rows.Select(row => new XElement("tr", row.Select((cell, at) => at == 0
                ? Text("th", cell, new XAttribute("scope", "row"), CellClass(cell, table.Columns[at]))
                : Text("td", cell, CellClass(cell, table.Columns[at]),
                    table.Stacks ? new XAttribute("data-of", table.Columns[at].Name) : null)))))));

    // Numbers and short words never break, so that what is long gives way.
    private static XAttribute? CellClass(string cell, Column column) =>
        column.Number ? Class("number") : cell.Split('\n').All(line => line.Length <= 12) ? Class("short") : null;

    private static XElement Of(CardToFill card) => new("article", Class("card"),
        Text("h3", card.Heading),
        card.Caution is { } caution ? Text("p", caution, Class("warn")) : null,
        Text("p", card.Plan),
        new XElement("table",
            Text("caption", "Fill in afloat or ashore", Class("unseen")),
            new XElement(
                "thead",
                new XElement("tr", new[] { "Piece", "Length", "Time", "Effort", "Sore" }
                .Select(name => Text("th", name, new XAttribute("scope", "col"))))),
            new XElement("tbody", card.Lengths.Select((length, at) => new XElement("tr",
                Text("th", $"{at + 1}", new XAttribute("scope", "row")), Text("td", length, Class("length")), Text("td", ""),
                    Text("td", ""), Text("td", ""))))),
        Text("p", card.Reason, Class("reason")));

    private static XAttribute Class(string name) => new("class", name);

    private static XElement Text(string element, string text, params XAttribute?[] attributes)
    {
        var written = new XElement(element, attributes);
        string[] lines = NumberSpace().Replace(PlainText.Permitted(text), "\u00A0").Split('\n');
        for (int i = 0; i < lines.Length; i++)
            written.Add(i == 0 ? null : new XElement("br"), lines[i]);
        return written;
    }

    private static void Append(StringBuilder page, XElement element)
    {
        using (var writer = XmlWriter.Create(page, new XmlWriterSettings
        {
            OmitXmlDeclaration = true,
            ConformanceLevel = ConformanceLevel.Fragment,
            NewLineHandling = NewLineHandling.None,
        }))
        {
            element.WriteTo(writer);
        }

        page.Append('\n');
    }

    private static string ReadStyle()
    {
        using Stream style = typeof(Html).Assembly.GetManifestResourceStream("TrialLog.Reports.page.css")!;
        return new StreamReader(style, Encoding.UTF8).ReadToEnd();
    }
}
