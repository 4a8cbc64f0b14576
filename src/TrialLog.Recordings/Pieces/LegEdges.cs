using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Puts the edges of a leg where its speed along the course rises to, and falls from, its own level.</summary>
internal static class LegEdges
{
    // Of the way from the level outside to the level inside. No source: chosen.
    private const double Share = 0.6;
    private const int Inward = 20, Outward = 15, OutsideFrom = 10, OutsideTo = 25, LocalHeading = 60;

    /// <summary>
    /// The leg with its edges moved by up to <see cref="Outward"/> s out or <see cref="Inward"/> s in, inside its unbroken part.
    /// </summary>
    public static Stretch Refine(Track track, Stretch leg)
    {
        double inside = Steadiness.MedianSpeed(track, leg);
        int first = Edge(track, leg, leg.First, -1, inside), last = Edge(track, leg, leg.Last, 1, inside);
        return first < last ? new Stretch(first, last) : leg;
    }

    // Goes outward (direction −1: the start, 1: the end) from well inside until the speed along the course falls below the level.
    private static int Edge(Track track, Stretch leg, int edge, int direction, double inside)
    {
        int from = edge - direction * Math.Min(Inward, leg.Seconds / 3);
        int far = from - direction * Math.Min(LocalHeading, leg.Seconds / 3);
        Heading course = direction < 0 ? track.Between(from, far) : track.Between(far, from);
        double outside = Outside(track, edge, direction, course, inside);
        double level = outside + Share * (inside - outside);
        int at = from;
        while (at != edge + direction * Outward && track.Unbroken(Math.Min(at + direction, at), Math.Max(at + direction, at))
            && Along(track, at + direction, course) >= level)
            at += direction;
        return at == from ? edge : at;
    }

    private static double Outside(Track track, int edge, int direction, Heading course, double inside)
    {
        double sum = 0;
        int count = 0;
        for (int away = OutsideFrom; away <= OutsideTo; away++)
        {
            int at = edge + direction * away;
            if (at < 0 || at >= track.Count || track.Part[at] != track.Part[edge])
                break;
            sum += Along(track, at, course);
            count++;
        }

        return count == 0 ? 0 : Math.Clamp(sum / count, 0, inside);
    }

    /// <summary>Speed along a course, m/s.</summary>
    private static double Along(Track track, int at, Heading course)
    {
        int before = at > 0 && track.Part[at - 1] == track.Part[at] ? at - 1 : at;
        int after = at < track.Count - 1 && track.Part[at + 1] == track.Part[at] ? at + 1 : at;
        return track.Speed[at] * track.Between(before, after).Cosine(course);
    }
}
