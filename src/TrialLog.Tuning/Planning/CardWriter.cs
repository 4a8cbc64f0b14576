using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Planning;

/// <summary>Makes a card of planned lengths: distance, effort and rest as the paddler usually has them.</summary>
internal static class CardWriter
{
    private const double UsualEffort = 6, LongestRestSeconds = 300, ShortestRestSeconds = 120;

    /// <summary>The card.</summary>
    public static TrialCard Of(AssessedFit assessed, PlannedLengths planned)
    {
        (AnalysisInput question, Fit fit) = (assessed.Input, assessed.Fit);
        return new()
        {
            Lengths = planned.Lengths,
            Distance = planned.Form.Distance,
            Effort = UsualEffortOf(fit.Table),
            Rest = Rest(planned.Form.PieceSeconds),
        };
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

    private static PieceTime Rest(double pieceSeconds)
    {
        double seconds = Math.Clamp(pieceSeconds / 2, ShortestRestSeconds, LongestRestSeconds);
        return PieceTime.FromSeconds(Math.Round(seconds / 30) * 30);
    }
}
