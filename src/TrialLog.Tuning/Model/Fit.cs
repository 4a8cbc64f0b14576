using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>Fits the model to a question's pieces.</summary>
internal sealed class Fit
{
    private Fit(PieceTable table, Alignment alignment, EffortModel? effort, double[] weights, double[] residuals, Posterior posterior,
        SkewGivenCurve skew, double goalLogDuration, double cardLogDuration) =>
        (Table, Alignment, Effort, Weights, Residuals, Posterior, Skew, GoalLogDuration, CardLogDuration) = (
            table, alignment, effort, weights, residuals, posterior, skew, goalLogDuration, cardLogDuration);

    /// <summary>The pieces.</summary>
    public PieceTable Table { get; }

    /// <summary>The scale of aligned lengths.</summary>
    public Alignment Alignment { get; }

    /// <summary>How effort was told and shown; null where no piece counts.</summary>
    public EffortModel? Effort { get; }

    /// <summary>How far the heavy tails let each piece count, about 1 for an ordinary one.</summary>
    public double[] Weights { get; }

    /// <summary>Posterior mean of each piece's residual, percent.</summary>
    public double[] Residuals { get; }

    /// <summary>The posterior.</summary>
    public Posterior Posterior { get; }

    /// <summary>What is known of the curve's lopsidedness in the hull asked for.</summary>
    public SkewGivenCurve Skew { get; }

    /// <summary>Logarithm of the goal's duration over the reference duration.</summary>
    public double GoalLogDuration { get; }

    /// <summary>The same for the next card's pieces.</summary>
    public double CardLogDuration { get; }

    /// <summary>Fits the question.</summary>
    public static Fit Of(AnalysisInput question)
    {
        StartLength start = StartLength.Of(question.Paddler);
        Alignment alignment = new(start.Length, WithAsked(question));
        PieceTable table = PieceTable.Of(question, alignment);
        // Pieces with a long blade tell the start length's prior less, and a blade never paddled is told less by the pieces.
        double toStart = question.Settings.BladeSpreadPerInch * ExposedShaftRule.OffsetInches(table.MeanBlade);
        double spread = question.Squad?.SdInches ?? question.Settings.StartSpreadInches ?? start.SpreadInches;
        return Of(question, table, alignment, Math.Sqrt(spread * spread + toStart * toStart));
    }

    /// <summary>The same fit for another paddle: only its blade is further from, or nearer to, those paddled.</summary>
    public Fit For(Paddle paddle, TuningSettings settings) =>
        new(Table, Alignment, Effort, Weights, Residuals, Posterior.Carrying(CarriedVariance(settings, Table, paddle)), Skew,
            GoalLogDuration, CardLogDuration);

    private static double CarriedVariance(TuningSettings settings, PieceTable table, Paddle paddle)
    {
        double inches = settings.BladeSpreadPerInch * paddle.Blade.InchesMoreThan(table.MeanBlade);
        return inches * inches;
    }

    private static Fit Of(AnalysisInput question, PieceTable table, Alignment alignment, double spread)
    {
        TuningSettings settings = question.Settings;
        double cardLogDuration = Durations.OfCard(question, table), goalLogDuration = Durations.OfGoal(question, table) ?? cardLogDuration;
        double carried = CarriedVariance(settings, table, question.Paddle);
        BestLengthPrior prior = BestLengthPrior.Of(question, table, alignment, spread);
        if (table.Count == 0)
        {
            CurveAxes axes = CurveAxes.Place(table, prior, settings, null, 0, 1);
            PosteriorSum before = new(table, axes, prior.Components, [Math.Log(settings.OutingMedian)], [Math.Log(settings.PieceMedian)],
                goalLogDuration, cardLogDuration, 0);
            before.Add(0, 0, 0, new(table, prior, settings, axes, null, 0, 1, moments: true), 0);
            return new(table, alignment, null, [], [], before.Posterior(carried), SkewGivenCurve.Before(settings), goalLogDuration,
                cardLogDuration);
        }

        EffortModel effort = EffortModel.Of(table, settings);
        Search[] ways = WaysToSee(effort, prior);
        PosteriorSum sum = Search.Integrate(ways, goalLogDuration, cardLogDuration);
        Search found = ways[ways.Length / 2];
        return new(found.Table, alignment, effort, found.Weights, found.Tails.Residuals, sum.Posterior(carried), found.Skew,
            goalLogDuration, cardLogDuration);
    }

    /// <summary>
    /// The one way, or the three with heart rate: the middle one first, the others from there, and all once more by what they found.
    /// </summary>
    private static Search[] WaysToSee(EffortModel effort, BestLengthPrior prior)
    {
        Search middle = Search.Of(effort.Variants[effort.Variants.Count / 2], prior);
        if (effort.HeartRate is null)
            return [middle];
        Search[] first = [.. effort.Variants.Select((variant, at) => at == effort.Variants.Count / 2 ? middle : middle.With(variant))];
        // Heart rates that the place in the outing explains to the last digit leave no column of their own, and nothing to do again.
        if (!Array.TrueForAll(first, static way => way.Has(EffortModel.HeartRateColumn)))
            return first;
        return [.. effort.Again([.. first.Select(way => way.MeanSquare(EffortModel.HeartRateColumn))])
            .Select((variant, at) => first[at].With(variant))];
    }

    private static Dictionary<Guid, Hull>.ValueCollection WithAsked(AnalysisInput question)
    {
        Dictionary<Guid, Hull> hulls = [];
        foreach (Hull hull in question.Hulls)
            hulls[hull.Id] = hull;
        hulls[question.Hull.Id] = question.Hull;
        return hulls.Values;
    }
}
