using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Joins legs out and back into round trips.</summary>
internal static class LegPairs
{
    /// <summary>The longest pause at the turn, in seconds; a longer one is a rest between pieces.</summary>
    public const int LongestTurn = 45;

    // No sources: chosen. A leg back covers the same water in the opposite direction.
    private const double OppositeCosine = -0.82;
    private const double ShortestShare = 0.5;
    private const double MostApart = 0.5;
    private const double Weight = 4;

    /// <summary>
    /// The legs as pairs and singles, in order. Where legs follow one another closely the pairing with the most, fastest
    /// paddling in pairs is taken, so that a leg of warm-up before the first turn does not shift all that follow.
    /// </summary>
    public static List<IReadOnlyList<Stretch>> Join(Track track, IReadOnlyList<Stretch> legs)
    {
        var best = new double[legs.Count + 2];
        var pairs = new bool[legs.Count + 1];
        for (int i = legs.Count - 1; i >= 0; i--)
        {
            best[i] = best[i + 1];
            if (i + 1 < legs.Count && AreRoundTrip(track, legs[i], legs[i + 1]))
            {
                double paired = best[i + 2] + Worth(track, legs[i], legs[i + 1]);
                if (paired > best[i])
                    (best[i], pairs[i]) = (paired, true);
            }
        }

        var joined = new List<IReadOnlyList<Stretch>>();
        for (int i = 0; i < legs.Count; i++)
        {
            joined.Add(pairs[i] ? [legs[i], legs[i + 1]] : [legs[i]]);
            i += pairs[i] ? 1 : 0;
        }

        return joined;
    }

    private static bool AreRoundTrip(Track track, Stretch outward, Stretch back)
    {
        if (back.First - outward.Last > LongestTurn || !track.Unbroken(outward.First, back.Last)
            || track.Seconds[back.First] - track.Seconds[outward.Last] > LongestTurn)
            return false;
        Heading there = track.Between(outward.First, outward.Last), home = track.Between(back.First, back.Last);
        double longer = Math.Max(there.Length, home.Length);
        return there.Cosine(home) <= OppositeCosine
            && Math.Min(there.Length, home.Length) >= ShortestShare * longer
            && track.Between(outward.First, back.Last).Length <= MostApart * longer;
    }

    private static double Worth(Track track, Stretch a, Stretch b) =>
        (a.Seconds + b.Seconds) * Math.Pow((Steadiness.MeanSpeed(track, a) + Steadiness.MeanSpeed(track, b)) / 2, Weight);
}
