using TrialLog.Domain.Log;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tuning.Checks;

/// <summary>Each hull with its own lengths: the hulls do not compare the same lengths.</summary>
internal sealed class HullTangled : ILogCheck
{
    private const int EnoughPieces = 6;

    /// <summary>From this share on, next to nothing is compared inside a hull. Chosen.</summary>
    private const double NearlyAll = 0.9;

    public HealthCheck? Look(CheckedLog log) =>
        log.Counted.Count >= EnoughPieces && Association.BetweenShare(log.Counted, piece => piece.Outing.HullId) >= NearlyAll
            ? new("hull-tangled")
            : null;
}
