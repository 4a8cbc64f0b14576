using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Speed over the steady part of a stretch.</summary>
internal static class Steadiness
{
    // Getting going, easing off and half a turn take less, and so does their blur. No source: chosen. A fixed time, since an edge
    // laid where the speed is high enough would choose fast moments and so flatter the piece.
    private const double EdgeSeconds = 3, EdgeBlurs = 3.5;

    /// <summary>
    /// The stretch without the getting going at its start and the easing off at its end: 6 s each or more, the same for every piece of a
    /// recording but for stretches of less than half a minute or so, which lose a quarter.
    /// </summary>
    public static Stretch SteadyPart(Track track, Stretch stretch)
    {
        int edge = Math.Min((int)(EdgeSeconds + EdgeBlurs * track.Blur), stretch.Seconds / 4);
        return new Stretch(stretch.First + edge, stretch.Last - edge);
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

    /// <summary>
    /// Whether the speed along the course varies by no more than that share of its mean, beside what the noise of the positions makes of
    /// it: noise is alike on both axes, and across the course there is nothing else of that kind.
    /// </summary>
    public static bool IsSteady(Track track, Stretch stretch, double share)
    {
        const int half = 10;
        double mean = MeanSpeed(track, stretch), along = 0, across = 0;
        for (int i = stretch.First; i < stretch.Last; i++)
        {
            Heading course = track.Between(Math.Max(stretch.First, i - half), Math.Min(stretch.Last, i + half)),
                step = track.Between(i, i + 1);
            double seconds = track.Seconds[i + 1] - track.Seconds[i], length = Math.Max(1e-9, course.Length);
            double forward = (step.East * course.East + step.North * course.North) / length / seconds - mean;
            double aside = (step.East * course.North - step.North * course.East) / length / seconds;
            (along, across) = (along + forward * forward, across + aside * aside);
        }

        // By chance the two axes differ: by three standard deviations of a variance of so many independent speeds at most.
        double independent = Math.Max(1, stretch.Seconds / (2 + 2 * track.Blur)), chance = 3 * Math.Sqrt(4 / independent);
        return mean > 0 && along / Math.Max(1, stretch.Seconds) <= share * share * mean * mean
            + (1 + chance) * across / Math.Max(1, stretch.Seconds);
    }
}
