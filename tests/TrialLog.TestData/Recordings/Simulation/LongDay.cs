namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>A recording that was left running.</summary>
internal static class LongDay
{
    /// <summary>So many hours of outings one after the other, one point a second.</summary>
    public static IReadOnlyList<RecordedPoint> Points(int hours)
    {
        var points = new List<RecordedPoint>();
        for (int seed = 1; points.Count < hours * 3600; seed++)
        {
            IReadOnlyList<RecordedPoint> outing = Simulator.Run(new OutingPlan { Speeds = [3, 3.1, 3.05, 3] }, seed).Recorded;
            double shift = points.Count > 0 ? points[^1].Time + 1 - outing.Min(p => p.Time) : 0;
            points.AddRange(outing.Select(p => p with { Time = p.Time + shift }));
        }

        return points.GetRange(0, hours * 3600);
    }
}
