using MathNet.Numerics.Statistics;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>How long the goal event and the pieces of a card take.</summary>
internal static class Durations
{
    /// <summary>Riegel's exponent: T2 = T1 (D2/D1)^1.06 (Riegel 1981, American Scientist 69:285-90).</summary>
    private const double Riegel = 1.06;

    /// <summary>Speed assumed where no piece tells it, m/s. Chosen: a solo outrigger canoe at an easy pace.</summary>
    private const double AssumedSpeed = 3;

    /// <summary>
    /// Logarithm over the reference duration of the pieces usually paddled: the median over the log, the reference if there is none.
    /// </summary>
    public static double OfCard(AnalysisInput question, PieceTable table)
    {
        if (table.Count == 0)
            return 0;
        return table.LogDuration.Median();
    }

    /// <summary>The same for the goal event, null where none is named.</summary>
    public static double? OfGoal(AnalysisInput question, PieceTable table) =>
        GoalSeconds(question, table) is { } seconds ? Math.Log(seconds / question.Settings.ReferenceSeconds) : null;

    /// <summary>
    /// Seconds the goal event takes, as known or reckoned from the pieces in its hull, else from all; null where none is named.
    /// </summary>
    public static double? GoalSeconds(AnalysisInput question, PieceTable table)
    {
        if (question.Paddler.Goal is not { } goal)
            return null;
        if (goal.Time is { } time)
            return time.Seconds;
        if (goal.Distance is not { } distance)
            return null;
        List<double> estimates = Estimates(table, distance, hull => hull.Id == goal.HullId);
        if (estimates.Count == 0)
            estimates = Estimates(table, distance, static _ => true);
        if (estimates.Count == 0)
            return distance.Metres / AssumedSpeed;
        return estimates.Median();
    }

    private static List<double> Estimates(PieceTable table, Distance distance, Func<Hull, bool> counts)
    {
        List<double> estimates = [];
        for (int j = 0; j < table.OutingHull.Length; j++)
            for (int i = table.OutingStart[j]; i < table.OutingStart[j + 1]; i++)
                if (counts(table.Hulls[table.OutingHull[j]]))
                    estimates.Add(table.Pieces[i].Time.Seconds * Math.Pow(distance.Metres / table.Pieces[i].Distance.Metres, Riegel));
        return estimates;
    }
}
