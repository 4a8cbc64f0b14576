using TrialLog.Domain.Log;

namespace TrialLog.Tuning.Checks;

/// <summary>
/// Outings of one length each, by a paddler who could swap: whatever wind, water and freshness did to that outing is tangled
/// with its length.
/// </summary>
internal sealed class OneLengthOutings : ILogCheck
{
    private const int EnoughOutings = 4;

    /// <summary>From this share of outings on, the log lives by comparing outings.</summary>
    private const double MostOutings = 0.7;

    /// <summary>Lengths nearer than this are one length, inches.</summary>
    private const double SameInches = 0.1;

    public HealthCheck? Look(CheckedLog log)
    {
        if (!log.Question.Paddler.SwapsOnWater)
            return null;
        List<(double Shortest, double Longest)> outings = [.. log.Counted.GroupBy(piece => piece.Outing.Id)
            .Select(outing => (outing.Min(piece => piece.LengthInches), outing.Max(piece => piece.LengthInches)))];
        List<double> single = [.. outings.Where(outing => outing.Longest - outing.Shortest < SameInches).Select(outing => outing.Shortest)];
        return outings.Count >= EnoughOutings && single.Count >= MostOutings * outings.Count && single.Max() - single.Min() >= SameInches
            ? new("one-length-outings") { Count = single.Count, Of = outings.Count }
            : null;
    }
}
