using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Information;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Planning;

/// <summary>
/// How many more outings until diminishing returns: seasons drawn from the posterior at evenly spread points (not random,
/// so the answer does not wobble), each paddled with mirrored pairs around the best length of the moment until the rule stops.
/// </summary>
internal sealed class Forecast
{
    private const int Seasons = 32, CloudLengths = 31;
    private readonly PlanningCloud _cloud;
    private readonly double _contrastSpread, _halfWidth, _worthwhile, _stopBelow;
    private readonly double[] _weights;

    private Forecast(PlanningCloud cloud, double contrastSpread, double halfWidth, double worthwhile, double stopBelow)
    {
        _cloud = cloud;
        _contrastSpread = contrastSpread;
        _halfWidth = halfWidth;
        _worthwhile = worthwhile;
        _stopBelow = stopBelow;
        _weights = new double[cloud.Probability.Length];
    }

    /// <summary>The forecast from a posterior.</summary>
    /// <param name="posterior">What is known now.</param>
    /// <param name="contrastSpread">Noise of an outing's contrast between two lengths, percent.</param>
    /// <param name="halfWidth">Half the distance between the two lengths, inches.</param>
    /// <param name="worthwhile">Worthwhile change, percent.</param>
    /// <param name="stopBelow">The rule's probability.</param>
    public static OutingsToGo Of(Posterior posterior, double contrastSpread, double halfWidth, double worthwhile, double stopBelow)
    {
        Forecast forecast = new(PlanningCloud.Of(posterior, CloudLengths), contrastSpread, halfWidth, worthwhile, stopBelow);
        int[] outings = new int[Seasons];
        for (int season = 0; season < Seasons; season++)
            outings[season] = forecast.Season((season + 0.5) / Seasons, season);
        Array.Sort(outings);
        return new(outings[Seasons / 2], outings[Seasons / 10], outings[Seasons - 1 - Seasons / 10]);
    }

    private int Season(double share, int season)
    {
        int truth = Point(share);
        _cloud.Probability.CopyTo(_weights, 0);
        for (int outing = 0; outing < OutingsToGo.Most; outing++)
        {
            double centre = Centre();
            if (Left(centre) < _stopBelow)
                return outing;
            double perInch = 4 * _cloud.Share * _halfWidth / _contrastSpread;
            double seen = perInch * _cloud.Curvature[truth] * (_cloud.Card[truth] - centre) + Noise(season, outing);
            double total = 0;
            for (int k = 0; k < _weights.Length; k++)
            {
                double away = seen - perInch * _cloud.Curvature[k] * (_cloud.Card[k] - centre);
                // Added so that no outcome, however odd, leaves every point without weight.
                _weights[k] *= Math.Exp(-0.5 * away * away) + 1e-12;
                total += _weights[k];
            }

            for (int k = 0; k < _weights.Length; k++)
                _weights[k] /= total;
        }

        return OutingsToGo.Most;
    }

    /// <summary>The point at which that share of the probability is reached, points taken by turns over the cloud's curvatures.</summary>
    private int Point(double share)
    {
        // A stride coprime to the number of points visits them in a scattered order, so curvature and length are both spread out.
        int count = _cloud.Probability.Length, stride = Stride(count), at = 0;
        double below = 0;
        for (int k = 0; k < count; k++)
        {
            below += _cloud.Probability[at];
            if (below >= share)
                return at;
            at = (at + stride) % count;
        }

        return at;
    }

    private static int Stride(int count)
    {
        int stride = Math.Max(1, (int)(count * 0.6180339887));
        while (Divisor(count, stride) != 1)
            stride++;
        return stride;
    }

    private static int Divisor(int a, int b)
    {
        while (b != 0)
            (a, b) = (b, a % b);
        return a;
    }

    private double Centre()
    {
        double curvature = 0, pull = 0;
        for (int k = 0; k < _weights.Length; k++)
        {
            double weight = _weights[k] * _cloud.Curvature[k];
            curvature += weight;
            pull += weight * _cloud.Goal[k];
        }

        return pull / curvature;
    }

    private double Left(double centre)
    {
        double left = 0;
        for (int k = 0; k < _weights.Length; k++)
        {
            double away = _cloud.Goal[k] - centre;
            if (_cloud.Share * _cloud.Curvature[k] * (away * away + _cloud.LeftVariance) > _worthwhile)
                left += _weights[k];
        }

        return left;
    }

    /// <summary>
    /// A standard normal from a low-discrepancy sequence in two dimensions (season, outing); the golden ratio's and the plastic
    /// number's powers, Roberts 2018, "The unreasonable effectiveness of quasirandom sequences".
    /// </summary>
    private static double Noise(int season, int outing)
    {
        double share = (0.5 + season * 0.7548776662466927 + (outing + 1) * (season + 1) * 0.5698402909980532) % 1;
        return MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, Math.Clamp(share, 1e-4, 1 - 1e-4));
    }
}
