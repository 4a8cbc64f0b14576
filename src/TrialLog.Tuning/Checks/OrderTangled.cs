using TrialLog.Domain.Log;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tuning.Checks;

/// <summary>Longer lengths always late in the outing, or always early: fading looks like length.</summary>
internal sealed class OrderTangled : ILogCheck
{
    private const int EnoughPieces = 4;

    public HealthCheck? Look(CheckedLog log)
    {
        if (log.InHull.Count < EnoughPieces)
            return null;
        double correlation = Association.WithinOutings(log.InHull, piece => piece.Piece.Order);
        return Math.Abs(correlation) >= Association.Tangled
            ? new("order-tangled") { Longer = correlation > 0 }
            : null;
    }
}
