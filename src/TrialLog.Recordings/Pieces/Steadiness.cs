namespace TrialLog.Recordings;

/// <summary>Speed over the steady part of a stretch.</summary>
internal static class Steadiness
{
    // Getting going and easing off are over when the median speed is nearly reached; never more than so many seconds are cut.
    private const double NearlyMedian = 0.97;
    private const int LongestEdge = 15;

    /// <summary>The stretch without the getting going at its start and the easing off at its end.</summary>
    public static Stretch SteadyPart(Track track, Stretch stretch)
    {
        int longest = Math.Min(LongestEdge, stretch.Seconds / 6);
        double enough = NearlyMedian * MedianSpeed(track, stretch);
        int first = stretch.First, last = stretch.Last;
        while (first < stretch.First + longest && track.Speed[first] < enough)
            first++;
        while (last > stretch.Last - longest && track.Speed[last] < enough)
            last--;
        return new Stretch(first, last);
    }

    /// <summary>Mean speed over ground, m/s.</summary>
    public static double MeanSpeed(Track track, Stretch stretch) =>
        stretch.Seconds == 0 ? track.Speed[stretch.First] : (track.Along[stretch.Last] - track.Along[stretch.First]) / stretch.Seconds;

    /// <summary>Median speed over ground, m/s.</summary>
    public static double MedianSpeed(Track track, Stretch stretch)
    {
        float[] speeds = track.Speed[stretch.First..(stretch.Last + 1)];
        Array.Sort(speeds);
        return speeds[speeds.Length / 2];
    }

    /// <summary>Standard deviation of the speed over its mean.</summary>
    public static double Variation(Track track, Stretch stretch)
    {
        double mean = MeanSpeed(track, stretch), sum = 0;
        for (int i = stretch.First; i <= stretch.Last; i++)
            sum += (track.Speed[i] - mean) * (track.Speed[i] - mean);
        return mean <= 0 ? double.PositiveInfinity : Math.Sqrt(sum / (stretch.Seconds + 1)) / mean;
    }
}
