using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>Places the grid over log curvature and duration effect where the posterior has its mass.</summary>
internal static class CurveGrid
{
    private const int CurvatureNodes = 15, DurationNodes = 7, MostRounds = 8;

    /// <summary>The nodes for these spreads, evaluated there; zooms in until the range stays.</summary>
    public static CurveNodes Place(PieceTable table, BestLengthPrior prior, TuningSettings settings, ReducedGram? gram, double logBase, double credit)
    {
        double reachKappa = 3.5 * settings.DurationSpreadInches, lowKappa = -reachKappa, highKappa = reachKappa;
        (double low, double high) = CurvaturePrior.Range(settings);
        for (int round = 0; ; round++)
        {
            CurveNodes nodes = new(table, prior, settings, Evenly(low, high, CurvatureNodes), Evenly(lowKappa, highKappa, DurationNodes));
            nodes.Evaluate(gram, logBase, credit);
            if (round == MostRounds)
                return nodes;
            (double[] curvature, double[] duration) = Marginals(nodes);
            (double newLow, double newHigh) = Range(nodes.LogCurvatures, curvature, 1e-6);
            (double newLowKappa, double newHighKappa) = Range(nodes.DurationEffects, duration, 1e-3);
            bool settled = newHigh - newLow > 0.6 * (high - low) && newHighKappa - newLowKappa > 0.6 * (highKappa - lowKappa);
            if (settled)
                return nodes;
            (low, high, lowKappa, highKappa) = (newLow, newHigh, newLowKappa, newHighKappa);
        }
    }

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
        double step = values[1] - values[0];
        return (Math.Max(values[0], values[first] - step), Math.Min(values[^1], values[last] + step));
    }
}
