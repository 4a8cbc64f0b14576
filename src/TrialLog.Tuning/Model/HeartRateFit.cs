using MathNet.Numerics.LinearAlgebra;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// Heart rate's own regression, within outings: h = level of the outing + drift·o + bend·o² + γ x + lean·x (seen outings) + told·r + noise
/// of variance V. Linear and normal given V, of which the most probable value is taken. Untold effort and the sensor are one in V.
/// </summary>
/// <param name="Readings">Heart rate by piece; not a number where there is no reading that counts.</param>
/// <param name="Columns">By piece: o, o², x, x in seen outings; each less its mean over the outing.</param>
/// <param name="Expected">What of heart rate the columns o, o² and x explain, by piece; lean and told effort stay in what is left.</param>
/// <param name="Variance">V, beats a minute squared.</param>
/// <param name="LeanMean">Mean of the lean's coefficient, beats a minute an inch.</param>
/// <param name="Covariance">Of the four columns' coefficients.</param>
/// <param name="Slope">How heart rate goes with length in seen outings, by itself.</param>
internal sealed record HeartRateFit(
    double[] Readings, IReadOnlyList<double[]> Columns, double[] Expected, double Variance, double LeanMean, Matrix<double> Covariance,
        HeartRateSlope? Slope)
{
    private const int LeastRate = 60, MostRate = 220;

    /// <summary>A heart lags: in a shorter piece its mean rate is not that of the effort. Chosen, not tried.</summary>
    private const double ShortestSeconds = 180;

    private const int VarianceNodes = 25, Told = 4;

    /// <summary>The fit; null where no outing has two readings.</summary>
    public static HeartRateFit? Of(PieceTable table, TuningSettings settings, EffortPrior prior)
    {
        double[] readings = ReadingsOf(table);
        if (Array.TrueForAll(readings, double.IsNaN))
            return null;
        IReadOnlyList<double[]> columns = ColumnsOf(table),
            within = [.. columns.Append(table.Effort.Points).Select(column => Within(table, column, readings))];
        double[] response = Within(table, readings, readings);
        int[] read = [.. Enumerable.Range(0, table.Count).Where(i => !double.IsNaN(readings[i]))];
        int freedom = read.Length - Enumerable.Range(0, table.Outings.Count)
            .Count(j => read.Any(i => i >= table.OutingStart[j] && i < table.OutingStart[j + 1]));
        Matrix<double> x = Matrix<double>.Build.Dense(read.Length, within.Count, (row, column) => within[column][read[row]]);
        Vector<double> h = Vector<double>.Build.Dense(read.Length, row => response[read[row]]);
        Matrix<double> square = x.TransposeThisAndMultiply(x);
        Vector<double> pull = x.TransposeThisAndMultiply(h);
        double total = h.DotProduct(h), told = settings.HeartRatePerPointMean * settings.ToldEffortSpread / settings.EffortMean;
        Vector<double> mean = Vector<double>.Build.DenseOfArray(
            [settings.HeartRateDriftMean, settings.HeartRateBendMean, 0, 0, settings.HeartRatePerPointMean]);

        (double low, double high) = prior.LogVarianceRange;
        double best = Enumerable.Range(0, VarianceNodes).Select(k => low + (high - low) * k / (VarianceNodes - 1)).MaxBy(LogPosterior),
            step = (high - low) / (VarianceNodes - 1);
        for (int newton = 0; newton < 4; newton++)
        {
            step /= 3;
            double below = LogPosterior(best - step), here = LogPosterior(best), above = LogPosterior(best + step),
                bend = above - 2 * here + below;
            if (bend < 0)
                best = Math.Clamp(best - Math.Clamp(0.5 * step * (above - below) / bend, -step, step), low, high);
        }

        double variance = Math.Exp(best);
        (Vector<double> coefficients, Matrix<double> covariance, _) = Given(variance);
        double[] expected = [.. Enumerable.Range(0, table.Count)
            .Select(i => coefficients[0] * columns[0][i] + coefficients[1] * columns[1][i] + coefficients[2] * columns[2][i])];
        return new(readings, columns, expected, variance, coefficients[3], covariance.SubMatrix(0, Told, 0, Told),
            SlopeOf(table, settings, columns, within, readings, response, mean, told, variance));

        double LogPosterior(double logVariance) => prior.LogDensityOfLogVariance(logVariance) + Given(Math.Exp(logVariance)).LogEvidence;

        (Vector<double> Mean, Matrix<double> Covariance, double LogEvidence) Given(double v)
        {
            double lean = settings.LeanShare * Math.Sqrt(Math.Max(1e-12, prior.MeanShare(v) * v));
            Vector<double> sds = Vector<double>.Build.DenseOfArray(
                [settings.HeartRateDriftSpread, settings.HeartRateBendSpread, settings.HeartRatePerInchSpread, lean, told])
                .PointwiseMaximum(1e-6);
            Vector<double> precisions = sds.PointwisePower(-2);
            Matrix<double> precision = Matrix<double>.Build.DenseOfDiagonalVector(precisions) + square / v;
            var factor = precision.Cholesky();
            Vector<double> right = precisions.PointwiseMultiply(mean) + pull / v, at = factor.Solve(right);
            double misfit = total / v + mean.DotProduct(precisions.PointwiseMultiply(mean)) - right.DotProduct(at);
            return (at, factor.Solve(Matrix<double>.Build.DenseIdentity(5)),
                0.5 * (precisions.PointwiseLog().Sum() - factor.DeterminantLn - freedom * Math.Log(v) - misfit));
        }
    }

    /// <summary>The readings that count, by piece; not a number where there is none.</summary>
    private static double[] ReadingsOf(PieceTable table) =>
    [
        .. Enumerable.Range(0, table.Outings.Count).SelectMany(j => ReadingsOf([
            .. Enumerable.Range(table.OutingStart[j], table.OutingStart[j + 1] - table.OutingStart[j]).Select(i => table.Pieces[i])])),
    ];

    /// <summary>
    /// The readings of an outing that count, by piece: not those of nonsense, in short pieces, the same in all pieces, or alone.
    /// </summary>
    public static double[] ReadingsOf(IReadOnlyList<Piece> outing)
    {
        double[] readings = [
            .. outing.Select(piece => piece.HeartRate is { } rate && rate.BeatsPerMinute is >= LeastRate and <= MostRate
            && piece.Time.Seconds >= ShortestSeconds
            ? (double)rate.BeatsPerMinute : double.NaN)];
        double[] told = [.. readings.Where(static rate => !double.IsNaN(rate))];
        if (told.Length == 0 || told.Max() == told.Min())
            Array.Fill(readings, double.NaN);
        return readings;
    }

    /// <summary>By piece: o, o², x, and x in seen outings, each less its mean over the outing.</summary>
    public static IReadOnlyList<double[]> ColumnsOf(PieceTable table)
    {
        double[] all = new double[table.Count];
        double[] order = Within(table, [.. table.Pieces.Select(piece => (double)piece.Order)], all),
            length = Within(table, table.Aligned, all), seen = [.. length];
        for (int j = 0; j < table.Outings.Count; j++)
            if (table.Outings[j].Blind)
                seen.AsSpan(table.OutingStart[j]..table.OutingStart[j + 1]).Clear();
        return [order, Within(table, [.. order.Select(o => o * o)], all), length, seen];
    }

    /// <summary>A column less its mean over those pieces of each outing that have a reading; 0 where there is none.</summary>
    public static double[] Within(PieceTable table, double[] column, double[] readings)
    {
        double[] centred = new double[column.Length];
        for (int j = 0; j < table.Outings.Count; j++)
        {
            double sum = 0;
            int count = 0;
            for (int i = table.OutingStart[j]; i < table.OutingStart[j + 1]; i++)
                if (!double.IsNaN(readings[i]))
                    (sum, count) = (sum + column[i], count + 1);
            for (int i = table.OutingStart[j]; i < table.OutingStart[j + 1]; i++)
                centred[i] = double.IsNaN(readings[i]) ? 0 : column[i] - sum / count;
        }

        return centred;
    }

    /// <summary>Slope of heart rate on length in seen outings, with next to nothing believed of it beforehand.</summary>
    private static HeartRateSlope? SlopeOf(
        PieceTable table, TuningSettings settings,
        IReadOnlyList<double[]> columns, IReadOnlyList<double[]> within, double[] readings, double[] response, Vector<double> mean,
        double told, double variance)
    {
        int[] seen = [.. Enumerable.Range(0, table.Outings.Count).Where(j => !table.Outings[j].Blind)
            .SelectMany(j => Enumerable.Range(table.OutingStart[j], table.OutingStart[j + 1] - table.OutingStart[j]))
                .Where(i => !double.IsNaN(readings[i]))];
        if (seen.Sum(i => columns[2][i] * columns[2][i]) < 1e-6)
            return null;
        int[] used = [0, 1, 2, 4];
        Matrix<double> x = Matrix<double>.Build.Dense(seen.Length, used.Length, (row, column) => within[used[column]][seen[row]]);
        Vector<double> h = Vector<double>.Build.Dense(seen.Length, row => response[seen[row]]);
        Vector<double> precisions = Vector<double>.Build.DenseOfArray(
            [Math.Pow(settings.HeartRateDriftSpread, -2), Math.Pow(settings.HeartRateBendSpread, -2), 1e-6 / variance, Math.Pow(told, -2)]),
            prior = Vector<double>.Build.DenseOfArray([mean[0], mean[1], 0, mean[4]]);
        var factor = (Matrix<double>.Build.DenseOfDiagonalVector(precisions) + x.TransposeThisAndMultiply(x) / variance).Cholesky();
        double slope = factor.Solve(precisions.PointwiseMultiply(prior) + x.TransposeThisAndMultiply(h) / variance)[2];
        return new(slope, Math.Sqrt(factor.Solve(Matrix<double>.Build.DenseIdentity(used.Length))[2, 2]));
    }
}

/// <summary>How heart rate goes with length in outings whose lengths the paddler knew.</summary>
/// <param name="BeatsPerInch">Beats a minute more for an inch longer.</param>
/// <param name="StandardError">Its standard error.</param>
public sealed record HeartRateSlope(double BeatsPerInch, double StandardError)
{
    /// <summary>
    /// Whether it is over two standard errors from none: then pushing and cost cannot be told apart, and blind outings would tell.
    /// </summary>
    public bool IsClear => Math.Abs(BeatsPerInch) > 2 * StandardError;
}
