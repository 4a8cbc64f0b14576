using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Tracks;

/// <summary>
/// The slow noise of a recording's positions: first-order Gauss-Markov, alike on both axes. Measured across the course while the craft goes
/// straight, where there should be no way at all; a paddler who does not steer straight therefore makes it too large, never too small.
/// </summary>
/// <param name="Metres">Standard deviation on each axis, metres.</param>
/// <param name="Seconds">Over which it fades to 1/e.</param>
internal readonly record struct PositionNoise(double Metres, double Seconds)
{
    // What is believed before anything is measured, logarithms: around 2 m and a minute. No source: chosen.
    private const double UsualMetres = 2, MetresSpread = 0.7, UsualSeconds = 60, SecondsSpread = 0.6;

    // Median of the square of a normal number over its variance (chi-squared, one degree of freedom), and what its logarithm's variance is
    // larger than that of the mean square's.
    private const double MedianOfSquares = 0.4549, MedianLoses = 2.7;
    private const double Paddling = 1.2, Straight = 1.04;
    private const int FewestMiddles = 20;
    private static readonly int[] Lags = [6, 10, 16, 25, 40, 60];

    /// <summary>The correlation over so many seconds.</summary>
    public double Correlation(double seconds) => Math.Exp(-Math.Abs(seconds) / Seconds);

    /// <summary>
    /// The noise of a track, by the way of its middle points off the line between points so many seconds before and after.
    /// </summary>
    public static PositionNoise Of(Track track)
    {
        var measured = new List<(int Lag, double Variance, double Count)>();
        foreach (int lag in Lags)
        {
            var squares = new List<double>();
            for (int i = lag; i + lag < track.Count; i += 2)
            {
                if (Aside(track, i, lag) is { } aside)
                    squares.Add(aside * aside);
            }

            if (squares.Count < FewestMiddles)
                continue;
            squares.Sort();
            measured.Add((lag, Math.Max(1e-4, squares[squares.Count / 2] / MedianOfSquares), Math.Max(1, 2.0 * squares.Count / lag)));
        }

        // Most believable of a grid: what was measured, and what was believed before.
        PositionNoise best = new(UsualMetres, UsualSeconds);
        double least = double.PositiveInfinity;
        for (double metres = 0.02; metres < 12; metres *= 1.08)
        {
            for (double seconds = 15; seconds < 400; seconds *= 1.15)
            {
                double cost = Square(Math.Log(metres / UsualMetres) / MetresSpread)
                    + Square(Math.Log(seconds / UsualSeconds) / SecondsSpread);
                foreach ((int lag, double variance, double count) in measured)
                {
                    double near = Math.Exp(-lag / seconds), far = Math.Exp(-2 * lag / seconds);
                    double expected = metres * metres * (1.5 - 2 * near + 0.5 * far) + 0.01;
                    cost += Square(Math.Log(variance / expected)) / (MedianLoses * 2 / count + 0.02);
                }

                if (cost < least)
                    (best, least) = (new PositionNoise(metres, seconds), cost);
            }
        }

        return best;
    }

    // Metres of the middle point off the straight line, where the craft paddles straight on; null elsewhere.
    private static double? Aside(Track track, int middle, int lag)
    {
        int from = middle - lag, to = middle + lag;
        if (!track.Unbroken(from, to) || track.Seconds[to] - track.Seconds[from] > 2 * lag)
            return null;
        Heading all = track.Between(from, to), half = track.Between(from, middle);
        if (all.Length < 2 * lag * Paddling || track.Along[to] - track.Along[from] > Straight * all.Length + 1)
            return null;
        return (half.East * all.North - half.North * all.East) / all.Length;
    }

    private static double Square(double value) => value * value;
}
