using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Commands;

namespace TrialLog.Tests.Reports;

[Collection(BrowserCollection.Name)]
public class ReportPageTests(Browser browser)
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(24)]
    public async Task The_report_is_one_quiet_readable_page(int outings)
    {
        Browser.Required();
        await using BrowserPage page = await browser.Open(PaddlerReport.ToHtml(SampleContents.Of(outings)));
        await PageLaws.Holds(page);
        await PageLaws.PrintsWhole(page, "The answer", "Method", "TrialLog 0.1.0, 2026-05-03.");
    }

    [Fact]
    public async Task The_report_of_a_sample_logbook_holds_to_the_same()
    {
        Browser.Required();
        using TestProgram program = new();
        program.Must("import", Repository.File("sample-sessions/fleet.csv"));
        await using BrowserPage page = await browser.Open(program.Must("report", "--out", "-", "--notes"));
        await PageLaws.Holds(page);
        await PageLaws.PrintsWhole(page, "The answer", "Response curve", "The classical view", "Hulls and paddles");
        await PageLaws.ReadsOnTwoSheets(page, ["The answer", "Response curve", "Next outing"], ["How the search went", "Cautions"]);
    }

    [Fact]
    public async Task Hostile_text_stays_text_on_the_screen_and_on_paper()
    {
        Browser.Required();
        foreach (string[] few in HostileText.Samples.Chunk(7))
        {
            await using BrowserPage page = await browser.Open(PaddlerReport.ToHtml(ReportTextTests.Poisoned(string.Join(" ", few))));
            await PageLaws.Holds(page);
            await PageLaws.PrintsWhole(page, "Method");
        }
    }

    [Fact]
    public async Task Long_names_without_a_space_neither_widen_the_page_nor_run_off_the_paper()
    {
        Browser.Required();
        await using BrowserPage page = await browser.Open(PaddlerReport.ToHtml(ReportTextTests.Poisoned(new string('W', 80))));
        await PageLaws.Holds(page);
        await PageLaws.PrintsWhole(page);
    }

    [Fact]
    public async Task The_page_asked_for_something_would_be_noticed()
    {
        Browser.Required();
        string html = PaddlerReport.ToHtml(SampleContents.Of(1))
            .Replace("</main>", "<img src=\"http://127.0.0.1:9/x\"><script>window.hit = 1</script></main>", StringComparison.Ordinal);
        await using BrowserPage page = await browser.Open(html);
        Assert.NotEmpty(page.Complaints);
        Assert.Equal("", await page.Evaluate("String(window.hit ?? '')"));
    }
}
