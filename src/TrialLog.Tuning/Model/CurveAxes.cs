using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// Evenly spaced values of log curvature and duration effect, with the logarithm of what is believed of each before any piece.
/// </summary>
/// <param name="LogCurvatures">ln c, rising.</param>
/// <param name="DurationEffects">κ, rising.</param>
/// <param name="LogCurvatureDensity">Log prior density of each ln c, up to a constant.</param>
/// <param name="LogDurationDensity">Log prior density of each κ, up to a constant.</param>
internal sealed record CurveAxes(
    double[] LogCurvatures, double[] DurationEffects, double[] LogCurvatureDensity, double[] LogDurationDensity)
{
    private const int CurvatureNodes = 15, DurationNodes = 7, MostRounds = 8;

    /// <summary>How far from zero κ is worth looking at, in its spreads.</summary>
    private const double DurationReach = 3.5;

    /// <summary>
    /// Gauss and Hermite's three places for a normal and their log weights but for a constant: they give its moments up to the fifth.
    /// Where each hull has pieces of one duration the log says next to nothing of κ by itself, and these three stand for it.
    /// </summary>
    private static readonly (double Place, double LogWeight)[] Three = [
        (-Math.Sqrt(3), -Math.Log(4)), (0, 0), (Math.Sqrt(3), -Math.Log(4))];

    /// <summary>More weight at an end than this share of the most calls for a wider range.</summary>
    private const double Considerable = 0.01;

    /// <summary>As wide as what is believed before any piece.</summary>
    public static CurveAxes Before(TuningSettings settings)
    {
        (double low, double high, double lowKappa, double highKappa) = Range(settings);
        return At(settings, Evenly(low, high, CurvatureNodes), Evenly(lowKappa, highKappa, DurationNodes));
    }

    /// <summary>Places them where the posterior has its mass, for these spreads: zooms in until the range stays.</summary>
    public static CurveAxes Place(
        PieceTable table, BestLengthPrior prior, TuningSettings settings, ReducedGram? gram, double logBase, double credit)
    {
        (double low, double high, double lowKappa, double highKappa) = Range(settings);
        double[]? durations = table.OneDurationAHull ? [.. Three.Select(one => one.Place * settings.DurationSpreadInches)] : null;
        for (int round = 0; ; round++)
        {
            CurveAxes axes = At(settings, Evenly(low, high, CurvatureNodes), durations ?? Evenly(lowKappa, highKappa, DurationNodes));
            if (round == MostRounds)
                return axes;
            (double[] curvature, double[] duration) = Marginals(new(table, prior, settings, axes, gram, logBase, credit, moments: false));
            (double newLow, double newHigh) = Range(axes.LogCurvatures, curvature, 1e-6);
            (double newLowKappa, double newHighKappa) = Range(axes.DurationEffects, duration, 1e-3);
            bool settled = Settled(low, high, newLow, newHigh)
                && (durations is not null || Settled(lowKappa, highKappa, newLowKappa, newHighKappa));
            if (settled)
                return axes;
            (low, high, lowKappa, highKappa) = (newLow, newHigh, newLowKappa, newHighKappa);
        }

        static bool Settled(double low, double high, double newLow, double newHigh) =>
            newLow >= low && newHigh <= high && newHigh - newLow > 0.6 * (high - low);
    }

    private static (double Low, double High, double LowKappa, double HighKappa) Range(TuningSettings settings)
    {
        (double low, double high) = CurvaturePrior.Range(settings);
        double reach = DurationReach * settings.DurationSpreadInches;
        return (low, high, -reach, reach);
    }

    /// <summary>Axes of those evenly spaced values.</summary>
    public static CurveAxes At(TuningSettings settings, double[] curvatures, double[] durations) =>
        new(curvatures, durations, [.. curvatures.Select(at => CurvaturePrior.LogDensity(settings, at))],
            [.. durations.Select((at, k) => durations.Length == Three.Length ? Three[k].LogWeight
                : -0.5 * at * at / (settings.DurationSpreadInches * settings.DurationSpreadInches))]);

    private static double[] Evenly(double low, double high, int count)
    {
        double[] values = new double[count];
        for (int k = 0; k < count; k++)
            values[k] = low + (high - low) * k / (count - 1);
        return values;
    }

    private static (double[] Curvature, double[] Duration) Marginals(CurveNodes nodes)
    {
        double most = double.NegativeInfinity;
        foreach (double weight in nodes.LogWeights)
            most = Math.Max(most, weight);
        double[] curvature = new double[nodes.LogCurvatures.Length], duration = new double[nodes.DurationEffects.Length];
        for (int node = 0; node < nodes.Count; node++)
        {
            double weight = Math.Exp(nodes.LogWeights[node] - most);
            curvature[node % curvature.Length] += weight;
            duration[node / curvature.Length % duration.Length] += weight;
        }

        return (curvature, duration);
    }

    /// <summary>
    /// The part of the range whose weights are worth looking at, or a wider one where the weight at an end is considerable.
    /// </summary>
    private static (double Low, double High) Range(double[] values, double[] weights, double worth)
    {
        double most = 0;
        foreach (double weight in weights)
            most = Math.Max(most, weight);
        int first = 0, last = values.Length - 1;
        while (weights[first] < worth * most)
            first++;
        while (weights[last] < worth * most)
            last--;
        double step = values[1] - values[0], wider = values[^1] - values[0];
        return (
            weights[0] > Considerable * most ? values[0] - wider : Math.Max(values[0], values[first] - step),
            weights[^1] > Considerable * most ? values[^1] + wider : Math.Min(values[^1], values[last] + step));
    }
}
