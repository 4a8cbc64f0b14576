using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tuning.Checks;

/// <summary>One length paddled harder than another: effort looks like length.</summary>
internal sealed class EffortTangled : ILogCheck
{
    private const int EnoughPieces = 4;

    public HealthCheck? Look(CheckedLog log)
    {
        List<CheckedPiece> told = [.. log.InHull.Where(piece => piece.Piece.Effort is not null)];
        if (told.Count < EnoughPieces)
            return null;
        double correlation = Association.WithinOutings(told, piece => piece.Piece.Effort!.Value.Points);
        return Math.Abs(correlation) >= Association.Tangled
            ? new("effort-tangled") { Longer = correlation > 0 }
            : null;
    }
}
