using MathNet.Numerics.LinearAlgebra;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Classical;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Information;

/// <summary>What a card is worth.</summary>
/// <param name="Value">Expected fall of the expected loss, percent of speed.</param>
/// <param name="LogCurvature">Expected fall of the variance of the logarithm of the curvature.</param>
internal readonly record struct CardWorth(double Value, double LogCurvature)
{
    /// <summary>How much the curvature counts; 5. Chosen, no source: from 3 to 10 the study hardly changes.</summary>
    private const double CurvatureCounts = 5;

    /// <summary>
    /// What cards are compared by. The value looks one outing ahead, where the curvature hardly matters; how sure the length is
    /// hangs on it all the same, so a card that tells it too counts for more.
    /// </summary>
    public double Score => Value * (1 + CurvatureCounts * LogCurvature);
}

/// <summary>One contrast of an outing's pieces.</summary>
/// <param name="Squares">Of the squared lengths.</param>
/// <param name="Lengths">Of the lengths.</param>
/// <param name="Lopsided">Of what a lopsided curve answers to.</param>
/// <param name="Variance">Variance of its noise, percent squared.</param>
internal readonly record struct BestContrast(double Squares, double Lengths, double Lopsided, double Variance);

/// <summary>
/// Expected value of information of one contrast: how far the expected loss falls, on average over what the contrast may turn out,
/// when the length is chosen after seeing it. The loss is quadratic, so with the contrast known the best choice is E[cθ]/E[c]
/// and the value is E over outcomes of E[cθ]²/E[c], less the same without the outcome.
/// </summary>
internal sealed class ExpectedValueOfInformation
{
    private const int Bins = 240;
    private const int Features = 3;
    private const double FarthestInSpreads = 40, KernelInSpreads = 4.5;
    private readonly PlanningCloud _cloud;
    private readonly SkewGivenCurve _skew;
    private readonly double _baseline, _meanCurvature;
    private readonly double[] _logCurvature;
    private readonly double[] _featureMean = new double[Features], _featureCovariance = new double[Features * Features],
        _withGoal = new double[Features];
    private readonly double[] _place, _density, _curvature, _pull, _log, _kernel = new double[Bins];

    public ExpectedValueOfInformation(PlanningCloud cloud, SkewGivenCurve skew)
    {
        _cloud = cloud;
        _skew = skew;
        _place = new double[cloud.Probability.Length];
        _density = new double[Bins + 2];
        _curvature = new double[Bins + 2];
        _pull = new double[Bins + 2];
        _log = new double[Bins + 2];
        _logCurvature = new double[cloud.Probability.Length];
        double curvature = 0, pull = 0, meanLog = 0;
        for (int k = 0; k < cloud.Probability.Length; k++)
        {
            double weight = cloud.Probability[k] * cloud.Curvature[k];
            curvature += weight;
            pull += weight * cloud.Goal[k];
            _logCurvature[k] = Math.Log(cloud.Curvature[k]);
            meanLog += cloud.Probability[k] * _logCurvature[k];
        }

        for (int k = 0; k < _logCurvature.Length; k++)
            _logCurvature[k] -= meanLog;

        _baseline = pull * pull / curvature;
        _meanCurvature = curvature;
        SumFeatures(pull / curvature);
    }

    /// <summary>
    /// Moments of what a contrast answers to (c, −2 c θ, c g) under the posterior weighed by the curvature, under which the value of an
    /// outcome is the variance that it takes from the goal's best length, times s E[c].
    /// </summary>
    private void SumFeatures(double meanGoal)
    {
        Span<double> feature = stackalloc double[Features];
        double[] square = new double[Features * Features];
        for (int k = 0; k < _cloud.Probability.Length; k++)
        {
            double c = _cloud.Curvature[k], weight = _cloud.Probability[k] * c / _meanCurvature;
            feature[0] = c;
            feature[1] = -2 * c * _cloud.Card[k];
            feature[2] = _skew.Coefficient(c, _cloud.Card[k]);
            for (int a = 0; a < Features; a++)
            {
                _featureMean[a] += weight * feature[a];
                _withGoal[a] += weight * feature[a] * (_cloud.Goal[k] - meanGoal);
                for (int b = 0; b < Features; b++)
                    square[a * Features + b] += weight * feature[a] * feature[b];
            }
        }

        for (int a = 0; a < Features; a++)
            for (int b = 0; b < Features; b++)
                _featureCovariance[a * Features + b] = square[a * Features + b] - _featureMean[a] * _featureMean[b];
    }

    /// <summary>
    /// The contrast of an outing's pieces that tells most of the goal's best length: w = V⁻¹k, where V is the covariance of the pieces and
    /// k their covariance with the goal's best length, both under the posterior weighed by the curvature. The outing's level is unknown,
    /// and so is how it fades.
    /// </summary>
    /// <param name="aligned">The aligned length of each piece, in order.</param>
    /// <param name="pieceVariance">Variance of a piece, percent squared.</param>
    public BestContrast Best(ReadOnlySpan<double> aligned, double pieceVariance)
    {
        const double LevelVariance = 1e4, FadeSpread = 0.5;
        int count = aligned.Length;
        double[,] rows = new double[count, Features];
        Span<double> mean = stackalloc double[Features];
        for (int i = 0; i < count; i++)
        {
            rows[i, 0] = aligned[i] * aligned[i];
            rows[i, 1] = aligned[i];
            rows[i, 2] = _skew.Column(aligned[i]);
            for (int a = 0; a < Features; a++)
                mean[a] += rows[i, a] / count;
        }

        // Centred first: the level takes the means up, and k would otherwise vanish where the outing does tell something.
        for (int i = 0; i < count; i++)
            for (int a = 0; a < Features; a++)
                rows[i, a] -= mean[a];
        double share = _cloud.Share, lopsided = share * share * _skew.Variance(_meanCurvature);
        Matrix<double> covariance = Matrix<double>.Build.Dense(count, count);
        Vector<double> with = Vector<double>.Build.Dense(count);
        for (int i = 0; i < count; i++)
        {
            for (int a = 0; a < Features; a++)
                with[i] -= share * rows[i, a] * _withGoal[a];
            for (int j = 0; j <= i; j++)
            {
                double sum = LevelVariance + FadeSpread * FadeSpread * (i - 0.5 * (count - 1)) * (j - 0.5 * (count - 1))
                    + lopsided * rows[i, 2] * rows[j, 2] + (i == j ? pieceVariance : 0);
                for (int a = 0; a < Features; a++)
                    for (int b = 0; b < Features; b++)
                        sum += share * share * rows[i, a] * _featureCovariance[a * Features + b] * rows[j, b];
                (covariance[i, j], covariance[j, i]) = (sum, sum);
            }
        }

        Vector<double> weights = covariance.Cholesky().Solve(with);
        double length = weights.L2Norm();
        if (!(length > 1e-12))
            return new(0, 0, 0, pieceVariance);
        double squares = 0, lengths = 0, skew = 0, fade = 0;
        for (int i = 0; i < count; i++)
        {
            double weight = weights[i] / length;
            squares += weight * rows[i, 0];
            lengths += weight * rows[i, 1];
            skew += weight * rows[i, 2];
            fade += weight * FadeSpread * (i - 0.5 * (count - 1));
        }

        return new(squares, lengths, skew, pieceVariance + fade * fade);
    }

    /// <summary>What a contrast is worth at the least: what the best straight line through its outcomes makes of it.</summary>
    /// <param name="squares">As in <see cref="Of"/>.</param>
    /// <param name="lengths">As in <see cref="Of"/>.</param>
    /// <param name="lopsided">As in <see cref="Of"/>.</param>
    /// <param name="variance">As in <see cref="Of"/>.</param>
    public double AtLeast(double squares, double lengths, double lopsided, double variance)
    {
        ReadOnlySpan<double> row = [squares, lengths, lopsided];
        double share = _cloud.Share, spread = variance + share * share * lopsided * lopsided * _skew.Variance(_meanCurvature), with = 0;
        for (int a = 0; a < Features; a++)
        {
            with += row[a] * _withGoal[a];
            for (int b = 0; b < Features; b++)
                spread += share * share * row[a] * row[b] * _featureCovariance[a * Features + b];
        }

        return share * _meanCurvature * share * share * with * with / spread;
    }

    /// <summary>
    /// What a contrast is worth whose mean is −s c (<paramref name="squares"/> − 2 θ <paramref name="lengths"/>):
    /// for two lengths A and B, A² − B² and A − B.
    /// </summary>
    /// <param name="squares">Contrast of the squared lengths.</param>
    /// <param name="lengths">Contrast of the lengths.</param>
    /// <param name="lopsided">Contrast of what a lopsided curve answers to, (x − top) |x − top|.</param>
    /// <param name="variance">Variance of the contrast's noise, percent squared.</param>
    public CardWorth Of(double squares, double lengths, double lopsided, double variance)
    {
        double spread = Math.Sqrt(variance + _cloud.Share * _cloud.Share * lopsided * lopsided * _skew.Variance(_meanCurvature));
        double[] place = _place, density = _density, curvature = _curvature, pull = _pull, log = _log, kernel = _kernel;
        double low = double.MaxValue, high = double.MinValue, perUnit = -_cloud.Share / spread;
        for (int k = 0; k < place.Length; k++)
        {
            double c = _cloud.Curvature[k], best = _cloud.Card[k];
            double at = Math.Clamp(perUnit * (c * (squares - 2 * best * lengths) + _skew.Coefficient(c, best) * lopsided),
                -FarthestInSpreads, FarthestInSpreads);
            place[k] = at;
            low = Math.Min(low, at);
            high = Math.Max(high, at);
        }

        low -= KernelInSpreads;
        high += KernelInSpreads;
        double step = Math.Max(0.2, (high - low) / (Bins - 1));
        int used = Math.Min(Bins, (int)((high - low) / step) + 2), reach = (int)(KernelInSpreads / step);
        Array.Clear(density);
        Array.Clear(curvature);
        Array.Clear(pull);
        Array.Clear(log);
        for (int k = 0; k < place.Length; k++)
        {
            double position = (place[k] - low) / step;
            int bin = (int)position;
            double upper = position - bin, probability = _cloud.Probability[k], weight = probability * _cloud.Curvature[k],
                weighted = weight * _cloud.Goal[k], logged = probability * _logCurvature[k];
            density[bin] += probability * (1 - upper);
            density[bin + 1] += probability * upper;
            curvature[bin] += weight * (1 - upper);
            curvature[bin + 1] += weight * upper;
            pull[bin] += weighted * (1 - upper);
            pull[bin + 1] += weighted * upper;
            log[bin] += logged * (1 - upper);
            log[bin + 1] += logged * upper;
        }

        double kernelSum = 0;
        for (int d = 0; d <= reach; d++)
        {
            kernel[d] = Math.Exp(-0.5 * d * step * d * step);
            kernelSum += d == 0 ? kernel[d] : 2 * kernel[d];
        }

        double value = 0, logSquare = 0;
        for (int outcome = 0; outcome < used; outcome++)
        {
            double p = 0, c = 0, b = 0, l = 0;
            int from = Math.Max(0, outcome - reach), to = Math.Min(used - 1, outcome + reach);
            for (int bin = from; bin <= to; bin++)
            {
                double height = kernel[Math.Abs(outcome - bin)];
                p += height * density[bin];
                c += height * curvature[bin];
                b += height * pull[bin];
                l += height * log[bin];
            }

            if (c > 1e-300 && p > 1e-300)
            {
                value += b * b / c;
                logSquare += l * l / p;
            }
        }

        return new(
            Math.Max(0, _cloud.Share * (value / kernelSum - _baseline)),
            logSquare / kernelSum);
    }
}
