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
            ? new("order-tangled", $"The {(correlation > 0 ? "longer" : "shorter")} lengths mostly came late in the outing, so getting tired looks like length; paddle in mirrored order, A B B A.")
            : null;
    }
}
