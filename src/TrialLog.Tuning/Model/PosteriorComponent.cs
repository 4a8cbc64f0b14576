namespace TrialLog.Tuning.Model;

/// <summary>
/// One normal piece of the posterior: with this curvature, the best aligned length in the hull asked for at the goal's
/// duration and at the card's duration.
/// </summary>
/// <param name="Weight">Its probability.</param>
/// <param name="Curvature">c, percent per inch squared.</param>
/// <param name="Goal">Mean best length at the goal's duration, inches.</param>
/// <param name="GoalVariance">Its variance.</param>
/// <param name="Card">Mean best length at the card's duration.</param>
/// <param name="CardVariance">Its variance.</param>
/// <param name="Covariance">Between the two.</param>
internal readonly record struct PosteriorComponent(
    double Weight, double Curvature, double Goal, double GoalVariance, double Card, double CardVariance, double Covariance);
