using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>Fits the model to a question's pieces.</summary>
internal sealed class Fit
{
    private Fit(PieceTable table, Alignment alignment, double[] weights, double[] residuals, Posterior posterior, SkewGivenCurve skew, double goalLogDuration, double cardLogDuration) =>
        (Table, Alignment, Weights, Residuals, Posterior, Skew, GoalLogDuration, CardLogDuration) = (table, alignment, weights, residuals, posterior, skew, goalLogDuration, cardLogDuration);

    /// <summary>The pieces.</summary>
    public PieceTable Table { get; }

    /// <summary>The scale of aligned lengths.</summary>
    public Alignment Alignment { get; }

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
        double spread = question.Settings.StartSpreadInches ?? start.SpreadInches;
        return Of(question, table, alignment, Math.Sqrt(spread * spread + toStart * toStart));
    }

    /// <summary>The same fit for another paddle: only its blade is further from, or nearer to, those paddled.</summary>
    public Fit For(Paddle paddle, TuningSettings settings) =>
        new(Table, Alignment, Weights, Residuals, Posterior.Carrying(CarriedVariance(settings, Table, paddle)), Skew, GoalLogDuration, CardLogDuration);

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
            PosteriorSum before = new(table, axes, prior, [Math.Log(settings.OutingMedian)], [Math.Log(settings.PieceMedian)], goalLogDuration, cardLogDuration, 0);
            before.Add(0, 0, new(table, prior, settings, axes, null, 0, 1), 0);
            return new(table, alignment, [], [], before.Posterior(carried), SkewGivenCurve.Before(settings), goalLogDuration, cardLogDuration);
        }

        Search found = Search.Of(table, prior, settings);
        PosteriorSum sum = found.Integrate(goalLogDuration, cardLogDuration);
        return new(found.Table, alignment, found.Weights, found.Tails.Residuals, sum.Posterior(carried), found.Skew, goalLogDuration, cardLogDuration);
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
