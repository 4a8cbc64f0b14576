using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>Quantiles of a distribution that is known by its distribution function.</summary>
internal static class Quantiles
{
    private const double Accuracy = 1e-9;
    private const int MostSteps = 200;

    /// <summary>Where the distribution function reaches <paramref name="share"/>; an end where it does so beyond it.</summary>
    /// <param name="below">Probability below a value, rising.</param>
    /// <param name="low">A value with next to nothing below it.</param>
    /// <param name="high">A value with next to nothing above it.</param>
    /// <param name="share">The probability asked for, 0 to 1.</param>
    public static double Of(Func<double, double> below, double low, double high, double share)
    {
        if (below(low) >= share)
            return low;
        if (below(high) <= share)
            return high;
        Brent.TryFindRoot(at => below(at) - share, low, high, Accuracy, MostSteps, out double found);
        return found;
    }
}

/// <summary>A mixture of normal distributions.</summary>
/// <param name="Weights">Shares, which sum to one.</param>
/// <param name="Means">Mean of each.</param>
/// <param name="Sds">Standard deviation of each, above zero.</param>
internal sealed record NormalMixture(double[] Weights, double[] Means, double[] Sds)
{
    /// <summary>Probability below a value.</summary>
    public double Below(double value)
    {
        double sum = 0;
        for (int k = 0; k < Weights.Length; k++)
            sum += Weights[k] * StandardNormal.Below((value - Means[k]) / Sds[k]);
        return sum;
    }

    /// <summary>The value below which that share lies: between those of the parts.</summary>
    public double Quantile(double share)
    {
        double z = Normal.InvCDF(0, 1, share), low = double.MaxValue, high = double.MinValue;
        for (int k = 0; k < Weights.Length; k++)
        {
            low = Math.Min(low, Means[k] + z * Sds[k]);
            high = Math.Max(high, Means[k] + z * Sds[k]);
        }

        return Quantiles.Of(Below, low, high, share);
    }
}
