using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>
/// A bound that no method can know enough to reach: curvature, noise and fade are known, so the best length is normal after every
/// outing and the widest pair allowed around it is the best one.
/// </summary>
internal sealed class KnownCurve(World world, SimulatedPaddler paddler) : ISearchMethod
{
    private const double Farthest = 1.5;
    private double _mean, _precision = 1 / (world.StartSpread * world.StartSpread);
    private int _outings;
    private double _sumPrecision, _sumPull;

    public IReadOnlyList<Length> Plan()
    {
        double centre = Math.Clamp(Math.Round(4 * _mean) / 4, -Farthest, Farthest);
        List<Length> lengths = [];
        for (int i = 0; i < world.Pieces; i++)
        {
            bool low = world.SwapsOnWater ? i % 4 is 0 or 3 : _outings % 2 == 0;
            lengths.Add(SimulatedPaddler.Start.PlusInches(centre + (low ? -Farthest : Farthest)));
        }

        return lengths;
    }

    public void Learn(Outing outing)
    {
        _outings++;
        if (!world.SwapsOnWater)
        {
            LearnLevel(outing);
            return;
        }

        double a = outing.Pieces[0].Length.InchesMoreThan(SimulatedPaddler.Start),
            b = outing.Pieces[1].Length.InchesMoreThan(SimulatedPaddler.Start);
        double contrast = 0;
        for (int i = 0; i < outing.Pieces.Count; i++)
            contrast += (i % 4 is 0 or 3 ? 1 : -1) * (
                100 * Math.Log(outing.Pieces[i].MetresPerSecond) - world.EffortPerPoint * (outing.Pieces[i].Effort!.Value.Points - 6)) / (
                outing.Pieces.Count / 2.0);
        // contrast = −c (a² − b²) + 2 c (a − b) θ + noise
        double slope = 2 * paddler.Curvature * (a - b), spread = world.PieceSpread * Math.Sqrt(4.0 / outing.Pieces.Count);
        Take(slope, contrast + paddler.Curvature * (a * a - b * b), spread * spread);
    }

    /// <summary>The level itself is taken as known here: it is a bound.</summary>
    private void LearnLevel(Outing outing)
    {
        double x = outing.Pieces[0].Length.InchesMoreThan(SimulatedPaddler.Start), mean = 0;
        foreach (Piece piece in outing.Pieces)
            mean += (100 * Math.Log(piece.MetresPerSecond / 3) - world.FadePerPiece * (piece.Order - 1)) / outing.Pieces.Count;
        // y = −c x² + 2 c θ x − c θ² + noise, linearised at the present mean
        double c = paddler.Curvature, slope = 2 * c * (x - _mean);
        Take(slope, mean - world.TrendPerWeek * (_outings - 1) + c * x * x - c * _mean * _mean,
            world.OutingSpread * world.OutingSpread + world.PieceSpread * world.PieceSpread / outing.Pieces.Count);
    }

    private void Take(double slope, double seen, double variance)
    {
        _sumPrecision += slope * slope / variance;
        _sumPull += slope * seen / variance;
        _precision = 1 / (world.StartSpread * world.StartSpread) + _sumPrecision;
        _mean = _sumPull / _precision;
    }

    public Recommendation Recommend() => new(SimulatedPaddler.Start.Inches + Math.Round(4 * _mean) / 4);
}
