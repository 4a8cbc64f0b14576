using CsCheck;
using TrialLog.Application.Reporting;
using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;
using TrialLog.Reports.Squads;
using TrialLog.Tests.Tuning.References;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Reports;

[Collection(BrowserCollection.Name)]
public class SquadSheetTests(Browser browser)
{
    private static SquadMember Member(int number, string name = "Paddler", double? soreness = null, int checks = 0, double gainLeft = 0.1)
    {
        ReportContents contents = SampleContents.Of(3, SampleContents.Ilse with { Id = SampleContents.Id(2000 + number), Name = name });
        return new SquadMember(contents.Analysis with
        {
            GainLeftPercent = gainLeft,
            Checks = [.. Enumerable.Repeat(contents.Analysis.Checks[0], checks)],
        }, number == 0 ? null : new DateOnly(2026, 3, 1).AddDays(number), soreness is { } points ? Soreness.FromPoints(points) : null);
    }

    private static SquadContents Squad(params IEnumerable<SquadMember> members) => new([.. members], new DateOnly(2026, 5, 3), "0.1.0");

    [Fact]
    public void The_sore_come_first_then_failed_checks_then_gain_left()
    {
        SquadMember[] members =
        [
            Member(1, "calm", 0, 0, 0.01), Member(2, "gain", 2.5, 0, 0.4), Member(3, "checked", null, 2, 0.01), Member(4, "sore", 3, 0, 0.01), Member(5, "sorest", 7, 0, 0.01),
        ];
        Gen.Shuffle(members).Sample(shuffled => Assert.Equal(
            ["sorest", "sore", "checked", "gain", "calm"],
            SquadOrder.WorstFirst(shuffled).Select(member => member.Analysis.Paddler.Name)));
    }

    [Fact]
    public void A_row_tells_the_last_outing_however_old_and_the_worst_soreness_of_four_weeks()
    {
        ReportContents contents = SampleContents.Of(4);
        DateOnly last = new(2026, 3, 24);
        Outing[] outings = [.. contents.Outings.Select(outing => outing with { Pieces = [.. outing.Pieces.Select(piece => piece with { Soreness = Soreness.FromPoints(outing.Date == last ? 1.5 : 6) })] })];
        DateOnly before = outings.Where(outing => outing.Date != last).Max(outing => outing.Date);
        Assert.Equal(new(contents.Analysis, last, Soreness.FromPoints(6)), SquadMember.Of(contents.Analysis, outings, before.AddDays(28)));
        Assert.Equal(new(contents.Analysis, last, Soreness.FromPoints(1.5)), SquadMember.Of(contents.Analysis, outings, before.AddDays(29)));
        Assert.Equal(new(contents.Analysis, last, null), SquadMember.Of(contents.Analysis, outings, last.AddDays(29)));
        Assert.Equal(new(contents.Analysis, null, null), SquadMember.Of(contents.Analysis, [], last));
    }

    [Fact]
    public void Soreness_counts_on_the_days_and_from_the_points_on_which_it_limits_the_lengths() =>
        Gen.Select(Gen.Int[-2, 40], Gen.Int[0, 20]).Sample((ago, halves) =>
        {
            ReportContents contents = SampleContents.Of(1);
            Outing[] outings = [.. contents.Outings.Select(outing => outing with { Pieces = [.. outing.Pieces.Select(piece => piece with { Soreness = Soreness.FromPoints(halves / 2.0) })] })];
            DateOnly today = outings[0].Date.AddDays(ago);
            CarriedLength limited = Tuner.Carry(new AnalysisInput
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
            Assert.Equal(limited.SorenessCeiling is not null, RecentSoreness.Hurts(RecentSoreness.Worst(outings, today)));
        }, iter: 60);

    [Fact]
    public void The_text_sheet_has_a_row_and_a_card_for_each_paddler()
    {
        string text = SquadSheet.ToText(Squad(Member(0, "Ilse Maro", 5), Member(1, "Bram Okello", null, 1)));
        string[] lines = text.Split('\n');
        Assert.Matches("^Ilse Maro +OC1 +49¾ in +49¼–50½ in +0\\.10% +none yet +2 \\(1–4\\) +! 5", lines.First(line => line.StartsWith("Ilse Maro ", StringComparison.Ordinal)));
        Assert.Contains("    Failed checks: used to one length", lines);
        Assert.Contains("(sore: rest first, this when it no longer hurts)", text.ReplaceLineEndings(" "));
        Assert.Equal(2, lines.Count(line => line.StartsWith("  1. 49¼ in ", StringComparison.Ordinal)));
        Assert.Equal(text, SquadSheet.ToText(Squad(Member(1, "Bram Okello", null, 1), Member(0, "Ilse Maro", 5))));
    }

    [Fact]
    public void No_line_of_the_text_is_wider_than_80_columns() => Gen.Select(HostileText.Any, Gen.String[Gen.Char['a', 'z'], 1, 80]).Sample((odd, name) =>
        Assert.All(SquadSheet.ToText(Squad(Member(0, odd, 5, 2), Member(1, name, null, 1)) with { LeftOut = [name] }).Split('\n'),
            line => Assert.True(new System.Globalization.StringInfo(line).LengthInTextElements <= 80, line)), iter: 200);

    [Fact]
    public void The_heading_counts_those_who_are_not_on_the_sheet() => Assert.Contains("3 paddlers, 1 of them not on this sheet",
        SquadSheet.ToText(Squad(Member(0), Member(1)) with { LeftOut = ["Nell Osei: which paddle?"] }));

    [Fact]
    public void Every_health_check_has_words_of_its_own_for_the_sheet()
    {
        string[] names = [.. Directory.GetFiles(Repository.File("src/TrialLog.Tuning/Checks"), "*.cs")
            .SelectMany(file => System.Text.RegularExpressions.Regex.Matches(File.ReadAllText(file), "new\\(\"([a-z-]+)\"\\)")).Select(match => match.Groups[1].Value).Distinct()];
        Assert.Equal(16, names.Length);
        Assert.All(names, name => Assert.True(Warnings.Knows(name), name));
    }

    [Fact]
    public async Task The_sheet_of_a_large_squad_and_of_hostile_names_is_readable_and_prints_whole()
    {
        Browser.Required();
        string[] names = [.. HostileText.Samples, .. Enumerable.Range(0, 12).Select(number => $"Paddler {number}")];
        await using BrowserPage page = await browser.Open(SquadSheet.ToHtml(Squad(names.Select((name, number) => Member(number, name, number % 9 / 2.0, number % 3, number / 100.0)))));
        await PageLaws.Holds(page);
        await PageLaws.PrintsWhole(page, "Paddler 0", "Paddler 11", "This week's cards");
    }

    [Fact]
    public void An_empty_squad_has_a_sheet_too() => Assert.Contains("No paddler is in the log yet.", SquadSheet.ToText(Squad()));
}
