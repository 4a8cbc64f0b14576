using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>Whether the seat heights of hulls can be right.</summary>
public static class HullChecks
{
    /// <summary>
    /// How far off the crew rule a measured hull may lie unasked, inches: the rule allows for two. Common practice, no source.
    /// </summary>
    private const double FarOffInches = 2.5;

    /// <summary>
    /// Seat heights that put a hull far from where the crew rule would, as questions. The order of hulls does not matter.
    /// </summary>
    public static IReadOnlyList<string> Questions(IEnumerable<Hull> hulls, LengthUnit unit)
    {
        List<Hull> all = [.. hulls.OrderBy(hull => hull.Name, StringComparer.Ordinal).ThenBy(hull => hull.Id)];
        IReadOnlyDictionary<Guid, double> offsets = SeatHeightRule.OffsetsInches(all);
        return
        [
            .. from hull in all
               where hull.SeatHeight is not null
               let rule = SeatHeightRule.ByCrewInches(hull.Crew)
               where Math.Abs(offsets[hull.Id] - rule) > FarOffInches
               select $"The seat heights put {Quoted.Brief(hull.Name)} {Spoken.Amount(Math.Abs(offsets[hull.Id] - rule), unit)} " +
                   $"{(offsets[hull.Id] > rule ? "above" : "below")} what its crew suggests; were both hulls measured from the sit bones " +
                   $"to the waterline, crew aboard?",
        ];
    }
}
