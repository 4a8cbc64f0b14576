namespace TrialLog.Recordings;

/// <summary>Finds the pieces of an outing.</summary>
internal static class PieceFinder
{
    private const double SameWayCosine = 0.77;

    /// <summary>Every piece found, in order, the slower stretches among them marked as left out.</summary>
    /// <param name="track">The track.</param>
    /// <param name="presses">Points at which the paddler pressed for a lap, in order.</param>
    public static List<PieceProposal> Find(Track track, IReadOnlyList<int> presses)
    {
        List<Stretch> legs = LegFinder.Find(track, presses);
        List<Stretch> work = legs.FindAll(leg => IsWorkAmongItsDirection(track, leg, legs));
        List<IReadOnlyList<Stretch>> groups = LegPairs.Join(track, work);
        double[] speeds = ThroughWater(track, groups);
        double level = WorkLevel.Of([.. groups.Select((g, i) => (speeds[i], (double)g.Sum(l => l.Seconds)))]);
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

    private static bool IsWorkAmongItsDirection(Track track, Stretch leg, List<Stretch> legs)
    {
        Heading course = track.Between(leg.First, leg.Last);
        double level = WorkLevel.Of([.. legs
            .Where(other => other == leg || course.Cosine(track.Between(other.First, other.Last)) >= SameWayCosine)
            .Select(other => (Speed(track, other), (double)other.Seconds))]);
        return Speed(track, leg) >= WorkLevel.Slowest * level;
    }

    private static double Speed(Track track, Stretch leg) => Steadiness.MeanSpeed(track, Steadiness.SteadyPart(track, leg));

    // Round trips tell the current; speeds of one-way legs are compared with it taken off.
    private static double[] ThroughWater(Track track, List<IReadOnlyList<Stretch>> groups)
    {
        double east = 0, north = 0, seconds = 0;
        foreach (IReadOnlyList<Stretch> pair in groups.Where(g => g.Count == 2))
        {
            Heading course = track.Between(pair[0].First, pair[0].Last);
            double current = (Speed(track, pair[0]) - Speed(track, pair[1])) / 2, time = pair.Sum(l => l.Seconds);
            east += time * current * course.East / course.Length;
            north += time * current * course.North / course.Length;
            seconds += time;
        }

        var flow = seconds > 0 ? new Heading(east / seconds, north / seconds) : default;
        return [.. groups.Select(g => g.Count == 2
            ? (Speed(track, g[0]) + Speed(track, g[1])) / 2
            : Speed(track, g[0]) - flow.Length * flow.Cosine(track.Between(g[0].First, g[0].Last)))];
    }
}
