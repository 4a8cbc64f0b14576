using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>
/// Cuts a stretch where the speed steps, as from warm-up to piece: the split into constant speeds with the least squared
/// error plus a price for each cut, found exactly by dynamic programming (optimal partitioning; Jackson et al. 2005, IEEE Signal
/// Processing Letters 12(2):105-8).
/// </summary>
internal static class SpeedSteps
{
    // A minute at a tenth off the usual speed just pays for the two cuts around it. No source: chosen; it leaves
    // gusts and fade alone.
    private const double Price = 0.3;

    // Steps that are the noise's own: of a random walk the best of a few hundred cuts gains some ten times its variance a second.
    private const double NoisePrice = 8;
    private const double SameSpeed = 0.07;
    private const int ShortestSeconds = 20;
    private const int MostCells = 1500;

    /// <summary>The stretch cut into stretches of about constant speed.</summary>
    public static List<Stretch> Split(Track track, Stretch stretch, double usualSpeed)
    {
        // The getting going and the easing off are no steps of their own.
        List<Stretch> cut = SplitSteady(track, Steadiness.SteadyPart(track, stretch), usualSpeed);
        cut[0] = cut[0] with { First = stretch.First };
        cut[^1] = cut[^1] with { Last = stretch.Last };
        return cut;
    }

    private static List<Stretch> SplitSteady(Track track, Stretch stretch, double usualSpeed)
    {
        int cell = Math.Max(2, (stretch.Seconds + MostCells - 1) / MostCells);
        int count = stretch.Seconds / cell, shortest = Math.Max(1, (ShortestSeconds + cell - 1) / cell);
        if (count < 2 * shortest)
            return [stretch];

        (double[] sum, double[] square) = Sums(track, stretch, cell, count);
        double price = (Price * usualSpeed * usualSpeed + NoisePrice * track.Wander) / cell;
        var best = new double[count + 1];
        var cut = new int[count + 1];
        Array.Fill(best, double.PositiveInfinity);
        best[0] = -price;
        for (int end = shortest; end <= count; end++)
        {
            for (int start = 0; start <= end - shortest; start++)
            {
                double total = sum[end] - sum[start];
                double cost = best[start] + price + square[end] - square[start] - total * total / (end - start);
                if (cost < best[end])
                    (best[end], cut[end]) = (cost, start);
            }
        }

        var found = new List<Stretch>();
        int last = stretch.Last;
        for (int end = count; end > 0; end = cut[end])
        {
            int first = stretch.First + cut[end] * cell;
            found.Add(new Stretch(first, last));
            last = first;
        }

        found.Reverse();
        return Joined(track, found);
    }

    private static (double[] Sum, double[] Square) Sums(Track track, Stretch stretch, int cell, int count)
    {
        var sum = new double[count + 1];
        var square = new double[count + 1];
        for (int i = 0; i < count; i++)
        {
            int at = stretch.First + i * cell;
            double speed = (track.Along[at + cell] - track.Along[at]) / cell;
            sum[i + 1] = sum[i] + speed;
            square[i + 1] = square[i] + speed * speed;
        }

        return (sum, square);
    }

    private static List<Stretch> Joined(Track track, List<Stretch> stretches)
    {
        var joined = new List<Stretch> { stretches[0] };
        foreach (Stretch next in stretches.Skip(1))
        {
            double a = Steadiness.MeanSpeed(track, joined[^1]), b = Steadiness.MeanSpeed(track, next);
            if (Math.Abs(a - b) < SameSpeed * Math.Max(a, b))
                joined[^1] = new Stretch(joined[^1].First, next.Last);
            else
                joined.Add(next);
        }

        return joined;
    }
}
