using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>One length an outing and a least-squares parabola through all of them, raced at its top where it has one.</summary>
internal sealed class ParabolaByOuting(World world) : ISearchMethod
{
    private const double Farthest = 1.5;
    private static readonly double[] First = [0, 1, -1];
    private readonly List<(double Away, double Percent)> _outings = [];
    private double _top;

    public IReadOnlyList<Length> Plan()
    {
        double away = _outings.Count < First.Length ? First[_outings.Count] : _top + 0.5 * (_outings.Count % 3 - 1);
        return [.. Enumerable.Repeat(Length.FromInches(SimulatedPaddler.Start.Inches + Math.Round(4 * away) / 4), world.Pieces)];
    }

    public void Learn(Outing outing)
    {
        _outings.Add(
            (outing.Pieces[0].Length.InchesMoreThan(SimulatedPaddler.Start),
            outing.Pieces.Average(piece => 100 * Math.Log(piece.MetresPerSecond))));
        if (_outings.Count >= First.Length)
            _top = Parabola.Top(_outings, Farthest) ?? _top;
    }

    public Recommendation Recommend() => new(SimulatedPaddler.Start.Inches + Math.Round(4 * _top) / 4);
}
