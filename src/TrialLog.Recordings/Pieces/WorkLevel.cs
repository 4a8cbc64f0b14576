using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Pieces;

/// <summary>Tells the pieces from warm-up, easy paddling and cool-down by their speed.</summary>
internal static class WorkLevel
{
    // Speeds within this share of one another are one level. No source: a tenth of speed is about a third of power (P ∝ v³).
    private const double SameLevel = 0.07;

    // Faster paddling is meant more: with this power of speed, ten minutes of pieces outweigh fifty of warm-up at four fifths of their
    // speed.
    private const double Weight = 8;

    /// <summary>Slower than this share of the level is not a piece.</summary>
    public const double Slowest = 0.92;

    /// <summary>
    /// The speed at which most of the work was done: the level with the most time, faster time counting more. NaN for none.
    /// </summary>
    public static double Of(IEnumerable<(double Speed, double Seconds)> stretches)
    {
        (double Speed, double Seconds)[] sorted = [.. stretches.OrderBy(s => s.Speed)];
        double best = double.NaN, most = double.NegativeInfinity, total = 0;
        int first = 0, next = 0;
        foreach ((double level, _) in sorted)
        {
            // Both ends of the window of one level only ever move up.
            for (; next < sorted.Length && sorted[next].Speed <= (1 + SameLevel) * level; next++)
                total += Worth(sorted[next]);
            for (; sorted[first].Speed < (1 - SameLevel) * level; first++)
                total -= Worth(sorted[first]);
            if (total > most)
                (best, most) = (level, total);
        }

        return best;
    }

    private static double Worth((double Speed, double Seconds) stretch) => stretch.Seconds * Math.Pow(stretch.Speed, Weight);
}
