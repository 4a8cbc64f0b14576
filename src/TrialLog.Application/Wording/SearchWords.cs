using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>How a search went, outing by outing.</summary>
internal static class SearchWords
{
    /// <summary>Columns of a table of outings.</summary>
    public static readonly (string Outing, string Best, string Range, string GainLeft, string Chance) Columns =
        ("outing", "best length", "likely range", "gain left", "chance of more");

    /// <summary>The verdict over a search: when it came to its end, or how far it is.</summary>
    /// <param name="points">The search, oldest first; at least one.</param>
    /// <param name="worthwhilePercent">The smallest change of speed that matters.</param>
    public static string Verdict(IReadOnlyList<ProgressPoint> points, double worthwhilePercent)
    {
        ProgressPoint last = points[^1];
        if (!last.DiminishingReturns && last.Then is { TooShort: { } pieces } then && then.Why.Contains(StandingReason.PiecesTooShort))
            return $"Pieces of {Say.Distance(pieces.Distance)} have told what they can: with any number of them there is " +
                $"{Say.AChance(pieces.ChanceBeyond)} that another length is faster by {Say.ChosenPercent(worthwhilePercent)} or more.";
        if (!last.DiminishingReturns)
            return $"Not yet time to stop: there is {Say.AChance(last.ProbabilityWorthwhileLeft)} that another length is faster by " +
                $"{Say.ChosenPercent(worthwhilePercent)} or more.";
        int first = points.First(point => point.DiminishingReturns).Outings;
        int steadily = points.Reverse().TakeWhile(point => point.DiminishingReturns).Last().Outings;
        return first == steadily ? $"Time to stop (since outing {first})."
            : $"Time to stop (first after outing {first}, steadily since outing {steadily}).";
    }

    /// <summary>What stands in the first column: <c>8 (2026-05-03)</c>, <c>start</c>.</summary>
    public static string After(ProgressPoint point) => point.Date is { } day ? $"{point.Outings,2}  {Say.Day(day)}" : "start";
}
