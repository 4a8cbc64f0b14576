using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Compares legs of one direction with one another, and those of opposite directions to tell the current.</summary>
internal sealed class Directions
{
    /// <summary>Within 40 degrees of the same, or the opposite, way. No source: chosen.</summary>
    public const double SameWayCosine = 0.77;
    private const int Sectors = 36;

    private readonly Dictionary<Stretch, (Heading Course, double Speed)> legs;
    private readonly HashSet<Stretch> compared = [];
    private readonly HashSet<Stretch> work = [];

    /// <summary>The legs of a track.</summary>
    public Directions(Track track, IReadOnlyList<Stretch> all)
    {
        legs = all.ToDictionary(leg => leg, leg =>
            (track.Between(leg.First, leg.Last), Steadiness.MeanSpeed(track, Steadiness.SteadyPart(track, leg))));
        foreach (IGrouping<int, Stretch> sector in all.GroupBy(leg => Sector(legs[leg].Course)))
        {
            double angle = sector.Key * 2 * Math.PI / Sectors;
            var centre = new Heading(Math.Sin(angle), Math.Cos(angle));
            List<(double Speed, double Seconds)> sameWay = [.. legs
                .Where(other => centre.Cosine(other.Value.Course) >= SameWayCosine)
                .Select(other => (other.Value.Speed, (double)other.Key.Seconds))];
            double slowest = WorkLevel.Slowest * WorkLevel.Of(sameWay);
            if (sameWay.Count > 1)
                compared.UnionWith(sector);
            work.UnionWith(sector.Where(leg => !(legs[leg].Speed < slowest)));
        }
    }

    // Comparing by sectors rather than leg by leg keeps a recording of thousands of legs quick.
    private static int Sector(Heading course) =>
        ((int)Math.Round(Math.Atan2(course.East, course.North) * Sectors / (2 * Math.PI)) + Sectors) % Sectors;

    /// <summary>Whether the leg is about as fast as the work done in its own direction.</summary>
    public bool IsWork(Stretch leg) => work.Contains(leg);

    /// <summary>
    /// The current, m/s east and north: half the difference between legs of opposite directions. Taken from round trips,
    /// and from single legs if each was compared with another of its own direction, for else a warm-up one way and a piece the
    /// other would pass for a current.
    /// </summary>
    public Heading Current(IReadOnlyList<IReadOnlyList<Stretch>> groups)
    {
        List<(Stretch There, Stretch Back)> opposite = [.. groups.Where(g => g.Count == 2).Select(g => (g[0], g[1]))];
        List<Stretch> single = [.. groups.Where(g => g.Count == 1 && compared.Contains(g[0])).Select(g => g[0])];
        for (int i = 0; i < single.Count; i++)
        {
            for (int j = i + 1; j < single.Count; j++)
            {
                if (legs[single[i]].Course.Cosine(legs[single[j]].Course) <= -SameWayCosine)
                    opposite.Add((single[i], single[j]));
            }
        }

        double east = 0, north = 0, seconds = 0;
        foreach ((Stretch there, Stretch back) in opposite)
        {
            Heading course = legs[there].Course;
            double current = (legs[there].Speed - legs[back].Speed) / 2, time = there.Seconds + back.Seconds;
            east += time * current * course.East / course.Length;
            north += time * current * course.North / course.Length;
            seconds += time;
        }

        return seconds > 0 ? new Heading(east / seconds, north / seconds) : default;
    }
}
