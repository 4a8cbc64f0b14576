using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Finds the pieces of an outing.</summary>
internal static class PieceFinder
{
    /// <summary>Every piece found, in order, the slower stretches among them marked as left out.</summary>
    /// <param name="track">The track.</param>
    /// <param name="presses">Points at which the paddler pressed for a lap, in order.</param>
    public static List<PieceProposal> Find(Track track, IReadOnlyList<int> presses)
    {
        List<Stretch> legs = LegFinder.Find(track, presses);
        var directions = new Directions(track, legs);
        List<Stretch> work = legs.FindAll(directions.IsWork);
        List<IReadOnlyList<Stretch>> groups = LegPairs.Join(track, work);
        Heading flow = directions.Current(groups);
        double[] speeds = [.. groups.Select(g => g.Count == 2
            ? (Speed(track, g[0]) + Speed(track, g[1])) / 2
            : Speed(track, g[0]) - flow.Length * flow.Cosine(track.Between(g[0].First, g[0].Last)))];
        double level = WorkLevel.Of(groups.Select((g, i) => (speeds[i], (double)g.Sum(l => l.Seconds))));
        var kept = new List<IReadOnlyList<Stretch>>();
        var easy = new List<IReadOnlyList<Stretch>>(LegPairs.Join(track, legs.Except(work).ToList()));
        for (int i = 0; i < groups.Count; i++)
            (speeds[i] >= WorkLevel.Slowest * level ? kept : easy).Add(groups[i]);
        int first = kept.Count > 0 ? kept.Min(g => g[0].First) : int.MaxValue, last = kept.Count > 0 ? kept.Max(g => g[^1].Last) : -1;
        return
        [
            .. kept.Concat(easy).OrderBy(g => g[0].First).Select(g => PieceMeasures.Measure(track, g, kept.Contains(g) ? null : Why(g))),
        ];

        string Why(IReadOnlyList<Stretch> group) =>
            group[^1].Last <= first ? "warm-up: slower than the pieces"
            : group[0].First >= last ? "cool-down: slower than the pieces"
            : "easy paddling: slower than the pieces";
    }

    private static double Speed(Track track, Stretch leg) => Steadiness.MeanSpeed(track, Steadiness.SteadyPart(track, leg));
}
