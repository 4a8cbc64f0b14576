namespace TrialLog.Tuning.Model;

/// <summary>
/// What is believed of the curvature before any piece: for most paddlers length matters, for some it hardly does. Two log-normals
/// of the same log spread, the flat one's median lower.
/// </summary>
internal static class CurvaturePrior
{
    /// <summary>How far from a median the density is worth counting, log spreads.</summary>
    private const double Reach = 4.2;

    /// <summary>Log density, up to a constant, of the logarithm of the curvature.</summary>
    public static double LogDensity(TuningSettings settings, double logCurvature)
    {
        double curved = LogNormal(Math.Log(settings.CurvatureMedian)) + Math.Log(1 - settings.FlatShare);
        if (settings.FlatShare <= 0)
            return curved;
        double flat = LogNormal(Math.Log(settings.CurvatureMedian * settings.FlatFactor)) + Math.Log(settings.FlatShare),
            most = Math.Max(curved, flat);
        return most + Math.Log(Math.Exp(curved - most) + Math.Exp(flat - most));

        double LogNormal(double mean)
        {
            double square = (logCurvature - mean) * (logCurvature - mean) / (settings.CurvatureLogSpread * settings.CurvatureLogSpread),
                nu = settings.CurvatureDegreesOfFreedom;
            return double.IsPositiveInfinity(nu) ? -0.5 * square : -0.5 * (nu + 1) * Math.Log(1 + square / nu);
        }
    }

    /// <summary>The range of log curvatures that is worth looking at.</summary>
    public static (double Low, double High) Range(TuningSettings settings)
    {
        double curved = Math.Log(settings.CurvatureMedian), reach = Reach * settings.CurvatureLogSpread;
        return (curved + (settings.FlatShare > 0 ? Math.Log(settings.FlatFactor) : 0) - reach, curved + reach);
    }
}
