using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// Posterior mean and covariance, at one pair of spreads, of what multiplies the response columns in a hull:
/// 1, s c, −2 s c θ, −2 s c κ, s c κ², 2 s c θ κ, c g.
/// </summary>
internal static class CurveMoments
{
    /// <summary>Where the posterior has the top of the curve in each hull that has pieces, aligned inches.</summary>
    public static double[] Tops(CurveNodes nodes, PieceTable table)
    {
        double[] tops = new double[table.HullsWithPieces];
        for (int h = 0; h < tops.Length; h++)
        {
            (double[] mean, _) = Of(nodes, table, h);
            tops[h] = -mean[2] / (2 * mean[1]);
        }

        return tops;
    }

    /// <summary>Mean and covariance (row-major) in one hull.</summary>
    public static (double[] Mean, double[] Covariance) Of(CurveNodes nodes, PieceTable table, int hull)
    {
        const int Columns = PieceTable.ResponseColumns, Last = Columns - 1;
        double[] mean = new double[Columns], square = new double[Columns * Columns];
        double most = double.NegativeInfinity, total = 0, share = table.Share[hull];
        foreach (double weight in nodes.LogWeights)
            most = Math.Max(most, weight);
        int skew = nodes.Unknowns - 1;
        Span<double> vector = stackalloc double[Columns], slope = stackalloc double[Columns];
        for (int node = 0; node < nodes.Count; node++)
        {
            double weight = Math.Exp(nodes.LogWeights[node] - most);
            if (weight < 1e-9)
                continue;
            double alone = Math.Exp(nodes.LogCurvatures[node % nodes.LogCurvatures.Length]), c = share * alone;
            double kappa = nodes.DurationEffects[node / nodes.LogCurvatures.Length % nodes.DurationEffects.Length];
            int of = node * nodes.Unknowns;
            double theta = nodes.Means[of + hull], variance = nodes.Variances[of + hull];
            double skewVariance = alone * alone * nodes.Variances[of + skew], covariance = alone * nodes.WithSkew[of + hull];
            vector[0] = 1;
            vector[1] = c;
            vector[2] = -2 * c * theta;
            vector[3] = -2 * c * kappa;
            vector[4] = c * kappa * kappa;
            vector[5] = 2 * c * theta * kappa;
            vector[6] = alone * nodes.Means[of + skew];
            slope[2] = -2 * c;
            slope[5] = 2 * c * kappa;
            total += weight;
            for (int a = 0; a < Columns; a++)
            {
                mean[a] += weight * vector[a];
                for (int b = 0; b < Columns; b++)
                    square[a * Columns + b] += weight * (vector[a] * vector[b] + variance * slope[a] * slope[b]);
                square[a * Columns + Last] += weight * covariance * slope[a];
                square[Last * Columns + a] += weight * covariance * slope[a];
            }

            square[Last * Columns + Last] += weight * skewVariance;
        }

        for (int a = 0; a < Columns; a++)
            mean[a] /= total;
        for (int a = 0; a < Columns; a++)
            for (int b = 0; b < Columns; b++)
                square[a * Columns + b] = square[a * Columns + b] / total - mean[a] * mean[b];
        return (mean, square);
    }
}
