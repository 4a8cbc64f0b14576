using TrialLog.Application.Squads;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Reports.Squads;
using TrialLog.Tests.Commands;

namespace TrialLog.Tests.Reports;

/// <summary>The pages under the rules of axe-core, an outside reference for what makes a page fit for everybody.</summary>
[Collection(BrowserCollection.Name)]
public class AccessibilityTests(Browser browser)
{
    private static string Rules => Repository.File("tests/TrialLog.Tests/Reports/axe/node_modules/axe-core/axe.min.js");

    public static TheoryData<string> Pages => ["report", "sore report", "squad sheet", "phone card", "plan"];

    [Theory, MemberData(nameof(Pages))]
    public async Task No_rule_is_broken_by_daylight_in_the_dark_or_on_a_phone(string page)
    {
        Browser.Required();
        Assert.SkipUnless(File.Exists(Rules), "axe-core is not installed: the pages were NOT checked against its rules. In " +
            "tests/TrialLog.Tests/Reports/axe run: npm install --no-package-lock");
        await using BrowserPage opened = await browser.Open(Html(page));
        await opened.Evaluate("document.querySelectorAll('details').forEach(d => d.open = true)");
        await opened.Evaluate(await File.ReadAllTextAsync(Rules));
        foreach (bool dark in new[] { false, true })
        {
            await opened.InTheDark(dark);
            foreach (int width in new[] { 1200, 390 })
            {
                await opened.Resize(width, 900);
                Assert.Equal(
                    "", await opened.EvaluateLater(
                    "axe.run().then(found => found.violations.map(v => v.id + ': ' + v.nodes.map(n => n.html).slice(0, " +
                    "3).join(' ')).join('\\n'))"));
            }
        }
    }

    [Fact]
    public async Task On_a_phone_no_text_of_a_picture_is_smaller_than_twelve_pixels()
    {
        Browser.Required();
        await using BrowserPage page = await browser.Open(Html("report"), width: 390);
        string smallest = await page.Evaluate(
            "Math.min(...[...document.querySelectorAll('section svg')].flatMap(s => [...s.querySelectorAll('text')].map(t => " +
            "parseFloat(t.getAttribute('font-size')) * s.getBoundingClientRect().width / s.viewBox.baseVal.width)))");
        Assert.InRange(double.Parse(smallest, System.Globalization.CultureInfo.InvariantCulture), 12, 20);
    }

    private static string Html(string page) => page switch
    {
        "report" => PaddlerReport.ToHtml(SampleContents.Of(6) with { Decisions = [Ordered] }),
        "sore report" => PaddlerReport.ToHtml(SampleContents.Sore(SampleContents.Of(3))),
        "phone card" => PhoneCard.ToHtml(SampleContents.Of(3).Analysis, null, new DateOnly(2026, 5, 3), "0.1.0"),
        "plan" => Plan(),
        _ => SquadSheet.ToHtml(new([SquadRow.Of(SampleContents.Of(3).Analysis, SampleContents.Of(3).Outings, new DateOnly(2026, 5, 3)),
            SquadRow.Of(SampleContents.Ilse with { Name = "Bram Okello" }, null, null, null, [], [], new DateOnly(2026, 5, 3))],
                new DateOnly(2026, 5, 3), "0.1.0")),
    };

    private static string Plan()
    {
        using TestProgram program = TestProgram.WithIlse();
        string file = Path.Combine(program.Folder, "plan.html");
        program.Must("paddle", "set", "Reed", "--club");
        program.Must("plan", "--weeks", "2", "--paddles", "Reed", "--out", file);
        return File.ReadAllText(file);
    }

    private static readonly Decision Ordered = new()
    {
        Id = SampleContents.Id(950), PaddlerId = SampleContents.Ilse.Id, HullId = SampleContents.Solo.Id,
        PaddleId = SampleContents.Adjustable.Id,
        Length = Length.FromInches(49.5), Kind = DecisionKind.Ordered, Date = new DateOnly(2026, 5, 1), By = "Tova Lind",
        Because = "Settled since April.",
    };
}
