using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Information;

/// <summary>
/// The posterior as weighted points (curvature, best length at the card's duration, expected best length at the goal's
/// duration): small enough to try hundreds of cards on.
/// </summary>
internal sealed class PlanningCloud
{
    private PlanningCloud(int count, double share)
    {
        Share = share;
        Probability = new double[count];
        Curvature = new double[count];
        Card = new double[count];
        Goal = new double[count];
    }

    /// <summary>Share of the boat's propulsion.</summary>
    public double Share { get; }

    /// <summary>Weight of each point; they sum to one.</summary>
    public double[] Probability { get; }

    /// <summary>Curvature of each point.</summary>
    public double[] Curvature { get; }

    /// <summary>Best aligned length at the card's duration.</summary>
    public double[] Card { get; }

    /// <summary>Expected best aligned length at the goal's duration, given the two above.</summary>
    public double[] Goal { get; }

    /// <summary>Variance of the goal's best length that no card of this duration can take away.</summary>
    public double LeftVariance { get; private set; }

    /// <summary>Spreads a posterior over points: for each curvature, evenly spaced lengths within 3.25 standard deviations.</summary>
    /// <param name="posterior">What is believed.</param>
    /// <param name="cardLogDuration">Logarithm of how long the card's pieces take over the reference duration.</param>
    /// <param name="lengths">How many lengths for each curvature.</param>
    public static PlanningCloud Of(Posterior posterior, double cardLogDuration, int lengths)
    {
        PosteriorComponent[] parts = posterior.ByCurvature(cardLogDuration);
        PlanningCloud cloud = new(parts.Length * lengths, posterior.Share);
        double[] heights = new double[lengths];
        double height = 0;
        for (int k = 0; k < lengths; k++)
        {
            double z = Place(k);
            heights[k] = Math.Exp(-0.5 * z * z);
            height += heights[k];
        }

        double total = 0;
        foreach (PosteriorComponent part in parts)
            total += part.Weight;
        int at = 0;
        foreach (PosteriorComponent part in parts)
        {
            double spread = Math.Sqrt(part.CardVariance), slope = part.Covariance / part.CardVariance;
            cloud.LeftVariance += part.Weight / total * Math.Max(0, part.GoalVariance - slope * part.Covariance);
            for (int k = 0; k < lengths; k++, at++)
            {
                cloud.Probability[at] = part.Weight / total * heights[k] / height;
                cloud.Curvature[at] = part.Curvature;
                cloud.Card[at] = part.Card + Place(k) * spread;
                cloud.Goal[at] = part.Goal + slope * Place(k) * spread;
            }
        }

        return cloud;

        double Place(int k) => 3.25 * (2.0 * k / (lengths - 1) - 1);
    }
}
