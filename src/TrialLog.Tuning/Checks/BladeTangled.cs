using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tuning.Checks;

/// <summary>Each paddle with its own lengths: a faster blade looks like a better length.</summary>
internal sealed class BladeTangled : ILogCheck
{
    private const int EnoughPieces = 4;

    /// <summary>From this share on, next to nothing is compared with the same blade. Chosen.</summary>
    private const double NearlyAll = 0.9;

    public HealthCheck? Look(CheckedLog log) =>
        log.InHull.Count >= EnoughPieces && Association.BetweenShare(log.InHull, piece => piece.Piece.PaddleId) >= NearlyAll
            ? new("blade-tangled") { Hull = log.Question.Hull.Name }
            : null;
}
