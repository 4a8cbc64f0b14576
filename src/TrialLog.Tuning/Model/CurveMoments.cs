namespace TrialLog.Tuning.Model;

/// <summary>
/// Posterior mean and covariance, at one pair of spreads, of what multiplies the response columns in a hull:
/// 1, s c, −2 s c θ, −2 s c κ, s c κ², 2 s c θ κ.
/// </summary>
internal static class CurveMoments
{
    public static (double[] Mean, double[] Covariance) Of(CurveNodes nodes, PieceTable table, int hull)
    {
        const int Columns = PieceTable.ResponseColumns;
        double[] mean = new double[Columns], square = new double[Columns * Columns];
        double most = double.NegativeInfinity, total = 0, share = table.Share[hull];
        foreach (double weight in nodes.LogWeights)
            most = Math.Max(most, weight);
        int hulls = table.Hulls.Count;
        Span<double> vector = stackalloc double[Columns], slope = stackalloc double[Columns];
        for (int node = 0; node < nodes.Count; node++)
        {
            double weight = Math.Exp(nodes.LogWeights[node] - most);
            if (weight < 1e-9)
                continue;
            double c = share * Math.Exp(nodes.LogCurvatures[node % nodes.LogCurvatures.Length]);
            double kappa = nodes.DurationEffects[node / nodes.LogCurvatures.Length % nodes.DurationEffects.Length];
            double theta = nodes.Means[node * hulls + hull], variance = nodes.Variances[node * hulls + hull];
            vector[0] = 1;
            vector[1] = c;
            vector[2] = -2 * c * theta;
            vector[3] = -2 * c * kappa;
            vector[4] = c * kappa * kappa;
            vector[5] = 2 * c * theta * kappa;
            slope[2] = -2 * c;
            slope[5] = 2 * c * kappa;
            total += weight;
            for (int a = 0; a < Columns; a++)
            {
                mean[a] += weight * vector[a];
                for (int b = 0; b < Columns; b++)
                    square[a * Columns + b] += weight * (vector[a] * vector[b] + variance * slope[a] * slope[b]);
            }
        }

        for (int a = 0; a < Columns; a++)
            mean[a] /= total;
        for (int a = 0; a < Columns; a++)
            for (int b = 0; b < Columns; b++)
                square[a * Columns + b] = square[a * Columns + b] / total - mean[a] * mean[b];
        return (mean, square);
    }
}
