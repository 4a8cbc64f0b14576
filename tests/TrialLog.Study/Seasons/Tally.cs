using TrialLog.Study.Seasons.Methods;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Study.Seasons;

/// <summary>A mean with its Monte Carlo error: the standard deviation over paddlers by the root of their number.</summary>
internal readonly record struct Estimate(double Mean, double Error)
{
    public static Estimate Of(IReadOnlyCollection<double> values)
    {
        if (values.Count == 0)
            return new(double.NaN, double.NaN);
        double mean = values.Average();
        double variance = values.Count < 2 ? double.NaN : values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1);
        return new(mean, Math.Sqrt(variance / values.Count));
    }
}

/// <summary>What one method did in one paddler's season: before any outing, and after each.</summary>
/// <param name="Loss">True loss at the recommended length, percent.</param>
/// <param name="Covered">Whether the range held the truth; null where there is no range.</param>
/// <param name="Near">Whether the recommended length is within a quarter inch of the true best.</param>
/// <param name="Claims">What else was said; empty for methods that say nothing else.</param>
/// <param name="OtherHullHeld">After how many outings the carried range held in another hull; empty where it was not asked.</param>
/// <param name="GoalHeld">The same over a goal event of an hour.</param>
internal sealed record SeasonResult(
    double[] Loss, bool[]? Covered, bool[] Near, IReadOnlyList<Claims> Claims,
    IReadOnlyDictionary<int, bool> OtherHullHeld, IReadOnlyDictionary<int, bool> GoalHeld)
{
    /// <summary>Outings after which it first said stop; null if it never did.</summary>
    public int? StoppedAfter => Enumerable.Range(0, Claims.Count).Where(outings => Claims[outings].Stop)
        .Select(static outings => (int?)outings).FirstOrDefault();

    /// <summary>True loss where it first said so.</summary>
    public double LossAtStop => StoppedAfter is { } after ? Loss[after] : double.NaN;

    /// <summary>Where the search stood then.</summary>
    public Standing? StoppedAs => StoppedAfter is { } after ? Claims[after].Standing : null;
}
