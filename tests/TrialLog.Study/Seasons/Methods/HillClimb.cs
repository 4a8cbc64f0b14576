using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>By feel: one length an outing; if it went faster than the last, a quarter inch on in the same direction, else back.</summary>
internal sealed class HillClimb(World world) : ISearchMethod
{
    private double _at = SimulatedPaddler.Start.Inches, _next = SimulatedPaddler.Start.Inches, _step = 0.25, _before = double.NaN;

    public IReadOnlyList<Length> Plan() => [.. Enumerable.Repeat(Length.FromInches(_next), world.Pieces)];

    public void Learn(Outing outing)
    {
        double speed = outing.Pieces.Average(piece => Math.Log(piece.MetresPerSecond));
        if (double.IsNaN(_before) || speed > _before)
            _at = _next;
        else
            _step = -_step;
        _before = speed;
        _next = _at + _step;
    }

    public Recommendation Recommend() => new(_at);
}
