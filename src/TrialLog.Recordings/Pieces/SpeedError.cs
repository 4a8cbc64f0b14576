using TrialLog.Domain.Log;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>How sure the speed of a piece is, from the noise of its recording.</summary>
internal static class SpeedError
{
    // The noise that smoothing leaves of a fix, metres, and the share of the slow noise that is as quick; and how unsteady paddling is at
    // the ends that are left out, as a share of speed over so many seconds. No sources: chosen.
    private const double Fine = 0.1, FineShare = 0.1, Unsteady = 0.012, UnsteadySeconds = 10;
    // For what is not known of the noise itself.
    private const double Doubt = 1.12;
    private const double Least = 0.05, Most = 20;

    /// <summary>
    /// One standard deviation of the mean speed, percent. A leg's speed is the way between two positions over the time between them; the
    /// errors of positions near in time are alike, so that the end of a leg out and the start of the leg back err together.
    /// </summary>
    /// <param name="track">The track.</param>
    /// <param name="legs">The piece's legs, with whether each returns.</param>
    /// <param name="speed">Its mean speed, m/s.</param>
    public static double Percent(Track track, IReadOnlyList<(Stretch Leg, bool Returns)> legs, double speed)
    {
        bool roundTrip = legs.Any(l => l.Returns) && legs.Any(l => !l.Returns);
        double there = legs.Where(l => !l.Returns).Sum(l => l.Leg.Seconds), home = legs.Where(l => l.Returns).Sum(l => l.Leg.Seconds);
        var ends = new List<(int At, double Weight, Heading Course)>();
        double unsteady = 0;
        foreach ((Stretch leg, bool returns) in legs)
        {
            // As the speeds are put together: legs one way by their time, then both ways alike.
            double share = (roundTrip ? 0.5 : 1) * leg.Seconds / (returns ? home : there);
            Stretch steady = Steadiness.SteadyPart(track, leg);
            double seconds = Math.Max(1, track.Seconds[steady.Last] - track.Seconds[steady.First]);
            Heading course = track.Between(steady.First, steady.Last);
            ends.Add((steady.First, -share / seconds, course));
            ends.Add((steady.Last, share / seconds, course));
            double left = leg.Seconds - steady.Seconds;
            unsteady += share * share * Unsteady * Unsteady * speed * speed * left * UnsteadySeconds / (leg.Seconds * (double)leg.Seconds);
        }

        double variance = unsteady;
        foreach ((int a, double weightA, Heading courseA) in ends)
        {
            foreach ((int b, double weightB, Heading courseB) in ends)
            {
                double alike = track.Noise.Metres * track.Noise.Metres * track.Noise.Correlation(track.Seconds[a] - track.Seconds[b]);
                variance += weightA * weightB * alike * courseA.Cosine(courseB);
            }

            double fine = Fine + FineShare * track.Noise.Metres;
            variance += weightA * weightA * (fine * fine + Bridged(track, track.Seconds[a]));
        }

        return Math.Clamp(Doubt * 100 * Math.Sqrt(variance) / speed, Least, Most);
    }

    // Variance of a position inside a dropout: of velocity that wanders, known at both ends, with the smoother's own density.
    private static double Bridged(Track track, double at)
    {
        foreach ((double start, double end) in track.Gaps)
        {
            if (at <= start || at >= end)
                continue;
            double length = end - start, u = (at - start) / length;
            return TrackSmoother.AccelerationDensity * Math.Pow(length * u * (1 - u), 3) / 3;
        }

        return 0;
    }
}
