using MathNet.Numerics.Distributions;
using MathNet.Numerics.Interpolation;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>The posterior of one quantity on evenly spaced values.</summary>
/// <param name="Values">The values, rising.</param>
/// <param name="Probabilities">Their probabilities, which sum to one.</param>
internal sealed record Marginal(double[] Values, double[] Probabilities)
{
    /// <summary>The mean of a function of the quantity.</summary>
    public double Mean(Func<double, double> of)
    {
        double sum = 0;
        for (int k = 0; k < Values.Length; k++)
            sum += Probabilities[k] * of(Values[k]);
        return sum;
    }

    private const int Finer = 16;
    private readonly Lazy<double[]> _below = new(() => Cumulated(Values, Probabilities));

    /// <summary>
    /// The value below which that share of the probability lies. Between the values the density follows a cubic spline through
    /// its logarithm, so that a coarse grid still gives smooth quantiles.
    /// </summary>
    public double Quantile(double share)
    {
        // A few values stand for a normal.
        if (Values.Length < 5)
        {
            double mean = Mean(static value => value), square = Mean(static value => value * value);
            return mean + Math.Sqrt(Math.Max(0, square - mean * mean)) * Normal.InvCDF(0, 1, share);
        }

        double[] below = _below.Value;
        double step = (Values[1] - Values[0]) / Finer, sought = share * below[^1];
        int cell = Array.FindIndex(below, upTo => upTo >= sought);
        double before = cell <= 0 ? 0 : below[cell - 1];
        return cell < 0 ? Values[^1] : Values[0] + step * (cell + (sought - before) / (below[cell] - before));
    }

    private static double[] Cumulated(double[] values, double[] probabilities)
    {
        double floor = 1e-12 * probabilities.Max(), step = (values[1] - values[0]) / Finer, sum = 0;
        var logDensity = CubicSpline.InterpolateNaturalSorted(
            values, [.. probabilities.Select(probability => Math.Log(Math.Max(probability, floor)))]);
        double[] below = new double[(values.Length - 1) * Finer];
        for (int k = 0; k < below.Length; k++)
            below[k] = sum += Math.Exp(logDensity.Interpolate(values[0] + (k + 0.5) * step));
        return below;
    }
}
