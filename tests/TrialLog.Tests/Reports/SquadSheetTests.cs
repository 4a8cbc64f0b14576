using CsCheck;
using TrialLog.Domain;
using TrialLog.Reports;
using TrialLog.Tuning;

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
    public void A_row_tells_the_worst_soreness_of_the_last_day_on_the_water()
    {
        ReportContents contents = SampleContents.Of(4);
        SquadMember member = SquadMember.Of(contents.Analysis, contents.Outings);
        Assert.Equal((new DateOnly(2026, 3, 24), Soreness.FromPoints(1.5)), (member.LastOuting, member.Soreness));
        Assert.Equal(new SquadMember(contents.Analysis, null, null), SquadMember.Of(contents.Analysis, []));
    }

    [Fact]
    public void The_text_sheet_has_a_row_and_a_card_for_each_paddler()
    {
        string text = SquadSheet.ToText(Squad(Member(0, "Ilse Maro", 5), Member(1, "Bram Okello", null, 1)));
        string[] lines = text.Split('\n');
        Assert.Matches("^Ilse Maro +OC1 +49 ¾ in +49 ¼ to 50 ½ in +0.10 % +none yet +2 \\(1–4\\) +! 5 ", lines.First(line => line.StartsWith("Ilse Maro ", StringComparison.Ordinal)));
        Assert.Matches("habituation$", lines.First(line => line.StartsWith("Bram Okello ", StringComparison.Ordinal)));
        Assert.Equal(2, lines.Count(line => line.StartsWith("  1. 49 ¼ in ", StringComparison.Ordinal)));
        Assert.Equal(text, SquadSheet.ToText(Squad(Member(1, "Bram Okello", null, 1), Member(0, "Ilse Maro", 5))));
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
