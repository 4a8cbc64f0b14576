namespace TrialLog.Recordings;

/// <summary>Tells the pieces from warm-up, easy paddling and cool-down by their speed.</summary>
internal static class WorkLevel
{
    // Speeds within this share of one another are one level. No source: a tenth of speed is about a third of power (P ∝ v³).
    private const double SameLevel = 0.07;

    // Faster paddling is meant more: with this power of speed, ten minutes of pieces outweigh fifty of warm-up at four fifths of their speed.
    private const double Weight = 8;

    /// <summary>Slower than this share of the level is not a piece.</summary>
    public const double Slowest = 0.92;

    /// <summary>The speed at which most of the work was done: the level with the most time, faster time counting more. NaN for none.</summary>
    public static double Of(IReadOnlyList<(double Speed, double Seconds)> stretches)
    {
        double best = double.NaN, most = double.NegativeInfinity;
        foreach ((double level, _) in stretches)
        {
            double total = 0;
            foreach ((double speed, double seconds) in stretches)
            {
                if (Math.Abs(speed - level) <= SameLevel * level)
                    total += seconds * Math.Pow(speed, Weight);
            }

            if (total > most)
                (best, most) = (level, total);
        }

        return best;
    }
}
