using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Tracks;

/// <summary>How much the positions of a recording jitter from fix to fix.</summary>
internal static class FixNoise
{
    // Metres on each axis; for recordings too sparse to tell, and the least and most that are believed. No source: chosen.
    private const double Unknown = 0.5, Least = 0.4, Most = 5;
    private const double LongestStep = 2;
    private const int FewestDifferences = 30;

    /// <summary>
    /// Standard deviation on each axis, metres, from third differences of evenly timed fixes: of independent noise r they have
    /// variance 20 r² on each axis, and steady acceleration leaves none. The median of a sum of two squares
    /// of such normal numbers is 2 ln 2 of their variance.
    /// </summary>
    public static double Of(ReadOnlySpan<Fix> fixes)
    {
        var squares = new List<double>(fixes.Length);
        for (int i = 3; i < fixes.Length; i++)
        {
            double step = fixes[i].Time - fixes[i - 1].Time;
            if (step > LongestStep || !IsNear(fixes[i - 1].Time - fixes[i - 2].Time, step)
                || !IsNear(fixes[i - 2].Time - fixes[i - 3].Time, step))
                continue;
            Point3 difference = fixes[i].Position - fixes[i - 3].Position - 3 * (fixes[i - 1].Position - fixes[i - 2].Position);
            squares.Add(difference.Dot(difference));
        }

        if (squares.Count < FewestDifferences)
            return Unknown;
        squares.Sort();
        return Math.Clamp(Math.Sqrt(squares[squares.Count / 2] / (20 * 2 * Math.Log(2))), Least, Most);
    }

    private static bool IsNear(double a, double b) => Math.Abs(a - b) < 0.01;
}
