using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>Fits the model to a question's pieces.</summary>
internal sealed class Fit
{
    private const int MostRounds = 25;

    private Fit(PieceTable table, Alignment alignment, HeavyTails tails, Posterior posterior, SkewGivenCurve skew, double goalLogDuration, double cardLogDuration) =>
        (Table, Alignment, Tails, Posterior, Skew, GoalLogDuration, CardLogDuration) = (table, alignment, tails, posterior, skew, goalLogDuration, cardLogDuration);

    /// <summary>The pieces.</summary>
    public PieceTable Table { get; }

    /// <summary>The scale of aligned lengths.</summary>
    public Alignment Alignment { get; }

    /// <summary>Weights and residuals of the pieces.</summary>
    public HeavyTails Tails { get; }

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
        HeavyTails tails = new(table, settings);
        PosteriorSum sum;
        SkewGivenCurve skew = SkewGivenCurve.Before(settings);
        if (table.Count == 0)
        {
            CurveNodes nodes = CurveGrid.Place(table, prior, settings, null, 0, 1);
            sum = new(table, nodes, prior, [Math.Log(settings.OutingMedian)], [Math.Log(settings.PieceMedian)], goalLogDuration, cardLogDuration, 0);
            sum.Add(0, 0, 0);
        }
        else
        {
            (sum, skew) = Integrate(table, prior, settings, tails, goalLogDuration, cardLogDuration);
        }

        return new(table, alignment, tails, sum.Posterior(), skew, goalLogDuration, cardLogDuration);
    }

    private static (PosteriorSum Sum, SkewGivenCurve Skew) Integrate(PieceTable table, BestLengthPrior prior, TuningSettings settings, HeavyTails tails, double goal, double card)
    {
        ReducedGram gram = new(table, settings);
        Skew skew = new(table);
        CurveNodes nodes = null!;
        NoiseMode mode = new((outing, piece) => nodes.Evaluate(gram, Base(outing, piece), 1), settings);
        for (int round = 0; round < MostRounds; round++)
        {
            nodes = CurveGrid.Place(table, prior, settings, gram, Base(mode.LogOuting, mode.LogPiece), tails.Credit);
            double moved = mode.Step();
            nodes.Evaluate(gram, Base(mode.LogOuting, mode.LogPiece), 1);
            double changed = tails.Update(gram, nodes, Math.Exp(mode.LogOuting), Math.Exp(mode.LogPiece));
            double shifted = skew.Update(nodes);
            if (moved < 0.05 && changed < 0.003 && shifted < 0.01)
                break;
        }

        double[] outings = mode.Axis(outing: true), pieces = mode.Axis(outing: false);
        double offset = nodes.Evaluate(gram, Base(mode.LogOuting, mode.LogPiece), 1);
        SkewGivenCurve given = skew.Given(gram, settings, tails.Credit);
        PosteriorSum sum = new(table, nodes, prior, outings, pieces, goal, card, offset);
        for (int a = 0; a < outings.Length; a++)
            for (int b = 0; b < pieces.Length; b++)
            {
                // The spreads are weighed by all the pieces say; the curve, given the spreads, by what they can be credited with.
                double logBase = Base(outings[a], pieces[b]), density = nodes.Evaluate(gram, logBase, 1);
                sum.Add(a, b, density - (tails.Credit < 1 ? nodes.Evaluate(gram, logBase, tails.Credit) : density));
            }

        tails.WeighAt(Math.Exp(mode.LogPiece));
        return (sum, given);

        double Base(double logOuting, double logPiece)
        {
            double outing = (logOuting - Math.Log(settings.OutingMedian)) / settings.OutingLogSpread;
            double piece = (logPiece - Math.Log(settings.PieceMedian)) / settings.PieceLogSpread;
            double added = tails.WeighAt(Math.Exp(logPiece));
            return added + gram.Compute(Math.Exp(logOuting), Math.Exp(logPiece), tails.Weights) - 0.5 * (outing * outing + piece * piece);
        }
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
