using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Planning;

/// <summary>Makes a card of planned lengths: distance, effort and rest as the paddler usually has them.</summary>
internal static class CardWriter
{
    private const double UsualMetres = 1000, UsualEffort = 6, ShortestMetres = 250, LongestRestSeconds = 300, ShortestRestSeconds = 120;

    /// <summary>The card.</summary>
    public static TrialCard Of(AssessedFit assessed, PlannedLengths planned)
    {
        (AnalysisInput question, Fit fit) = (assessed.Input, assessed.Fit);
        Distance distance = UsualDistance(question, fit.Table);
        return new()
        {
            Lengths = planned.Lengths,
            Distance = distance,
            Effort = UsualEffortOf(fit.Table),
            Rest = Rest(fit),
        };
    }

    private static Distance UsualDistance(AnalysisInput question, PieceTable table)
    {
        if (table.Count > 0)
        {
            List<Distance> sorted = [.. table.Pieces.Select(static piece => piece.Distance)];
            sorted.Sort();
            return sorted[sorted.Count / 2];
        }

        double metres = question.Paddler.Goal?.Distance is { } goal ? Math.Clamp(goal.Metres, ShortestMetres, UsualMetres) : UsualMetres;
        return Distance.FromMetres(metres);
    }

    private static Effort UsualEffortOf(PieceTable table)
    {
        List<Effort> sorted = [];
        foreach (Piece piece in table.Pieces)
            if (piece.Effort is { } effort)
                sorted.Add(effort);
        sorted.Sort();
        return sorted.Count == 0 ? Effort.FromPoints(UsualEffort) : sorted[sorted.Count / 2];
    }

    private static PieceTime Rest(Fit fit)
    {
        double seconds = Math.Clamp(300 * Math.Exp(fit.CardLogDuration) / 2, ShortestRestSeconds, LongestRestSeconds);
        return PieceTime.FromSeconds(Math.Round(seconds / 30) * 30);
    }
}
