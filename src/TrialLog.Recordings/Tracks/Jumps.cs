namespace TrialLog.Recordings.Tracks;

/// <summary>A position with its time.</summary>
internal readonly record struct Fix(double Time, Point3 Position);

/// <summary>Finds positions that cannot be reached from their neighbours.</summary>
internal static class Jumps
{
    /// <summary>m/s; half as fast again as the fastest piece that is believed.</summary>
    public const double Fastest = 12;

    /// <summary>
    /// Metres by which two good positions may disagree at once. No source: chosen, well above a watch's noise on open water.
    /// </summary>
    public const double Slack = 20;

    private const int FewestTogether = 5;

    /// <summary>
    /// The fixes without those that jumped. Fixes that agree with their neighbours form runs; a run of fewer than five
    /// between others is a jump.
    /// </summary>
    public static List<Fix> Without(List<Fix> fixes, out int jumps)
    {
        var kept = new List<Fix>(fixes.Count);
        jumps = 0;
        int start = 0;
        for (int i = 1; i <= fixes.Count; i++)
        {
            if (i < fixes.Count && Reachable(fixes[i - 1], fixes[i]))
                continue;
            bool alone = start == 0 && i == fixes.Count;
            if (alone || i - start >= FewestTogether)
                kept.AddRange(fixes.GetRange(start, i - start));
            else
                jumps += i - start;
            start = i;
        }

        return kept;
    }

    /// <summary>Whether a paddled craft can have come from one fix to the other.</summary>
    public static bool Reachable(Fix from, Fix to) =>
        (to.Position - from.Position).Norm <= Slack + Fastest * (to.Time - from.Time);
}
