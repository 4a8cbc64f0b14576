using MathNet.Numerics;

namespace TrialLog.Tuning.Model;

/// <summary>
/// The joint posterior of the best aligned length (in the hull asked for, at the goal's duration) and the curvature, as a
/// mixture of normals: exact but for the grid over (τ, σ, c, κ) and the heavy tails' weights.
/// </summary>
internal sealed class Posterior
{
    private readonly PosteriorComponent[] _components;

    internal Posterior(PosteriorComponent[] components, Marginal logCurvature, Marginal durationEffect, Marginal logOuting, Marginal logPiece, double share)
    {
        _components = components;
        LogCurvature = logCurvature;
        DurationEffect = durationEffect;
        LogOuting = logOuting;
        LogPiece = logPiece;
        Share = share;
        foreach (PosteriorComponent part in components)
        {
            double weight = part.Weight * part.Curvature;
            MeanCurvature += weight;
            MeanCurvatureBest += weight * part.Goal;
            MeanCurvatureSquare += weight * (part.Goal * part.Goal + part.GoalVariance);
            Mean += part.Weight * part.Goal;
        }
    }

    /// <summary>The normal pieces.</summary>
    public ReadOnlySpan<PosteriorComponent> Components => _components;

    /// <summary>
    /// The same posterior with one normal for each curvature, which is all that planning and drawing need; by curvature.
    /// </summary>
    public PosteriorComponent[] ByCurvature()
    {
        List<double> curvatures = [.. LogCurvature.Values.Select(Math.Exp)];
        double[] sums = new double[curvatures.Count * 6];
        foreach (PosteriorComponent part in _components)
        {
            int at = curvatures.IndexOf(part.Curvature) * 6;
            sums[at] += part.Weight;
            sums[at + 1] += part.Weight * part.Goal;
            sums[at + 2] += part.Weight * (part.Goal * part.Goal + part.GoalVariance);
            sums[at + 3] += part.Weight * part.Card;
            sums[at + 4] += part.Weight * (part.Card * part.Card + part.CardVariance);
            sums[at + 5] += part.Weight * (part.Goal * part.Card + part.Covariance);
        }

        List<PosteriorComponent> merged = [];
        for (int k = 0; k < curvatures.Count; k++)
        {
            double weight = sums[k * 6];
            if (weight < 1e-7)
                continue;
            double goal = sums[k * 6 + 1] / weight, card = sums[k * 6 + 3] / weight;
            merged.Add(new(weight, curvatures[k], goal, sums[k * 6 + 2] / weight - goal * goal, card,
                sums[k * 6 + 4] / weight - card * card, sums[k * 6 + 5] / weight - goal * card));
        }

        return [.. merged];
    }

    /// <summary>Posterior of ln c.</summary>
    public Marginal LogCurvature { get; }

    /// <summary>Posterior of κ.</summary>
    public Marginal DurationEffect { get; }

    /// <summary>Posterior of ln τ.</summary>
    public Marginal LogOuting { get; }

    /// <summary>Posterior of ln σ.</summary>
    public Marginal LogPiece { get; }

    /// <summary>Share of the boat's propulsion in the hull asked for.</summary>
    public double Share { get; }

    /// <summary>Posterior mean of the best aligned length.</summary>
    public double Mean { get; }

    /// <summary>E[c].</summary>
    public double MeanCurvature { get; }

    /// <summary>E[c θ].</summary>
    public double MeanCurvatureBest { get; }

    /// <summary>E[c θ²].</summary>
    public double MeanCurvatureSquare { get; }

    /// <summary>The aligned length with the least expected loss, E[c θ]/E[c].</summary>
    public double LeastLoss => MeanCurvatureBest / MeanCurvature;

    /// <summary>Expected loss of speed at an aligned length, E[s c (a − θ)²], percent.</summary>
    public double ExpectedLoss(double aligned) =>
        Math.Max(0, Share * (MeanCurvature * aligned * aligned - 2 * aligned * MeanCurvatureBest + MeanCurvatureSquare));

    /// <summary>Probability that the best aligned length is below that.</summary>
    public double Below(double aligned)
    {
        double sum = 0;
        foreach (PosteriorComponent part in _components)
            sum += part.Weight * NormalBelow((aligned - part.Goal) / Math.Sqrt(part.GoalVariance));
        return sum;
    }

    /// <summary>The best aligned length's quantile.</summary>
    public double Quantile(double share)
    {
        double low = double.MaxValue, high = double.MinValue;
        foreach (PosteriorComponent part in _components)
        {
            double reach = 8 * Math.Sqrt(part.GoalVariance);
            low = Math.Min(low, part.Goal - reach);
            high = Math.Max(high, part.Goal + reach);
        }

        while (high - low > 1e-6)
        {
            double middle = 0.5 * (low + high);
            if (Below(middle) < share)
                low = middle;
            else
                high = middle;
        }

        return 0.5 * (low + high);
    }

    /// <summary>
    /// Probability that some length within the reach beats <paramref name="aligned"/> by a worthwhile change. The best within reach
    /// is θ itself, or the end of the reach that is nearest to it.
    /// </summary>
    public double WorthwhileLeft(double aligned, double shortest, double longest, double worthwhile)
    {
        double sum = 0;
        foreach (PosteriorComponent part in _components)
        {
            double within = worthwhile / (Share * part.Curvature), spread = Math.Sqrt(part.GoalVariance);
            double above = Threshold(longest - aligned, within), below = Threshold(aligned - shortest, within);
            if (above < double.PositiveInfinity)
                sum += part.Weight * NormalBelow((part.Goal - aligned - above) / spread);
            if (below < double.PositiveInfinity)
                sum += part.Weight * NormalBelow((aligned - part.Goal - below) / spread);
        }

        return Math.Clamp(sum, 0, 1);
    }

    /// <summary>
    /// How far off θ must lie on one side, for the best length up to <paramref name="room"/> away on that side to gain
    /// <paramref name="squared"/> inches squared: the root of it where there is room, else from d² − (d − room)² = squared.
    /// </summary>
    private static double Threshold(double room, double squared)
    {
        double root = Math.Sqrt(squared);
        if (room >= root)
            return root;
        return room > 1e-9 ? (squared + room * room) / (2 * room) : double.PositiveInfinity;
    }

    /// <summary>The standard normal distribution function.</summary>
    internal static double NormalBelow(double z) => 0.5 * SpecialFunctions.Erfc(-z / Constants.Sqrt2);
}
