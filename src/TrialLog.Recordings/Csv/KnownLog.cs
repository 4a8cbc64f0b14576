using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Recordings.Csv;

/// <summary>What a logbook holds of what a CSV file can say.</summary>
/// <param name="Paddlers">Its paddlers.</param>
/// <param name="Hulls">Its hulls.</param>
/// <param name="Paddles">Its paddles.</param>
/// <param name="Outings">Its outings with their pieces.</param>
public sealed record KnownLog(
    IReadOnlyList<Paddler> Paddlers, IReadOnlyList<Hull> Hulls, IReadOnlyList<Paddle> Paddles, IReadOnlyList<Outing> Outings)
{
    /// <summary>A logbook on its first day: only the standard hulls.</summary>
    public static readonly KnownLog Fresh = new([], StandardHulls.All, [], []);
}
