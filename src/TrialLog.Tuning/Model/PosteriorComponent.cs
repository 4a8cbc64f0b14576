namespace TrialLog.Tuning.Model;

/// <summary>
/// One normal piece of the posterior: with this curvature, the best aligned length in the hull asked for at the goal's
/// duration and at the card's duration, and how lopsided the curve is.
/// </summary>
/// <param name="Weight">Its probability.</param>
/// <param name="Curvature">c, percent per inch squared.</param>
/// <param name="Goal">Mean best length at the goal's duration, inches.</param>
/// <param name="GoalVariance">Its variance.</param>
/// <param name="Card">Mean best length at the card's duration.</param>
/// <param name="CardVariance">Its variance.</param>
/// <param name="Covariance">Between the two.</param>
/// <param name="Skew">Mean of g.</param>
/// <param name="SkewVariance">Its variance.</param>
/// <param name="GoalWithSkew">Covariance of the best length at the goal's duration with g.</param>
internal readonly record struct PosteriorComponent(
    double Weight, double Curvature, double Goal, double GoalVariance, double Card, double CardVariance, double Covariance,
    double Skew, double SkewVariance, double GoalWithSkew)
{
    /// <summary>Variance of the best length at the goal's duration that is left once that at the card's is known.</summary>
    public double GoalGivenCard => Math.Max(LeastVariance, GoalVariance - Covariance * Covariance / CardVariance);

    /// <summary>
    /// Mean of (a − θ)² + g (a − θ)|a − θ| at the goal's duration: what a length <paramref name="aligned"/> loses, but for s c.
    /// </summary>
    public double Away(double aligned)
    {
        double sd = Math.Sqrt(GoalVariance), away = aligned - Goal, perInch = GoalWithSkew / GoalVariance;
        (_, double second, double third) = StandardNormal.AbsoluteMoments(away / sd);
        return away * away + GoalVariance * (1 + (Skew + perInch * away) * second - perInch * sd * third);
    }

    /// <summary>Its slope.</summary>
    public double AwaySlope(double aligned)
    {
        double sd = Math.Sqrt(GoalVariance), away = aligned - Goal, perInch = GoalWithSkew / GoalVariance;
        (double first, double second, _) = StandardNormal.AbsoluteMoments(away / sd);
        return 2 * (away + sd * ((Skew + perInch * away) * first - perInch * sd * second));
    }

    /// <summary>
    /// The same piece at three values of g, with the shares that integrate a normal exactly up to its fifth moment (Gauss and
    /// Hermite). Given g, the best length is normal.
    /// </summary>
    public IEnumerable<(double Share, double Skew, double Goal, double Sd)> BySkew()
    {
        double skewSd = Math.Sqrt(SkewVariance), perSd = skewSd > 0 ? GoalWithSkew / skewSd : 0;
        double sd = Math.Sqrt(Math.Max(GoalVariance - perSd * perSd, 1e-4 * GoalVariance));
        for (int k = -1; k <= 1; k++)
            yield return (k == 0 ? 2.0 / 3 : 1.0 / 6, Math.Clamp(Skew + k * Math.Sqrt(3) * skewSd, -MostSkew, MostSkew),
                Goal + k * Math.Sqrt(3) * perSd, sd);
    }

    /// <summary>
    /// A node beyond the bounds of g, as a wide piece near a bound can have, is held below the g at which a curve has no top.
    /// </summary>
    private const double MostSkew = 0.9;

    private const double LeastVariance = 1e-8;
}
