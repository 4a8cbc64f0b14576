using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Checks;

/// <summary>Effort not told: a little more effort moves the pace more than an inch of paddle does.</summary>
internal sealed class EffortMissing : ILogCheck
{
    private const int EnoughPieces = 4;

    /// <summary>Share of the pieces from which it is worth a word. Chosen.</summary>
    private const double Many = 0.2;

    public HealthCheck? Look(CheckedLog log)
    {
        int missing = log.Counted.Count(piece => piece.Piece.Effort is null);
        return log.Counted.Count >= EnoughPieces && missing >= Many * log.Counted.Count
            ? new("effort-missing") { Count = missing, Of = log.Counted.Count }
            : null;
    }
}
