using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Calendars;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Squads;

/// <summary>The squad on one sheet: a row a paddler, worst first, then this week's cards for all, with room to write.</summary>
public static class SquadSheet
{
    /// <summary>One self-contained HTML page that prints on A4 and Letter.</summary>
    public static string ToHtml(SquadContents contents) => Html.Write(Document(contents));

    /// <summary>The same as plain text.</summary>
    public static string ToText(SquadContents contents) => PlainPage.Write(Document(contents));

    /// <summary>The same in Markdown.</summary>
    public static string ToMarkdown(SquadContents contents) => Markdown.Write(Document(contents));

    private static Document Document(SquadContents contents)
    {
        IReadOnlyList<SquadRow> rows = SquadOrder.WorstFirst(contents.Rows);
        List<SquadRow> testing = [.. rows.Where(row => row.Tests)];
        IReadOnlyList<string> common = CautionsSection.Common([.. testing.Select(row => row.Analysis!)]);
        List<CardToFill> cards = [.. testing.Select(row => Card(row.Analysis!, row.StandingCard, common))];
        var sections = new List<Section> { Rows(rows, contents.Date) };
        if (cards.Count > 0)
            sections.Add(new("This week's cards", new Cards(cards)));
        sections.Add(CautionsSection.Of(common));
        return new Document(
            "Squad sheet",
            $"{Say.Count(rows.Count, "paddler")}, week {CardCalendar.Week(contents.Date)}. {SquadWords.Order}",
            sections,
            $"TrialLog {PlainText.Line(contents.Version)}, {Say.Day(contents.Date)}.");
    }

    private static Section Rows(IReadOnlyList<SquadRow> rows, DateOnly today) => rows.Count == 0
        ? new("Paddlers", new Paragraph("No paddler is in the log yet."))
        : new("Paddlers", new Table("To win: what the usual length costs on average against the true best length, over their race",
            [new("Paddler"), new("This week"), new("Hull"), new("Now → best", true), new("Likely", true), new("To win", true),
                new("Last", true), new("Warnings")],
            [.. rows.Select(row => Row(row, today))], Stacks: true));

    private static IReadOnlyList<string> Row(SquadRow row, DateOnly today) =>
    [
        PlainText.Line(row.Paddler.Name), SquadWords.StandingAndThisWeek(row),
            row.Hull is { } hull ? PlainText.Line(hull.Name) : Say.Nothing,
        SquadWords.NowToBest(row), SquadWords.Likely(row), SquadWords.ToWin(row), SquadWords.Last(row, today),
        SquadWords.Warnings(row) is { Length: > 0 } warnings ? warnings : Say.Nothing,
    ];

    private static CardToFill Card(Analysis analysis, GivenCard? standing, IReadOnlyList<string> common)
    {
        string heading = $"{PlainText.Line(analysis.Paddler.Name)}, {PlainText.Line(analysis.Hull.Name)} with " +
            $"{PlainText.Line(analysis.Paddle.Name)}";
        var voice = new Voice(PlainText.Line(analysis.Paddler.Name));
        List<string> own = [.. CautionsSection.For(analysis, voice).Except(common)];
        return CardWords.ToFill(heading, analysis, standing, own.Count == 0 ? null : string.Join(" ", own), voice);
    }
}
