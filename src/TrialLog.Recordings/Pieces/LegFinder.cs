using TrialLog.Domain.Log;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Finds the legs of a track: stretches of steady speed between rests, turns, steps of speed and pressed laps.</summary>
internal static class LegFinder
{
    // No sources: chosen. A shorter stretch tells no speed to a few tenths of a percent.
    private const int ShortestSeconds = 40;
    private const double ShortestMetres = 80;
    private const double MostVariation = 0.15;
    private const int LongestSeconds = 6 * 3600;
    private const int SnapSeconds = 15;

    /// <summary>The legs in order; they do not overlap.</summary>
    /// <param name="track">The track.</param>
    /// <param name="presses">Points at which the paddler pressed for a lap, in order.</param>
    public static List<Stretch> Find(Track track, IReadOnlyList<int> presses)
    {
        if (MovingBlocks.UsualSpeed(track) is not double usual)
            return [];
        var legs = new List<Stretch>();
        foreach (Stretch block in MovingBlocks.Find(track, usual, ShortestSeconds / 2))
            legs.AddRange(SpeedSteps.Split(track, block, usual));
        List<Stretch> refined = WithoutOverlap(legs.ConvertAll(leg => LegEdges.Refine(track, leg)));
        List<Stretch> cut = presses.Count == 0 ? refined : WithoutOverlap(CutAt(refined, presses));
        return cut.FindAll(leg => IsLeg(track, leg));
    }

    private static bool IsLeg(Track track, Stretch leg) =>
        leg.Seconds is >= ShortestSeconds and <= LongestSeconds
        && track.Along[leg.Last] - track.Along[leg.First] >= ShortestMetres
        && Steadiness.MeanSpeed(track, leg) is >= Piece.SlowestMetresPerSecond and <= Piece.FastestMetresPerSecond
        && Steadiness.IsSteady(track, Steadiness.SteadyPart(track, leg), MostVariation);

    private static List<Stretch> CutAt(List<Stretch> legs, IReadOnlyList<int> presses)
    {
        var cut = new List<Stretch>();
        foreach (Stretch leg in legs)
        {
            int start = Snapped(leg.First, presses), last = Snapped(leg.Last, presses);
            foreach (int press in presses.Where(p => p > start && p < last))
            {
                cut.Add(new Stretch(start, press));
                start = press;
            }

            cut.Add(new Stretch(start, last));
        }

        return cut;
    }

    private static int Snapped(int edge, IReadOnlyList<int> presses)
    {
        int nearest = presses.MinBy(p => Math.Abs(p - edge));
        return Math.Abs(nearest - edge) <= SnapSeconds ? nearest : edge;
    }

    // Edges moved outward may cross; the middle is then as good as either.
    private static List<Stretch> WithoutOverlap(List<Stretch> legs)
    {
        var apart = new List<Stretch>(legs.Count);
        foreach (Stretch leg in legs)
        {
            Stretch next = leg;
            if (apart.Count > 0 && apart[^1].Last > leg.First)
            {
                int middle = (apart[^1].Last + leg.First) / 2;
                apart[^1] = apart[^1] with { Last = middle };
                next = leg with { First = middle };
            }

            if (next.Seconds > 0)
                apart.Add(next);
        }

        return apart.FindAll(leg => leg.Seconds > 0);
    }
}
