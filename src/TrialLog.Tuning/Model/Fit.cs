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
        return Of(question, table, alignment, question.Settings.StartSpreadInches ?? start.SpreadInches);
    }

    private static Fit Of(AnalysisInput question, PieceTable table, Alignment alignment, double spread)
    {
        TuningSettings settings = question.Settings;
        double cardLogDuration = Durations.OfCard(question, table), goalLogDuration = Durations.OfGoal(question, table) ?? cardLogDuration;
        BestLengthPrior prior = BestLengthPrior.Of(question, table, alignment, spread);
        if (table.Count == 0)
        {
            CurveAxes axes = CurveAxes.Place(table, prior, settings, null, 0, 1);
            PosteriorSum before = new(table, axes, prior, [Math.Log(settings.OutingMedian)], [Math.Log(settings.PieceMedian)], goalLogDuration, cardLogDuration, 0);
            before.Add(0, 0, new(table, prior, settings, axes, null, 0, 1), 0);
            return new(table, alignment, [], [], before.Posterior(), SkewGivenCurve.Before(settings), goalLogDuration, cardLogDuration);
        }

        Search found = Search.Of(table, prior, settings);
        PosteriorSum sum = found.Integrate(goalLogDuration, cardLogDuration);
        return new(found.Table, alignment, found.Weights, found.Tails.Residuals, sum.Posterior(), found.Skew, goalLogDuration, cardLogDuration);
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
