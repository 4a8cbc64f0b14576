using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
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
        IReadOnlyList<SquadMember> members = SquadOrder.WorstFirst(contents.Members);
        IReadOnlyList<string> common = CautionsSection.Common([.. members.Select(member => member.Analysis)]);
        var sections = new List<Section> { Rows(members) };
        if (contents.LeftOut.Count > 0)
            sections.Add(new("Not on this sheet", new Bullets([.. contents.LeftOut.Select(PlainText.Line)])));
        if (members.Count > 0)
            sections.Add(new("This week's cards", new Cards([.. members.Select(member => Card(member, common))])));
        sections.Add(CautionsSection.Of(common));
        return new Document(
            "Squad sheet",
            $"{Say.Count(members.Count + contents.LeftOut.Count, "paddler")}{(contents.LeftOut.Count == 0 ? "" : $", {contents.LeftOut.Count} of them not on this sheet")}, week {CardCalendar.Week(contents.Date)}. Worst first: sore in the last four weeks, then failed checks, then gain left.",
            sections,
            $"TrialLog {PlainText.Line(contents.Version)}, {Say.Day(contents.Date)}.");
    }

    private static Section Rows(IReadOnlyList<SquadMember> members) => members.Count == 0
        ? new("Paddlers", new Paragraph("No paddler is in the log yet."))
        : new("Paddlers", new Table("Best length, and what is still to be won by testing",
            [new("Paddler"), new("Hull"), new("Best", true), new("Likely range", true), new("Gain left", true), new("Last outing"), new("To go"), new("Sore", true), new("Failed checks")],
            [.. members.Select(Row)]));

    private static IReadOnlyList<string> Row(SquadMember member)
    {
        Analysis analysis = member.Analysis;
        LengthUnit unit = analysis.Paddler.Unit;
        return
        [
            PlainText.Line(analysis.Paddler.Name), PlainText.Line(analysis.Hull.Name), Say.Length(analysis.Best.Length, unit),
            Say.Range(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit).Replace(" to ", "–", StringComparison.Ordinal), Say.Percent(analysis.GainLeftPercent),
            member.LastOuting is { } day ? Say.Day(day) : "none yet",
            analysis.DiminishingReturns ? "done" : ToGo(analysis.OutingsToGo),
            member.Soreness is null ? Say.Nothing : RecentSoreness.Hurts(member.Soreness) ? $"! {member.Soreness}" : $"{member.Soreness}",
            analysis.Checks.Count == 0 ? Say.Nothing : string.Join(", ", analysis.Checks.Select(check => Warnings.Brief(check.Name))),
        ];
    }

    private static string ToGo(OutingsToGo toGo) =>
        toGo.Low == toGo.High ? $"{toGo.Median}{(toGo.Median >= OutingsToGo.Most ? "+" : "")}" : $"{toGo.Median} ({toGo.Low}–{toGo.High}{(toGo.High >= OutingsToGo.Most ? "+" : "")})";

    private static CardToFill Card(SquadMember member, IReadOnlyList<string> common)
    {
        Analysis analysis = member.Analysis;
        string heading = $"{PlainText.Line(analysis.Paddler.Name)}, {PlainText.Line(analysis.Hull.Name)} with {PlainText.Line(analysis.Paddle.Name)}"
            + (RecentSoreness.Hurts(member.Soreness) ? " (sore: rest first, this when it no longer hurts)"
                : analysis.DiminishingReturns ? " (done: only to test on regardless)" : "");
        List<string> own = [.. CautionsSection.For(analysis).Except(common)];
        return CardWords.ToFill(heading, analysis, own.Count == 0 ? null : string.Join(" ", own));
    }
}
