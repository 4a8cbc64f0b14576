namespace TrialLog.Tuning;

/// <summary>
/// Faster at both ends of the lengths tried than in between. The model believes that the curve bends down, so it would take such a
/// log for a flat one.
/// </summary>
internal sealed class CurveUpsideDown : ILogCheck
{
    private const int EnoughPieces = 12;

    /// <summary>From how many standard errors on the classical parabola surely bends upwards. Chosen.</summary>
    private const double SurelyInErrors = 2.5;

    public HealthCheck? Look(CheckedLog log)
    {
        if (log.InHull.Count < EnoughPieces)
            return null;
        IReadOnlyList<Coefficient> coefficients = Classical.Fit(log.Question).Coefficients;
        return coefficients.Count > 2 && coefficients[2].Estimate > SurelyInErrors * coefficients[2].StandardError
            ? new("curve-upside-down", "The pieces at both ends of the lengths tried were faster than those in between, which no best length explains; look for what else differed, such as effort, wind or a mistyped length, before trusting any answer.")
            : null;
    }
}
