using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// Student's t as a scale mixture of normals: a piece whose residual is large against the spread counts for less,
/// w = (ν + 1) / (ν + E[r²]/σ²). The residual's own uncertainty is part of E[r²], so that few pieces, which any curve can
/// fit, are not taken for a small spread. Source: the expectation step of Lange, Little and Taylor 1989, J Am Stat Assoc
/// 84(408):881-96, with the posterior in place of a point estimate.
/// </summary>
internal sealed class HeavyTails
{
    private readonly PieceTable _table;
    private readonly TuningSettings _settings;
    private readonly double[] _variances;
    private readonly double _pieceVariance;

    private HeavyTails(PieceTable table, TuningSettings settings, double[] residuals, double[] variances, double pieceVariance) =>
        (_table, _settings, Residuals, _variances, _pieceVariance) = (table, settings, residuals, variances, pieceVariance);

    /// <summary>Before any fit: every piece has weight 1.</summary>
    public static HeavyTails Before(PieceTable table, TuningSettings settings) =>
        new(table, settings, new double[table.Count], new double[table.Count], 0);

    /// <summary>
    /// The share of the information about the curve that is left once the weights count as unknown. Taken as known they make
    /// Student's t look like normals of precision E[w]/σ²; its Fisher information about the centre is (ν + 1)/(ν + 3)/σ², and
    /// E[w] is 1 (Lange, Little and Taylor 1989).
    /// </summary>
    public double Credit => double.IsPositiveInfinity(_settings.DegreesOfFreedom)
        ? 1
        : (_settings.DegreesOfFreedom + 1) / (_settings.DegreesOfFreedom + 3);

    /// <summary>Posterior mean of each piece's residual, percent.</summary>
    public double[] Residuals { get; }

    /// <summary>
    /// The weights at that spread of pieces, and what they add to the log density there. Without it the spread would seem better known than
    /// heavy tails let it be. It is Laplace's approximation to the integral over the logarithms of the gamma mixing weights: ν/2 (ln w − w)
    /// at their most probable values, less half the log determinant of the curvature there, of which the diagonal is kept. Source: Tierney
    /// and Kadane 1986, J Am Stat Assoc 81(393):82-6.
    /// </summary>
    public PieceWeights At(double pieceSpread)
    {
        double nu = _settings.DegreesOfFreedom, pieceVariance = pieceSpread * pieceSpread, sum = 0;
        double[] weights = new double[_table.Count];
        LogProduct product = new(), left = new();
        if (double.IsPositiveInfinity(nu) || _pieceVariance == 0)
        {
            Array.Fill(weights, 1);
            return new(weights, 0);
        }

        for (int i = 0; i < weights.Length; i++)
        {
            double known = _table.KnownVariance[i], variance = pieceVariance + known;
            // How uncertain the fit is goes with the noise; the residual hardly does.
            double uncertain = _variances[i] / (_pieceVariance + known), square = Residuals[i] * Residuals[i] / variance;
            double weight = (nu + 1) / (nu + square + uncertain);
            double misfit = weight * square, leverage = weight * uncertain;
            product.Times(weight);
            left.Times(Math.Max(0.1, 1 - leverage * (leverage + 2 * misfit) / (nu + 1)));
            sum += weight;
            weights[i] = weight;
        }

        return new(weights, 0.5 * nu * (product.Log - sum) - 0.5 * left.Log);
    }

    /// <summary>The same with the residuals of a fit, and the largest change of a weight that follows from them.</summary>
    /// <param name="table">The pieces as fitted.</param>
    /// <param name="gram">Computed at these spreads with <paramref name="weights"/>.</param>
    /// <param name="nodes">Evaluated on it.</param>
    /// <param name="weights">The weights of the fit.</param>
    /// <param name="outingSpread">τ.</param>
    /// <param name="pieceSpread">σ.</param>
    public (HeavyTails Tails, double Change) After(
        PieceTable table, ReducedGram gram, CurveNodes nodes, double[] weights, double outingSpread, double pieceSpread)
    {
        const int Columns = PieceTable.ResponseColumns;
        int fixedCount = gram.FixedCount, size = gram.Size, covariates = table.Covariates.Count, width = table.Width;
        double[] coefficients = Coefficients(gram);
        double[] residuals = new double[table.Count], variances = new double[table.Count];
        double[][] means = new double[table.HullsWithPieces][], covariances = new double[table.HullsWithPieces][];
        for (int h = 0; h < means.Length; h++)
            (means[h], covariances[h]) = CurveMoments.Of(nodes, table, h);

        double change = 0, pieceVariance = pieceSpread * pieceSpread, nu = _settings.DegreesOfFreedom;
        Span<double> sums = stackalloc double[Columns], alongSums = stackalloc double[Columns], shifted = stackalloc double[Columns];
        Span<double> fixedSums = new double[fixedCount], fixedAlong = new double[fixedCount], row = new double[fixedCount];
        for (int j = 0; j < table.OutingHull.Length; j++)
        {
            int hull = table.OutingHull[j], from = table.OutingStart[j], to = table.OutingStart[j + 1];
            double[] mean = means[hull], covariance = covariances[hull];
            double level = 1 / (outingSpread * outingSpread), tilt = 0;
            double along = 1 / (_settings.AlongCourseSpread * _settings.AlongCourseSpread);
            sums.Clear();
            alongSums.Clear();
            fixedSums.Clear();
            fixedAlong.Clear();
            for (int i = from; i < to; i++)
            {
                double precision = weights[i] / (pieceVariance + table.KnownVariance[i]), direction = table.Direction[i];
                level += precision;
                tilt += precision * direction;
                along += precision * direction * direction;
                Shifted(table, i, hull, coefficients, size, shifted);
                for (int k = 0; k < Columns; k++)
                {
                    sums[k] += precision * shifted[k];
                    alongSums[k] += precision * direction * shifted[k];
                }

                Fixed(i, hull, row);
                for (int k = 0; k < fixedCount; k++)
                {
                    fixedSums[k] += precision * row[k];
                    fixedAlong[k] += precision * direction * row[k];
                }
            }

            double determinant = level * along - tilt * tilt;
            for (int i = from; i < to; i++)
            {
                double direction = table.Direction[i];
                // What one more unit of the outing's weighted sums moves this piece's fitted value by.
                double perSum = (along - tilt * direction) / determinant, perAlong = (level * direction - tilt) / determinant;
                Shifted(table, i, hull, coefficients, size, shifted);
                double residual = 0, variance = perSum + direction * perAlong;
                for (int k = 0; k < Columns; k++)
                {
                    shifted[k] -= perSum * sums[k] + perAlong * alongSums[k];
                    residual += shifted[k] * mean[k];
                }

                for (int a = 1; a < Columns; a++)
                {
                    double across = 0.5 * covariance[a * Columns + a] * shifted[a];
                    for (int b = a + 1; b < Columns; b++)
                        across += covariance[a * Columns + b] * shifted[b];
                    variance += 2 * shifted[a] * across;
                }

                Fixed(i, hull, row);
                for (int k = 0; k < fixedCount; k++)
                    row[k] -= perSum * fixedSums[k] + perAlong * fixedAlong[k];
                Cholesky.Forward(gram.FixedBlock, fixedCount, row);
                for (int k = 0; k < fixedCount; k++)
                    variance += row[k] * row[k];
                residuals[i] = residual;
                variances[i] = variance;
                if (double.IsPositiveInfinity(nu))
                    continue;
                double weight = (nu + 1) / (nu + (residual * residual + variance) / (pieceVariance + table.KnownVariance[i]));
                change = Math.Max(change, Math.Abs(weight - weights[i]));
            }
        }

        return (new(table, _settings, residuals, variances, pieceVariance), change);

        void Fixed(int i, int hull, Span<double> into)
        {
            into.Clear();
            into[hull] = 1;
            for (int k = 0; k < covariates; k++)
                into[table.HullsWithPieces + k] = table.Rows[i * width + 1 + k];
        }
    }

    /// <summary>The response columns of a piece less what hull levels and covariates explain of them.</summary>
    private static void Shifted(PieceTable table, int i, int hull, double[] coefficients, int size, Span<double> into)
    {
        int covariates = table.Covariates.Count, row = i * table.Width, response = row + 1 + covariates;
        for (int k = 0; k < PieceTable.ResponseColumns; k++)
        {
            int column = k == 0 ? 0 : k > PieceTable.HullColumns ? size - 1 : PieceTable.HullColumns * hull + k;
            double value = table.Rows[response + k] - coefficients[hull * size + column];
            for (int z = 0; z < covariates; z++)
                value -= table.Rows[row + 1 + z] * coefficients[(table.HullsWithPieces + z) * size + column];
            into[k] = value;
        }
    }

    /// <summary>Fitted hull levels and covariate effects of each response column, row-major by fixed effect.</summary>
    private static double[] Coefficients(ReducedGram gram)
    {
        int n = gram.FixedCount, m = gram.Size;
        double[] coefficients = new double[n * m];
        double[] column = new double[n];
        for (int k = 0; k < m; k++)
        {
            for (int a = 0; a < n; a++)
                column[a] = gram.Cross[a * m + k];
            Cholesky.Backward(gram.FixedBlock, n, column);
            for (int a = 0; a < n; a++)
                coefficients[a * m + k] = column[a];
        }

        return coefficients;
    }
}

/// <summary>The heavy-tail weight of each piece, about 1 for an ordinary one, and what the weights add to the log density.</summary>
/// <param name="Weights">By piece.</param>
/// <param name="LogDensity">Added to the log density of the spreads.</param>
internal readonly record struct PieceWeights(double[] Weights, double LogDensity);
