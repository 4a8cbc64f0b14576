using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

namespace TrialLog.Tuning.Model;

/// <summary>
/// The joint posterior of best aligned length (in the hull asked for, at the goal's duration), curvature and lopsidedness, as a
/// mixture of normals: exact but for the grid over (τ, σ, c, κ) and the heavy tails' weights. Everything it says of a length is said
/// by one curve, s c ((a − θ)² + g (a − θ)|a − θ|).
/// </summary>
internal sealed class Posterior
{
    private readonly CurveCell[] _cells;
    private readonly double _goal, _card, _carried;
    private readonly PosteriorComponent[] _components, _byCurvature;
    private readonly NormalMixture _best;

    /// <param name="cells">Moments by curvature and whatever else makes them near normal.</param>
    /// <param name="logCurvature">Posterior of ln c.</param>
    /// <param name="durationEffect">Posterior of κ.</param>
    /// <param name="logOuting">Posterior of ln τ.</param>
    /// <param name="logPiece">Posterior of ln σ.</param>
    /// <param name="share">Share of the boat's propulsion.</param>
    /// <param name="goal">Logarithm of the goal's duration over the reference duration.</param>
    /// <param name="card">The same for the card's pieces.</param>
    /// <param name="carried">Variance that the best length gains on its way to the blade asked for, inches squared.</param>
    internal Posterior(CurveCell[] cells, Marginal logCurvature, Marginal durationEffect, Marginal logOuting, Marginal logPiece,
        double share, double goal, double card, double carried)
    {
        _cells = cells;
        (_goal, _card) = (goal, card);
        LogCurvature = logCurvature;
        DurationEffect = durationEffect;
        LogOuting = logOuting;
        LogPiece = logPiece;
        Share = share;
        _carried = carried;
        _components = [.. cells.Select(cell => cell.At(goal, card, carried))];
        _byCurvature = ByCurvature(card);
        _best = new([.. _components.Select(part => part.Weight)], [.. _components.Select(part => part.Goal)],
            [.. _components.Select(part => Math.Sqrt(part.GoalVariance))]);
        foreach (PosteriorComponent part in _components)
            Mean += part.Weight * part.Goal;
        LeastLoss = FindLeastLoss();
    }

    /// <summary>The same with another variance on the way to the blade asked for, inches squared.</summary>
    public Posterior Carrying(double variance) =>
        variance == _carried ? this : new(_cells, LogCurvature, DurationEffect, LogOuting, LogPiece, Share, _goal, _card, variance);

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

    /// <summary>Mean and variance of the best aligned length at the reference duration.</summary>
    public (double Mean, double Variance) AtReference
    {
        get
        {
            PosteriorComponent all = CurveCell.Merged(_cells).At(0, 0, _carried);
            return (all.Goal, all.GoalVariance);
        }
    }

    /// <summary>The aligned length with the least expected loss; without lopsidedness E[c θ]/E[c].</summary>
    public double LeastLoss { get; }

    /// <summary>The normal pieces, outliers of the start length and each spread of the pieces kept apart.</summary>
    public IReadOnlyList<PosteriorComponent> Components => _components;

    /// <summary>The same posterior with one normal for each curvature, which is all that planning and drawing need; by curvature.</summary>
    public PosteriorComponent[] ByCurvature() => _byCurvature;

    /// <summary>The same for a card whose pieces take that long.</summary>
    /// <param name="cardLogDuration">Logarithm of their duration over the reference duration.</param>
    public PosteriorComponent[] ByCurvature(double cardLogDuration) =>
        [.. _cells.GroupBy(cell => cell.Curvature).OrderBy(cells => cells.Key).Select(cells => CurveCell.Merged(cells))
            .Where(cell => cell.Weight >= 1e-7).Select(cell => cell.At(_goal, cardLogDuration, _carried))];

    /// <summary>Expected loss of speed at an aligned length, E[s c ((a − θ)² + g (a − θ)|a − θ|)], percent.</summary>
    public double ExpectedLoss(double aligned)
    {
        double sum = 0;
        foreach (PosteriorComponent part in _components)
            sum += part.Weight * part.Curvature * part.Away(aligned);
        return Math.Max(0, Share * sum);
    }

    /// <summary>Probability that the best aligned length is below that.</summary>
    public double Below(double aligned) => _best.Below(aligned);

    /// <summary>The best aligned length's quantile.</summary>
    public double Quantile(double share) => _best.Quantile(share);

    /// <summary>
    /// Probability that some length within the reach beats <paramref name="aligned"/> by a worthwhile change. The best within reach
    /// is θ itself, or the end of the reach that is nearest to it.
    /// </summary>
    public double WorthwhileLeft(double aligned, double shortest, double longest, double worthwhile)
    {
        double sum = 0;
        foreach (PosteriorComponent part in _components)
            foreach ((double share, double skew, double goal, double sd) in part.BySkew())
            {
                double within = worthwhile / (Share * part.Curvature), weight = part.Weight * share;
                // A best length above makes this one too short, and the short side is 1 − g times as steep.
                double above = Threshold(longest - aligned, within / (1 - skew)),
                    below = Threshold(aligned - shortest, within / (1 + skew));
                if (above < double.PositiveInfinity)
                    sum += weight * StandardNormal.Below((goal - aligned - above) / sd);
                if (below < double.PositiveInfinity)
                    sum += weight * StandardNormal.Below((aligned - goal - below) / sd);
            }

        return Math.Clamp(sum, 0, 1);
    }

    /// <summary>
    /// Probability that some length beats the best known by a worthwhile change once so much more is known of the best length at the
    /// pieces' duration: what is left with any number of them is how it moves with duration. Lopsidedness left out.
    /// </summary>
    /// <param name="cardLogDuration">Logarithm of the pieces' duration over the reference duration.</param>
    /// <param name="worthwhile">The smallest change of speed that matters, percent.</param>
    /// <param name="information">
    /// Precision that further pieces add at a curvature of 1, per inch squared; infinite for any number of them.
    /// </param>
    public double ChanceBeyond(double cardLogDuration, double worthwhile, double information = double.PositiveInfinity)
    {
        double sum = 0;
        foreach (PosteriorComponent part in ByCurvature(cardLogDuration))
        {
            double toGoal = part.Covariance / part.CardVariance,
                card = 1 / (1 / part.CardVariance + information * part.Curvature * part.Curvature),
                variance = part.GoalGivenCard + toGoal * toGoal * card;
            sum += part.Weight * 2 * StandardNormal.Below(-Math.Sqrt(worthwhile / (Share * part.Curvature) / variance));
        }

        return sum;
    }

    /// <summary>
    /// The central range of the difference in speed between two lengths, percent: <paramref name="aligned"/> less <paramref name="other"/>.
    /// </summary>
    /// <param name="aligned">A length.</param>
    /// <param name="other">Another.</param>
    /// <param name="level">Probability in the range.</param>
    public (double Low, double High) DifferenceRange(double aligned, double other, double level)
    {
        if (Math.Abs(aligned - other) < 1e-9)
            return (0, 0);
        // With the longer of the two as the one asked for; the other way round is the same with its sign turned.
        if (aligned < other)
        {
            (double low, double high) = DifferenceRange(other, aligned, level);
            return (-high, -low);
        }

        (double PerPercent, double Skew, double Goal, double Sd, double Weight)[] parts =
        [
            .. _byCurvature.SelectMany(
                part => part.BySkew().Select(at => (1 / (Share * part.Curvature), at.Skew, at.Goal, at.Sd, part.Weight * at.Share))),
        ];
        return (At((1 - level) / 2), At((1 + level) / 2));

        // A mixture's quantile lies between those of its parts.
        double At(double share)
        {
            double z = Normal.InvCDF(0, 1, share), least = double.MaxValue, most = double.MinValue;
            foreach ((double PerPercent, double Skew, double Goal, double Sd, double Weight) part in parts)
            {
                double alone = Speed(part.Goal + z * part.Sd, part);
                (least, most) = (Math.Min(least, alone), Math.Max(most, alone));
            }

            return Quantiles.Of(Below, least, most, share);
        }

        // The longer is the faster the longer the best length is, so the difference lies below a value where θ lies below a place.
        double Below(double percent)
        {
            double sum = 0;
            foreach ((double perPercent, double skew, double goal, double sd, double weight) in parts)
                sum += weight * StandardNormal.Below((BestLengthAt(percent * perPercent, skew, other, aligned) - goal) / sd);
            return sum;
        }

        double Speed(double best, (double PerPercent, double Skew, double Goal, double Sd, double Weight) part) =>
            (Loss(other - best, part.Skew) - Loss(aligned - best, part.Skew)) / part.PerPercent;
    }

    private static double Loss(double away, double skew) => away * away * (1 + (away > 0 ? skew : -skew));

    /// <summary>
    /// At which θ the loss at <paramref name="shorter"/> less that at <paramref name="longer"/> is <paramref name="difference"/> inches
    /// squared: linear in θ outside the two, quadratic between them.
    /// </summary>
    private static double BestLengthAt(double difference, double skew, double shorter, double longer)
    {
        double gap = longer - shorter, middle = 0.5 * (shorter + longer), steepLong = 1 + skew, steepShort = 1 - skew;
        if (difference <= -steepLong * gap * gap)
            return middle + difference / (2 * steepLong * gap);
        if (difference >= steepShort * gap * gap)
            return middle + difference / (2 * steepShort * gap);
        // With u = θ − shorter: (1 − g) u² − (1 + g)(gap − u)² = difference.
        double half = steepLong * gap, free = steepLong * gap * gap + difference;
        return shorter + free / (half + Math.Sqrt(Math.Max(0, half * half - 2 * skew * free)));
    }

    private double FindLeastLoss()
    {
        double low = double.MaxValue, high = double.MinValue;
        foreach (PosteriorComponent part in _components)
        {
            double sd = Math.Sqrt(part.GoalVariance);
            low = Math.Min(low, part.Goal - 3 * sd);
            high = Math.Max(high, part.Goal + 3 * sd);
        }

        if (Slope(low) >= 0 || Slope(high) <= 0)
            return Slope(low) >= 0 ? low : high;
        Brent.TryFindRoot(Slope, low, high, 1e-10, 200, out double least);
        return least;

        double Slope(double aligned)
        {
            double sum = 0;
            foreach (PosteriorComponent part in _components)
                sum += part.Weight * part.Curvature * part.AwaySlope(aligned);
            return sum;
        }
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
}
