using CsCheck;
using TrialLog.Application.Reporting;
using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Reports.Squads;
using TrialLog.Tests.Tuning.References;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Reports;

[Collection(BrowserCollection.Name)]
public class SquadSheetTests(Browser browser)
{
    private static readonly DateOnly Today = new(2026, 5, 3);

    private static SquadRow Row(
        int number, string name = "Paddler", double? soreness = null, int checks = 0, double gainLeft = 0.1,
            Standing standing = Standing.Testing, int? silent = null)
    {
        ReportContents contents = SampleContents.Of(3, SampleContents.Ilse with { Id = SampleContents.Id(2000 + number), Name = name });
        Analysis analysis = contents.Analysis with
        {
            Standing = soreness is null ? standing : Standing.Sore,
            GainFromMovingPercent = 0,
            GainLeftPercent = gainLeft,
            Checks = [.. Enumerable.Repeat(contents.Analysis.Checks[0], checks)],
        };
        return new(analysis.Paddler, analysis.Hull, analysis.Paddle, analysis,
            number == 0 ? null : new DateOnly(2026, 3, 1).AddDays(number),
            soreness is { } points ? Soreness.FromPoints(points) : null, silent);
    }

    private static SquadContents Squad(params IEnumerable<SquadRow> rows) => new([.. rows], Today, "0.1.0");

    [Fact]
    public void Silence_after_pain_leads_then_the_sore_then_what_is_to_be_won_and_no_warning_lifts_who_is_done()
    {
        SquadRow[] rows =
        [
            Row(1, "silent", 3, silent: 12), Row(2, "sore", 3), Row(3, "sorest", 7), Row(4, "half a percent", gainLeft: 0.5),
                Row(5, "little", gainLeft: 0.04),
            Row(6, "done, with warnings", checks: 3, standing: Standing.Settled, gainLeft: 0.2),
                Row(7, "done", standing: Standing.Flat, gainLeft: 0.01),
            Row(8, "silent for long", 3, silent: 30), Row(9, "no paddle") with { Hull = null, Paddle = null, Analysis = null },
        ];
        Gen.Shuffle(rows).Sample(shuffled => Assert.Equal(
            ["silent for long", "silent", "sorest", "sore", "half a percent", "little", "no paddle", "done, with warnings", "done"],
            SquadOrder.WorstFirst(shuffled).Select(row => row.Paddler.Name)));
    }

    [Theory]
    [InlineData(Standing.Testing, StandingReason.ChanceTooHigh, true)]
    [InlineData(Standing.CannotTell, StandingReason.OrderTangled, true)]
    [InlineData(Standing.CannotTell, StandingReason.OneLengthAnOuting, true)]
    [InlineData(Standing.CannotTell, StandingReason.LargeCrewsOnly, false)]
    [InlineData(Standing.Settled, StandingReason.NothingWorthwhileLeft, false)]
    public void A_log_that_cannot_tell_gets_the_card_that_would_cure_it_but_not_where_a_crew_hides_every_length(
        Standing standing, StandingReason why, bool tests)
    {
        SquadRow row = Row(1, standing: standing);
        row = row with { Analysis = row.Analysis! with { Why = [why] } };
        Assert.Equal(tests, row.Tests);
        Assert.Equal(tests, SquadWords.ThisWeek(row).StartsWith("test ", StringComparison.Ordinal));
    }

    [Fact]
    public void Days_are_silent_only_after_an_outing_that_hurt()
    {
        ReportContents contents = SampleContents.Of(4);
        DateOnly last = contents.Outings.Max(outing => outing.Date);
        Assert.Equal((12, true), Row(Told(6, 6), last.AddDays(12)));
        Assert.Equal((300, true), Row(Told(6, 6), last.AddDays(300)));
        Assert.Equal((null, false), Row(Told(6, 1.5), last.AddDays(12)));
        Assert.Equal((null, true), Row(Told(6, null), last.AddDays(12)));
        Assert.Equal((null, false), Row(Told(0, 0), last.AddDays(12)));
        Assert.Equal(
            (null, false),
            Row(Told(6, 6), last.AddDays(12),
            new SorenessClearance { Id = SampleContents.Id(1), PaddlerId = SampleContents.Ilse.Id, Date = last, By = "Tova Lind" }));
        Assert.Equal((null, false), Row([], last));

        (int?, bool) Row(Outing[] outings, DateOnly today, params SorenessClearance[] cleared)
        {
            SquadRow row = SquadRow.Of(SampleContents.Ilse, null, null, null, outings, cleared, today);
            return (row.DaysSilent, row.IsSore);
        }

        Outing[] Told(double before, double? atLast) => [.. contents.Outings.Select(outing => outing with
        {
            Pieces = [
                .. outing.Pieces.Select(piece => piece
                with { Soreness = (outing.Date == last ? atLast : before) is { } points ? Soreness.FromPoints(points) : null })],
        })];
    }

    [Fact]
    public void Soreness_counts_on_the_days_and_from_the_points_on_which_it_limits_the_lengths() =>
        Gen.Select(Gen.Int[-2, 400], Gen.Int[0, 20]).Sample((ago, halves) =>
        {
            ReportContents contents = SampleContents.Of(1);
            Outing[] outings = [
                .. contents.Outings.Select(outing => outing
                with { Pieces = [.. outing.Pieces.Select(piece => piece with { Soreness = Soreness.FromPoints(halves / 2.0) })] })];
            DateOnly today = outings[0].Date.AddDays(ago);
            Assessment limited = Tuner.Carry(new AnalysisInput
            {
                Paddler = contents.Analysis.Paddler,
                Hull = contents.Analysis.Hull,
                Paddle = contents.Analysis.Paddle,
                Hulls = contents.Hulls,
                Paddles = contents.Paddles,
                Outings = outings,
                TechniqueChecks = [],
                Today = today,
            }, [contents.Analysis.Hull], [contents.Analysis.Paddle])[0];
            Assert.Equal(limited.SorenessLimit is not null, RecentSoreness.Hurts(RecentSoreness.Worst(outings, today)));
        }, iter: 60);

    [Fact]
    public void The_text_sheet_has_a_row_for_each_paddler_and_a_card_for_who_tests()
    {
        SquadRow[] rows = [Row(0, "Ilse Maro", 5, silent: 12), Row(1, "Bram Okello", null, 1),
            Row(2, "Nell Osei", standing: Standing.Settled)];
        string text = SquadSheet.ToText(Squad(rows));
        string[] lines = text.Split('\n');
        Assert.Matches("^Ilse Maro +sore 5: silent 12 d +OC1 ",
            lines.First(line => line.StartsWith("Ilse Maro ", StringComparison.Ordinal)));
        Assert.Contains("    Warnings: used to one length", lines);
        Assert.Single(lines, line => line.StartsWith("  1. 49", StringComparison.Ordinal));
        Assert.DoesNotContain("to go", text);
        Assert.Equal(text, SquadSheet.ToText(Squad(rows.Reverse())));
    }

    [Fact]
    public void No_line_of_the_text_is_wider_than_80_columns() =>
        Gen.Select(HostileText.Any, Gen.String[Gen.Char['a', 'z'], 1, 80]).Sample((odd, name) =>
        Assert.All(SquadSheet.ToText(Squad(Row(0, odd, 5, 2), Row(1, name, null, 1))).Split('\n'),
            line => Assert.True(new System.Globalization.StringInfo(line).LengthInTextElements <= 80, line)), iter: 200);

    [Fact]
    public async Task On_a_phone_each_row_is_a_block_that_needs_no_scrolling_and_begins_with_what_to_do()
    {
        Browser.Required();
        await using BrowserPage page = await browser.Open(
            SquadSheet.ToHtml(Squad(Row(0, "Ilse Maro", 5, silent: 12), Row(1, "Bram Okello", null, 2))), width: 390);
        Assert.Equal("true", await page.Evaluate("[...document.querySelectorAll('.stacks')].every(e => e.scrollWidth <= e.clientWidth)"));
        Assert.Equal("Ilse Maro|sore 5: silent 12 d",
            await page.Evaluate(
            "[...document.querySelectorAll('.stacks tbody tr:first-child > *')].slice(0, 2).map(e => e.textContent).join('|')"));
    }

    [Fact]
    public void Every_health_check_has_words_of_its_own_for_the_sheet()
    {
        string[] names = [.. Directory.GetFiles(Repository.File("src/TrialLog.Tuning/Checks"), "*.cs")
            .SelectMany(file => System.Text.RegularExpressions.Regex.Matches(File.ReadAllText(file), "new\\(\"([a-z-]+)\"\\)"))
                .Select(match => match.Groups[1].Value).Distinct()];
        Assert.NotEmpty(names);
        Assert.All(names, name => Assert.True(Warnings.Knows(name), name));
    }

    [Fact]
    public async Task The_sheet_of_a_large_squad_and_of_hostile_names_is_readable_and_prints_whole()
    {
        Browser.Required();
        string[] names = [.. HostileText.Samples, .. Enumerable.Range(0, 12).Select(number => $"Paddler {number}")];
        await using BrowserPage page = await browser.Open(
            SquadSheet.ToHtml(
            Squad(names.Select(
            (name, number) => Row(number, name, number % 4 == 0 ? number % 9 / 2.0 : null, number % 3, number / 100.0)))));
        await PageLaws.Holds(page);
        await PageLaws.PrintsWhole(page, "Paddler 0", "Paddler 11", "This week's cards");
    }

    [Fact]
    public void An_empty_squad_has_a_sheet_too() => Assert.Contains("No paddler is in the log yet.", SquadSheet.ToText(Squad()));
}
