namespace TrialLog.Tuning.Classical;

/// <summary>
/// Fieller's confidence set for the ratio of two normal estimates. All ratios ρ with
/// (a − ρ·b)² ≤ t²·(var a − 2ρ·cov + ρ²·var b). Source: Fieller 1954, J R Stat Soc B 16(2):175-85.
/// </summary>
internal static class Fieller
{
    /// <summary>The set for <paramref name="numerator"/> / <paramref name="denominator"/>.</summary>
    /// <param name="numerator">a.</param>
    /// <param name="denominator">b.</param>
    /// <param name="numeratorVariance">var a.</param>
    /// <param name="denominatorVariance">var b.</param>
    /// <param name="covariance">cov(a, b).</param>
    /// <param name="quantile">t, the two-sided quantile of Student's t for <paramref name="level"/>.</param>
    /// <param name="level">Confidence, 0 to 1, handed on.</param>
    public static FiellerInterval Of(
        double numerator, double denominator, double numeratorVariance, double denominatorVariance, double covariance,
        double quantile, double level)
    {
        double square = quantile * quantile;
        double leading = denominator * denominator - square * denominatorVariance;
        double middle = numerator * denominator - square * covariance;
        double constant = numerator * numerator - square * numeratorVariance;
        double discriminant = middle * middle - leading * constant;
        if (leading == 0 || discriminant <= 0)
            return new(FiellerShape.Everything, double.NaN, double.NaN, level);

        // The root that does not cancel first; their product is constant / leading.
        double far = middle + (middle < 0 ? -1 : 1) * Math.Sqrt(discriminant);
        double first = far / leading, second = far == 0 ? first : constant / far;
        return new(leading > 0 ? FiellerShape.Bounded : FiellerShape.Outside, Math.Min(first, second), Math.Max(first, second), level);
    }
}
