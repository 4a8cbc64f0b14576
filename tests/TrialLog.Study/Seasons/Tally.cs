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

/// <summary>What one method did in one paddler's season.</summary>
/// <param name="Loss">True loss at the recommended length before any outing and after each, percent.</param>
/// <param name="Covered">Whether the range held the truth after each number of outings; null where there is no range.</param>
/// <param name="StoppedAfter">Outings after which it first said stop; null if it never did.</param>
/// <param name="LossAtStop">True loss where it said so.</param>
internal sealed record SeasonResult(double[] Loss, bool[]? Covered, int? StoppedAfter, double LossAtStop);
