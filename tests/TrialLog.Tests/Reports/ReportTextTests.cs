using System.Xml.Linq;
using CsCheck;
using TrialLog.Application.Reporting;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Reports.Pictures;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Checks;
using TrialLog.Tuning.Classical;

namespace TrialLog.Tests.Reports;

public class ReportTextTests
{
    /// <summary>The sample report with that text wherever a user's text can stand.</summary>
    public static ReportContents Poisoned(string text)
    {
        ReportContents plain = SampleContents.Of(3);
        Hull hull = SampleContents.Solo with { Name = text };
        Paddle paddle = SampleContents.Adjustable with { Name = text };
        return plain with
        {
            Analysis = plain.Analysis with
            {
                Paddler = plain.Analysis.Paddler with { Name = text },
                Hull = hull,
                Paddle = paddle,
                Checks = [new HealthCheck("hulls-disagree") { Hull = text, OtherHull = text }],
                SorenessLimit = Length.FromInches(50),
                SoreEverywhere = true,
            },
            Hulls = [hull],
            Paddles = [paddle],
            Outings = [.. plain.Outings.Select(outing => outing with
            {
                Label = text,
                Place = text,
                Water = text,
                Notes = text,
                Pieces = [
                    .. outing.Pieces.Select(
                    piece => piece with { Notes = text, ExcludedBecause = piece.ExcludedBecause is null ? null : text })],
            })],
            Carried = [plain.Carried[0] with { Hull = hull, Paddle = paddle }],
            Classical = plain.Classical! with { Coefficients = [new Coefficient(text, 1, 1)] },
            Notes = [.. plain.Notes.Select(note => note with { Author = text, Text = text })],
            Version = text,
        };
    }

    private static IEnumerable<string> Skeleton(string html)
    {
        string body = html[html.IndexOf("<body>", StringComparison.Ordinal)..(html.LastIndexOf("</body>", StringComparison.Ordinal) + 7)];
        return XDocument.Parse(body).Descendants().Where(element => element.Name.LocalName != "br")
            .Select(element => string.Join(' ', element.Attributes().Where(attribute => attribute.Value != "short")
                .Select(attribute => attribute.Name.LocalName).Prepend(element.Name.LocalName)));
    }

    [Fact]
    public void Every_diamond_lies_within_its_picture_though_soreness_holds_the_best_length_below_its_range()
    {
        List<ProgressPoint> plain = [.. SampleContents.Of(6).Progress];
        List<ProgressPoint> sore = [
            .. plain.Select((point, at) =>
            at < 4 ? point
            : point
            with { Then = point.Then
            with { Best = point.Then.Best with { Length = point.LikelyLow.PlusInches(-2) }, GainLeftPercent = 0 } })];
        foreach (
            Picture picture in new[] { plain, sore }
            .SelectMany(
            progress => new[] { ProgressPictures.BestLength(progress, LengthUnit.Inches), ProgressPictures.GainLeft(progress, 0.3) }))
        {
            (double top, double height) = picture.Svg.Descendants().Where(element => element.Name.LocalName == "clipPath")
                .Select(clip => clip.Elements().Single()).Select(area => ((double)area.Attribute("y")!, (double)area.Attribute("height")!))
                    .MinBy(area => area.Item2);
            XElement[] diamonds = [.. picture.Svg.Descendants().Where(element => element.Name.LocalName == "polygon")];
            Assert.Equal(plain.Count, diamonds.Length);
            Assert.All(diamonds, diamond => Assert.All(diamond.Attribute("points")!.Value.Split(' '),
                point =>
                    Assert.InRange(double.Parse(point.Split(',')[1], System.Globalization.CultureInfo.InvariantCulture), top,
                    top + height)));
        }
    }

    [Fact]
    public void While_sore_the_report_says_one_thing_no_card_no_forecast_and_nothing_of_what_speed_it_costs()
    {
        ReportContents plain = SampleContents.Of(3);
        string said = PaddlerReport.ToHtml(SampleContents.Sore(plain)), usual = PaddlerReport.ToHtml(plain);
        foreach (
            string held in new[] { "class=\"card\"", "Outings to go", "Gain left", "Chance of a worthwhile gain", "Going from",
            "Response curve" })
        {
            Assert.Contains(held == "Going from" ? "Usual length" : held, usual);
            Assert.DoesNotContain(held, said);
        }

        Assert.Contains("Rest first", said);
        Assert.Contains("Ilse Maro logged soreness", said);
        Assert.Contains("you logged soreness", PaddlerReport.ToHtml(SampleContents.Sore(plain) with { ForThePaddler = true }));
    }

    [Fact]
    public void Who_is_done_gets_no_card() => Assert.DoesNotContain("class=\"card\"", PaddlerReport.ToHtml(SampleContents.Of(6)));

    [Fact]
    public void No_text_can_add_or_change_an_element_of_the_page()
    {
        List<string> expected = [.. Skeleton(PaddlerReport.ToHtml(Poisoned("plain")))];
        HostileText.Any.Sample(text => Assert.Equal(expected, Skeleton(PaddlerReport.ToHtml(Poisoned(text)))), iter: 30);
    }

    [Fact]
    public void No_format_lets_a_control_character_or_a_change_of_direction_through()
    {
        HostileText.Any.Sample(text =>
        {
            ReportContents contents = Poisoned(text);
            foreach (
                string written in new[] { PaddlerReport.ToHtml(contents), PaddlerReport.ToMarkdown(contents),
                PaddlerReport.ToCsv(contents) })
            {
                Assert.DoesNotContain(written, c => (char.IsControl(c) && c is not ('\n' or '\r'))
                    || c is >= '\u202A' and <= '\u202E' or '\u2066' or '\u2067');
                Assert.Equal(written.EnumerateRunes().Count(rune => rune.Value == '\u2068'),
                    written.EnumerateRunes().Count(rune => rune.Value == '\u2069'));
            }
        }, iter: 25);
    }

    [Fact]
    public void The_style_holds_nothing_that_could_end_it()
    {
        string html = PaddlerReport.ToHtml(SampleContents.Of());
        int from = html.IndexOf("<style>", StringComparison.Ordinal) + 7;
        string style = html[from..html.IndexOf("</style>", StringComparison.Ordinal)];
        Assert.Contains("@page", style);
        Assert.Equal(-1, style.AsSpan().IndexOfAny("<>&"));
        Assert.DoesNotContain("url(", style);
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("＝1+1")]
    [InlineData("＠sum")]
    [InlineData("  +1")]
    public void A_spreadsheet_gets_no_formula_from_a_name(string name)
    {
        using var reader = new StringReader(PaddlerReport.ToCsv(Poisoned(name)));
        using var csv = new CsvHelper.CsvReader(reader, System.Globalization.CultureInfo.InvariantCulture);
        List<dynamic> rows = [.. csv.GetRecords<dynamic>()];
        Assert.Equal(12, rows.Count);
        Assert.All(rows, row => Assert.Equal("'" + name, (string)row.paddle));
    }

    [Theory]
    [InlineData("gusty\n=1+1")]
    [InlineData("gusty\r=1+1")]
    [InlineData("gusty\r\n=1+1")]
    public void A_line_break_begins_no_row_of_the_spreadsheet(string text)
    {
        string written = PaddlerReport.ToCsv(Poisoned(text));
        Assert.Contains("\"gusty\n=1+1\"", written);
        Assert.DoesNotContain(",gusty\n", written);
    }

    [Fact]
    public void The_same_contents_give_the_same_report_and_order_of_the_log_does_not_matter()
    {
        ReportContents contents = SampleContents.Of();
        ReportContents turned = contents with
        {
            Outings = [.. contents.Outings.Reverse()],
            Notes = [.. contents.Notes.Reverse()],
        };
        Assert.Equal(PaddlerReport.ToHtml(contents), PaddlerReport.ToHtml(turned));
        Assert.Equal(PaddlerReport.ToMarkdown(contents), PaddlerReport.ToMarkdown(turned));
        Assert.Equal(PaddlerReport.ToCsv(contents), PaddlerReport.ToCsv(turned));
    }

    [Fact]
    public void The_answer_comes_first_and_every_format_says_it()
    {
        ReportContents contents = SampleContents.Of();
        string html = PaddlerReport.ToHtml(contents), markdown = PaddlerReport.ToMarkdown(contents);
        Assert.True(html.IndexOf("class=\"answer\"", StringComparison.Ordinal) < html.IndexOf("<table", StringComparison.Ordinal));
        Assert.Contains("**Race 49¾ in and stop testing. On average it costs 0.04%", markdown);
        Assert.Contains("On average it costs you 0.04%", PaddlerReport.ToMarkdown(contents with { ForThePaddler = true }));
        foreach (
            string fact in new[] { "TrialLog 0.1.0, 2026-05-03.", "as suggested", "wash from a launch", "Keep the top hand low.",
            "by rule alone", "Fieller" })
        {
            Assert.Contains(fact, html);
            Assert.Contains(fact, markdown);
        }

        Assert.DoesNotContain("Tova Lind", PaddlerReport.ToHtml(contents with { Notes = [] }));
    }

    [Fact]
    public void A_report_of_an_empty_log_and_one_in_centimetres_can_be_written()
    {
        string empty = PaddlerReport.ToHtml(SampleContents.Of(0));
        Assert.Contains("No outing is logged yet.", empty);
        string metric = PaddlerReport.ToMarkdown(SampleContents.Of(unit: LengthUnit.Centimetres));
        Assert.Contains("Best length: **126.4 cm, likely 125 to 128.5 cm", metric);
        Assert.DoesNotContain("¾", metric);
    }
}
