using MathNet.Numerics.Distributions;

namespace TrialLog.Tuning.Model;

/// <summary>
/// What is believed of effort that was not told (ω), of heart rate at given effort (φ), and of what a point of effort does to heart rate
/// (k) and to speed (b): added up over a grid. A log tells only V = k²ω² + φ², never the four apart.
/// </summary>
internal sealed class EffortPrior
{
    private const int Nodes = 15, NoiseNodes = 9;
    private const double Reach = 3;
    private readonly TuningSettings _settings;
    private readonly (double Value, double Weight)[] _phi, _k, _b, _sigma;

    /// <param name="settings">The priors.</param>
    public EffortPrior(TuningSettings settings)
    {
        _settings = settings;
        _phi = LogNormalNodes(settings.HeartRateMedian, settings.HeartRateLogSpread, Nodes);
        _sigma = LogNormalNodes(settings.PieceMedian, settings.PieceLogSpread, NoiseNodes);
        _k = NormalNodes(settings.HeartRatePerPointMean, settings.HeartRatePerPointSpread, settings.HeartRatePerPointLeast);
        _b = NormalNodes(settings.EffortMean, settings.EffortSpread, 0.02 * settings.EffortMean);
    }

    /// <summary>The range of ln V that is looked at.</summary>
    public (double Low, double High) LogVarianceRange => (2 * Math.Log(_phi[0].Value) + 0.2, 2 * Math.Log(_settings.HeartRateMedian) + 7);

    /// <summary>Log prior density of ln V, up to a constant.</summary>
    public double LogDensityOfLogVariance(double logVariance)
    {
        double variance = Math.Exp(logVariance), sum = 0;
        foreach ((_, _, _, double weight) in OfPhiAndK(variance))
            sum += weight;
        return logVariance + Math.Log(sum + 1e-300);
    }

    /// <summary>E[R | V]: the share of V that is untold effort.</summary>
    public double MeanShare(double variance)
    {
        double sum = 0, total = 0;
        foreach ((double phi, _, _, double weight) in OfPhiAndK(variance))
            (sum, total) = (sum + weight * (1 - phi * phi / variance), total + weight);
        return sum / total;
    }

    /// <summary>E[ω | V]: the spread of untold effort, CR10 points.</summary>
    public double MeanUntold(double variance)
    {
        double sum = 0, total = 0;
        foreach ((_, _, double omega, double weight) in OfPhiAndK(variance))
            (sum, total) = (sum + weight * omega, total + weight);
        return sum / total;
    }

    /// <summary>Mean and standard deviation of ½ ln(σ² + b²ω²): the spread of pieces where nothing shows the effort.</summary>
    public (double Mean, double Sd) UntoldLogSpread()
    {
        double sum = 0, square = 0, total = 0;
        foreach ((double omega, double wOmega) in LogNormalNodes(_settings.UntoldEffortMedian, _settings.UntoldEffortLogSpread, Nodes))
            foreach ((double b, double wB) in _b)
                foreach ((double sigma, double wSigma) in _sigma)
                {
                    double weight = wOmega * wB * wSigma, log = 0.5 * Math.Log(sigma * sigma + b * b * omega * omega);
                    (sum, square, total) = (sum + weight * log, square + weight * log * log, total + weight);
                }

        double mean = sum / total;
        return (mean, Math.Sqrt(Math.Max(1e-10, square / total - mean * mean)));
    }

    /// <summary>The thirds of ρ = b/k given V, each a third of the probability, by rising ρ.</summary>
    public IReadOnlyList<EffortThird> Thirds(double variance)
    {
        List<(double Rho, double[] Sums)> pairs = [];
        foreach ((double k, double wK) in _k)
            foreach ((double b, double wB) in _b)
            {
                double rho = b / k;
                double[] sums = new double[6];
                foreach ((double phi, double wPhi) in _phi)
                {
                    if (Weight(variance, phi, k) is not { } given)
                        continue;
                    double weight = wK * wB * wPhi * given, share = 1 - phi * phi / variance, q = rho * share;
                    sums[0] += weight;
                    sums[1] += weight * share;
                    sums[2] += weight * q;
                    sums[3] += weight * q * q;
                    foreach ((double sigma, double wSigma) in _sigma)
                    {
                        double log = 0.5 * Math.Log(sigma * sigma + rho * rho * phi * phi * share);
                        sums[4] += weight * wSigma * log;
                        sums[5] += weight * wSigma * log * log;
                    }
                }

                pairs.Add((rho, sums));
            }

        pairs.Sort(static (a, b) => a.Rho.CompareTo(b.Rho));
        double total = pairs.Sum(pair => pair.Sums[0]), before = 0;
        double[,] thirds = new double[3, 7];
        foreach ((double rho, double[] sums) in pairs)
        {
            double after = before + 3 * sums[0] / total;
            for (int third = 0; third < 3; third++)
            {
                // A node on a border counts to both sides, by its parts.
                double part = sums[0] > 0 ? Math.Max(0, Math.Min(after, third + 1) - Math.Max(before, third)) / (after - before) : 0;
                for (int k = 0; k < 6; k++)
                    thirds[third, k] += part * sums[k];
                thirds[third, 6] += part * sums[0] * rho;
            }

            before = after;
        }

        return [.. Enumerable.Range(0, 3).Select(third =>
        {
            double Mean(int k) => thirds[third, k] / thirds[third, 0];
            return new EffortThird(Mean(6), Mean(1), Mean(2), Math.Max(1e-8, Mean(3) - Mean(2) * Mean(2)), Mean(4),
                Math.Sqrt(Math.Max(1e-6, Mean(5) - Mean(4) * Mean(4))));
        })];
    }

    private IEnumerable<(double Phi, double K, double Omega, double Weight)> OfPhiAndK(double variance)
    {
        foreach ((double phi, double wPhi) in _phi)
            foreach ((double k, double wK) in _k)
                if (Weight(variance, phi, k) is { } given)
                    yield return (phi, k, Math.Sqrt(variance - phi * phi) / k, wPhi * wK * given);
    }

    /// <summary>Density of V at given φ and k, up to a constant: p(ω) / (k² ω); null where φ alone is more than V.</summary>
    private double? Weight(double variance, double phi, double k)
    {
        if (phi * phi >= variance)
            return null;
        double omega = Math.Sqrt(variance - phi * phi) / k,
            away = (Math.Log(omega) - Math.Log(_settings.UntoldEffortMedian)) / _settings.UntoldEffortLogSpread;
        return Math.Exp(-0.5 * away * away) / (k * k * omega * omega);
    }

    private static (double Value, double Weight)[] LogNormalNodes(double median, double logSpread, int count) =>
        Normalised([.. Places(count).Select(z => (median * Math.Exp(z * logSpread), Normal.PDF(0, 1, z)))]);

    private static (double Value, double Weight)[] NormalNodes(double mean, double spread, double least)
    {
        double low = Math.Max(least, mean - Reach * spread), high = mean + Reach * spread;
        return Normalised(
            [.. Places(Nodes).Select(z => low + (z + Reach) / (2 * Reach) * (high - low))
            .Select(value => (value, Normal.PDF(mean, spread, value)))]);
    }

    private static (double Value, double Weight)[] Normalised((double Value, double Weight)[] nodes)
    {
        double total = nodes.Sum(node => node.Weight);
        return [.. nodes.Select(node => (node.Value, node.Weight / total))];
    }

    private static IEnumerable<double> Places(int count) => Enumerable.Range(0, count).Select(k => Reach * (2.0 * k / (count - 1) - 1));
}

/// <summary>A third of what is believed of ρ = b/k, with what follows for speed.</summary>
/// <param name="Rho">Mean of ρ, percent of speed a beat.</param>
/// <param name="Share">Mean of R, the share of heart rate's variance that is untold effort.</param>
/// <param name="PerBeat">Mean of q = ρR: what a beat more than expected says of speed, percent.</param>
/// <param name="PerBeatVariance">Its variance.</param>
/// <param name="LogSpreadMean">Mean of ln s, s² = σ² + ρ²φ²R: the spread of pieces given heart rate.</param>
/// <param name="LogSpreadSd">Its standard deviation.</param>
internal sealed record EffortThird(
    double Rho, double Share, double PerBeat, double PerBeatVariance, double LogSpreadMean, double LogSpreadSd);
