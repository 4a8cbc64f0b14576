using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Reports.Squads;

/// <summary>Who tests what when, as a table to read and a page to print.</summary>
public static class PlanPage
{
    /// <summary>One self-contained HTML page that prints on A4 and Letter.</summary>
    public static string ToHtml(SquadPlan plan) => Html.Write(Document(plan));

    /// <summary>The same as plain text.</summary>
    public static string ToText(SquadPlan plan) => PlainPage.Write(Document(plan));

    /// <summary>The same in Markdown.</summary>
    public static string ToMarkdown(SquadPlan plan) => Markdown.Write(Document(plan));

    private static Document Document(SquadPlan plan) => new(
        "Testing plan",
        $"{Say.Count(plan.Weeks, "week")} from {Say.DayInWords(plan.First)}, {Say.Count(plan.Paddles.Count, "paddle")}. By what each " +
            $"outing should win the squad; make it anew each week.",
        [When(plan), Won(plan), CautionsSection.Of(CautionsSection.Common([.. plan.Outings.Select(outing => outing.Analysis)]))],
        $"TrialLog {PlainText.Line(plan.Version)}, {Say.Day(plan.First)}.");

    private static Section When(SquadPlan plan) => plan.Outings.Count == 0
        ? new("Who tests when", new Paragraph("Nobody: no outing with these paddles would win more than it costs."))
        : new("Who tests when",
            new Table("The paddler who has each paddle, and which of their outings it is; lengths for the first, the others follow " +
            "from what was paddled",
            [new("Week of"), .. plan.Paddles.Select(paddle => new Column(PlainText.Line(paddle.Name)))],
            [.. Enumerable.Range(1, plan.Weeks).Select(week => (IReadOnlyList<string>)
            [
                Say.Day(plan.DayOf(week)), .. plan.Paddles.Select(paddle => Lent(plan, plan.DayOf(week), paddle)),
            ])], Stacks: true));

    private static string Lent(SquadPlan plan, DateOnly day, Paddle paddle)
    {
        List<string> lent = [.. plan.Outings.Where(outing => outing.Day == day && outing.Paddle.Id == paddle.Id).Select(outing =>
            $"{PlainText.Line(outing.Analysis.Paddler.Name)}, {Which(outing)}")];
        return lent.Count == 0 ? "free" : string.Join('\n', lent);

        static string Which(PlannedOuting outing) => outing.Outing > 1 ? $"outing {outing.Outing}"
            : outing.StandingCard is { Blind: true } ? "blind"
            : Say.Order(outing.Analysis.Card.Lengths.Distinct().Order(), outing.Analysis.Paddler.Unit);
    }

    private static Section Won(SquadPlan plan) =>
        new("What it should win", new Table("On average, over each paddler's race; last why others have no outing",
        [new("Paddler"), new("Outings", true), new("Should win", true), new("Why none")],
        [.. plan.Paddlers.Select(one => (IReadOnlyList<string>)
        [
            PlainText.Line(one.Row.Paddler.Name), one.Outings == 0 ? Say.Nothing : $"{one.Outings}",
                one.Outings == 0 ? Say.Nothing : Say.Seconds(one.WonSeconds),
            one.WhyNone.Length == 0 ? Say.Nothing : one.WhyNone,
        ])], Stacks: true));
}
