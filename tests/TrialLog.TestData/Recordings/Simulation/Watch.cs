namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>Records true points with a watch's faults.</summary>
internal static class Watch
{
    /// <summary>The noisy points with dropouts, jumps, duplicate and backward times.</summary>
    public static List<RecordedPoint> Spoil(IReadOnlyList<RecordedPoint> noisy, WatchFaults faults, Random random)
    {
        List<RecordedPoint> recorded = Drop(noisy, faults, random);
        for (int i = Count(random, faults.Glitches); i > 0; i--)
            Jump(recorded, random);
        for (int i = Count(random, faults.Glitches); i > 0; i--)
        {
            int at = random.Next(recorded.Count);
            recorded.Insert(at, recorded[at]);
        }

        for (int i = Count(random, faults.Glitches); i > 0; i--)
        {
            int at = random.Next(recorded.Count);
            recorded[at] = recorded[at] with { Time = recorded[at].Time - random.Next(2, 90) };
        }

        return recorded;
    }

    /// <summary>The points with noise.</summary>
    public static List<RecordedPoint> Noisy(IReadOnlyList<RecordedPoint> points, WatchFaults faults, Random random)
    {
        Wander[] wanders =
        [
            new(random, faults.Wander, faults.WanderSeconds), new(random, faults.Wander, faults.WanderSeconds),
            new(random, faults.Slow, 1800), new(random, faults.Slow, 1800),
        ];
        var noisy = new List<RecordedPoint>(points.Count);
        foreach (RecordedPoint point in points)
        {
            double north = faults.White * Noise.Normal(random) + wanders[0].Next() + wanders[2].Next();
            double east = faults.White * Noise.Normal(random) + wanders[1].Next() + wanders[3].Next();
            (double latitude, double longitude) = Water.Moved(
                point.Latitude, point.Longitude, faults.NoiseFactor * north, faults.NoiseFactor * east);
            noisy.Add(point with { Latitude = latitude, Longitude = longitude });
        }

        return noisy;
    }

    private static List<RecordedPoint> Drop(IReadOnlyList<RecordedPoint> points, WatchFaults faults, Random random)
    {
        var lost = new bool[points.Count];
        for (int i = Count(random, faults.Dropouts); i > 0; i--)
        {
            int length = random.Next(5, faults.LongestDropout + 1), at = random.Next(1, points.Count - length - 1);
            Array.Fill(lost, true, at, length);
        }

        return Thinned([.. points.Where((_, i) => !lost[i])], faults, random);
    }

    private static List<RecordedPoint> Thinned(List<RecordedPoint> points, WatchFaults faults, Random random)
    {
        if (faults.LongestInterval <= 1)
            return points;
        var thinned = new List<RecordedPoint>();
        for (int i = 0; i < points.Count; i += random.Next(2, faults.LongestInterval + 1))
            thinned.Add(points[i]);
        return thinned;
    }

    private static void Jump(List<RecordedPoint> points, Random random)
    {
        int at = random.Next(points.Count - 2);
        for (int i = at; i <= at + random.Next(2); i++)
        {
            double angle = 2 * Math.PI * random.NextDouble(), far = 60 + 500 * random.NextDouble();
            (double latitude, double longitude) = Water.Moved(
                points[i].Latitude, points[i].Longitude, far * Math.Cos(angle), far * Math.Sin(angle));
            points[i] = points[i] with { Latitude = latitude, Longitude = longitude };
        }
    }

    private static int Count(Random random, double mean)
    {
        // Poisson by Knuth's product of uniforms.
        double limit = Math.Exp(-mean), product = random.NextDouble();
        int count = 0;
        for (; product > limit; count++)
            product *= random.NextDouble();
        return count;
    }
}
