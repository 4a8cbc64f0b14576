using TrialLog.Application.Next;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Screens.Base;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Wording;

namespace TrialLog.Screens.Next;

/// <summary>What the screen says of the search, from an analysis or, until there is one, from the card given last.</summary>
internal sealed record NextSummary(
    TrialCard Card, string Best, string Likely, string GainLeft, string ToGo, string RestsOn, string Verdict, bool Stop, IReadOnlyList<string> Cautions)
{
    /// <summary>The facts; null while there is neither an analysis nor a card.</summary>
    public static NextSummary? Of(Session session, Chosen chosen, Analysis? analysis)
    {
        LengthUnit unit = session.Unit;
        if (analysis is not null)
        {
            return new NextSummary(
                analysis.Card,
                analysis.Best.Length.Say(unit),
                LengthWords.SayRange(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit),
                $"{Saying.Percent(analysis.GainLeftPercent)}, {Saying.Gain(analysis.GainLeftSeconds, analysis.GoalSeconds)}",
                Saying.OutingsToGo(analysis.OutingsToGo),
                Basis(analysis),
                analysis.Verdict,
                analysis.DiminishingReturns,
                [.. analysis.Cautions, .. analysis.Checks.Select(check => check.Says)]);
        }

        return session.State.OpenCard is not { } given ? null : new NextSummary(
            given.Card,
            given.Best.Say(unit),
            LengthWords.SayRange(given.LikelyLow, given.LikelyHigh, unit),
            Saying.Percent(given.GainLeftPercent),
            "",
            $"as of {given.GivenAt.ToLocalTime():yyyy-MM-dd}",
            given.Card.Reason,
            given.DiminishingReturns,
            []);
    }

    /// <summary>Everything behind the card, in paragraphs; the cautions first while the paddler is sore.</summary>
    public static string Why(Analysis analysis, bool sore)
    {
        LengthUnit unit = analysis.Paddler.Unit;
        var text = new List<string>
        {
            analysis.Card.Reason,
            "# What the log says",
            analysis.Verdict,
            $"Best length {analysis.Best.Length.Say(unit)}, likely {LengthWords.SayRange(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit)}; within a quarter inch with {Saying.Chance(analysis.Best.WithinQuarterInch)}.",
            $"You are at {analysis.Current.Say(unit)}. Moving to the best length is worth {Saying.Percent(analysis.GainFromMovingPercent)}, {Saying.Gain(analysis.GainFromMovingSeconds, analysis.GoalSeconds)}.",
            $"Gain left to more testing: {Saying.Percent(analysis.GainLeftPercent)}, {Saying.Gain(analysis.GainLeftSeconds, analysis.GoalSeconds)}. A worthwhile change is {Saying.Percent(analysis.WorthwhilePercent)}; that another length is that much faster has a probability of {Saying.Chance(analysis.ProbabilityWorthwhileLeft)}.",
            $"Outings to go: {Saying.OutingsToGo(analysis.OutingsToGo)}. So far {Count(analysis.Outings, "outing")} and {Count(analysis.Pieces, "piece")} count.",
        };
        IEnumerable<string> cautions = analysis.Cautions.Select(caution => "! " + caution);
        if (sore)
            text.InsertRange(0, [.. cautions, "# The card, when it no longer hurts"]);
        text.Add("# The experiment itself");
        text.AddRange(analysis.Checks.Count == 0 ? ["Nothing stands out."] : analysis.Checks.Select(check => "! " + check.Says));
        if (!sore && analysis.Cautions.Count > 0)
            text.AddRange(["# Cautions", .. cautions]);
        return string.Join('\n', text.Select((line, index) => line.StartsWith('#') && index > 0 ? "\n" + line : line));
    }

    private static string Basis(Analysis analysis) => analysis.Pieces == 0
        ? "from the start length alone; no piece counts yet"
        : $"from {Count(analysis.Outings, "outing")} and {Count(analysis.Pieces, "piece")}";

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
