using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>Stays at the start length.</summary>
internal sealed class NeverMove(World world) : ISearchMethod
{
    public IReadOnlyList<Length> Plan() => [.. Enumerable.Repeat(SimulatedPaddler.Start, world.Pieces)];

    public void Learn(Outing outing)
    {
    }

    public Recommendation Recommend() => new(SimulatedPaddler.Start.Inches);
}
