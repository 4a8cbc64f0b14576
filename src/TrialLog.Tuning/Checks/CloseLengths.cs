namespace TrialLog.Tuning.Checks;

/// <summary>Lengths so close together that their difference in speed drowns in the noise.</summary>
internal sealed class CloseLengths : ILogCheck
{
    private const int EnoughPieces = 4;

    /// <summary>
    /// Narrower than this, the speeds at the two ends of a middling curve (0.35 % per inch²) differ by about 0.1 %, a tenth of the noise of
    /// a piece.
    /// </summary>
    private const double NarrowInches = 0.75;

    public HealthCheck? Look(CheckedLog log)
    {
        if (log.Counted.Count < EnoughPieces)
            return null;
        double spread = log.Counted.Max(piece => piece.LengthInches) - log.Counted.Min(piece => piece.LengthInches);
        return spread is > 0.1 and < NarrowInches
            ? new("close-lengths") { Inches = spread }
            : null;
    }
}
