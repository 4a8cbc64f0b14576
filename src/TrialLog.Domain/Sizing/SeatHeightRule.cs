using TrialLog.Domain.Boats;

namespace TrialLog.Domain.Sizing;

/// <summary>
/// An inch more seat height wants an inch more paddle. By hull, where nothing was measured: a six-seat canoe one inch
/// longer than a solo canoe and up to two, a two-seat canoe one inch shorter. Common practice, no source.
/// </summary>
public static class SeatHeightRule
{
    /// <summary>
    /// How far a hull's best length lies from the rule, inches, one standard deviation. Two hulls then differ from the rule by half an
    /// inch, so that a six-seat canoe may well want two inches more than a solo canoe. Chosen, no source.
    /// </summary>
    public const double SpreadInches = 0.35;

    /// <summary>Inches longer than in a solo canoe, by crew alone: 2 seats −1, 3 and more +1.</summary>
    public static double ByCrewInches(int crew) => crew switch { <= 1 => 0, 2 => -1, _ => 1 };

    /// <summary>
    /// Inches longer than in a solo canoe for each hull. Measured seat heights count by their difference from an anchor:
    /// the measured hull with the smallest crew (then first by name), which itself stands by the crew rule.
    /// Hulls without a measure stand by the crew rule. The order of the hulls does not matter.
    /// </summary>
    public static IReadOnlyDictionary<Guid, double> OffsetsInches(IEnumerable<Hull> hulls)
    {
        List<Hull> all = [.. hulls];
        Hull? anchor = all.Where(hull => hull.SeatHeight is not null)
            .OrderBy(hull => hull.Crew).ThenBy(hull => hull.Name, StringComparer.Ordinal).ThenBy(hull => hull.Id).FirstOrDefault();
        return all.ToDictionary(hull => hull.Id, hull => hull.SeatHeight is { } height
            ? ByCrewInches(anchor!.Crew) + height.InchesMoreThan(anchor.SeatHeight!.Value)
            : ByCrewInches(hull.Crew));
    }
}
