using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// Finds where the posterior lies, by turns: the most probable spreads, the heavy tails' weights, the top that the lopsided part
/// stands around, and the range of curvatures. Each turn makes a new state out of the last; nothing is changed in place.
/// </summary>
/// <param name="Table">The pieces, with the lopsided part around the top found.</param>
/// <param name="Prior">What is believed of the best lengths.</param>
/// <param name="Settings">The other priors.</param>
/// <param name="Tails">What the weights follow from.</param>
/// <param name="Mode">The most probable spreads.</param>
/// <param name="Axes">Where curvature and duration effect have their mass.</param>
internal sealed record Search(
    PieceTable Table, BestLengthPrior Prior, TuningSettings Settings, HeavyTails Tails, NoiseMode Mode, CurveAxes Axes)
{
    private const int MostTurns = 25, MostLonger = 8;

    /// <summary>A pair of spreads so much less probable than the most probable one, in logarithms, changes no digit that counts.</summary>
    private const double Negligible = 25;

    private Seen? _seen;

    /// <summary>How far the heavy tails let each piece count, at the most probable spreads.</summary>
    public double[] Weights => Tails.At(Math.Exp(Mode.LogPiece)).Weights;

    /// <summary>What is known of the lopsidedness given the curve, at the most probable spreads.</summary>
    public SkewGivenCurve Skew => SkewGivenCurve.Of(Table, Settings, At(Mode.LogOuting, Mode.LogPiece).Gram, Tails.Credit);

    /// <summary>Searches until nothing moves.</summary>
    public static Search Of(EffortVariant variant, BestLengthPrior prior) =>
        new Search(variant.Table, prior, variant.Settings, HeavyTails.Before(variant.Table, variant.Settings),
            NoiseMode.Before(variant.Settings), CurveAxes.Before(variant.Settings)).Settled();

    /// <summary>From here on, with the same pieces seen in a slightly other way.</summary>
    public Search With(EffortVariant variant) =>
        (this with { Table = variant.Table.WithTops(Table.Tops), Settings = variant.Settings }).Settled();

    private Search Settled()
    {
        Search state = this;
        for (int turn = 0; turn < MostTurns; turn++)
        {
            (state, bool settled) = state.Next();
            if (settled)
                break;
        }

        return state;
    }

    /// <summary>Whether the pieces have that column.</summary>
    public bool Has(string covariate) => Table.Covariates.Names.Contains(covariate);

    /// <summary>Mean of the square of a covariate's coefficient, at the most probable spreads.</summary>
    public double MeanSquare(string covariate)
    {
        int at = Table.HullsWithPieces + Enumerable.Range(0, Table.Covariates.Count).First(k => Table.Covariates.Names[k] == covariate);
        Reduced reduced = At(Mode.LogOuting, Mode.LogPiece);
        return reduced.Gram.MeanSquare(at, Nodes(reduced, 1), Table);
    }

    /// <summary>
    /// Adds up the posteriors of several ways to see the same pieces, each by its evidence, over one grid; where that grid turns out not to
    /// hold them, over a longer one.
    /// </summary>
    /// <param name="ways">The ways, found.</param>
    /// <param name="goal">Logarithm of the goal's duration over the reference duration.</param>
    /// <param name="card">The same for the next card's pieces.</param>
    public static PosteriorSum Integrate(IReadOnlyList<Search> ways, double goal, double card)
    {
        double[] outings = Over(way => way.Mode.Axis(way.LogDensity, outing: true)),
            pieces = Over(way => way.Mode.Axis(way.LogDensity, outing: false));
        CurveAxes axes = CurveAxes.At(ways[0].Settings, Over(way => way.Axes.LogCurvatures), Over(way => way.Axes.DurationEffects));
        double offset = ways.Max(way => way.LogDensity(way.Mode.LogOuting, way.Mode.LogPiece));
        for (int longer = 0; ; longer++)
        {
            PosteriorSum sum = new(ways[0].Table, axes, ways.Count * ways[0].Prior.Components, outings, pieces, goal, card, offset);
            for (int way = 0; way < ways.Count; way++)
                (ways[way] with { Axes = axes }).AddTo(sum, way, outings, pieces);
            if (sum.IsHeld || longer == MostLonger)
                return sum;
            (axes, outings, pieces) = sum.Longer(ways[0].Settings);
        }

        // The axis that covers all ways', as fine as the finest.
        double[] Over(Func<Search, double[]> of)
        {
            List<double[]> all = [.. ways.Select(of)];
            if (all.Count == 1)
                return all[0];
            double low = all.Min(axis => axis[0]), high = all.Max(axis => axis[^1]), step = all.Min(axis => axis[1] - axis[0]);
            return [.. Enumerable.Range(0, (int)Math.Ceiling((high - low) / step - 1e-9) + 1).Select(k => low + k * step)];
        }
    }

    private void AddTo(PosteriorSum sum, int way, double[] outings, double[] pieces)
    {
        for (int a = 0; a < outings.Length; a++)
            for (int b = 0; b < pieces.Length; b++)
            {
                // The spreads are weighed by all the pieces say; the curve, given the spreads, by what they can be credited with.
                Reduced reduced = At(outings[a], pieces[b]);
                CurveNodes whole = Nodes(reduced, 1, moments: Tails.Credit == 1);
                if (whole.LogSum < sum.Offset - Negligible)
                    continue;
                if (Tails.Credit < 1)
                {
                    CurveNodes credited = Nodes(reduced, Tails.Credit);
                    sum.Add(way, a, b, credited, whole.LogSum - credited.LogSum);
                }
                else
                {
                    sum.Add(way, a, b, whole, 0);
                }
            }
    }

    private (Search Next, bool Settled) Next()
    {
        Reduced reduced = At(Mode.LogOuting, Mode.LogPiece);
        Search placed = this with { Axes = CurveAxes.Place(Table, Prior, Settings, reduced.Gram, reduced.LogDensity, Tails.Credit) };
        NoiseMode mode = Mode.Step(placed.LogDensity, Settings);
        Reduced atMode = At(mode.LogOuting, mode.LogPiece);
        CurveNodes nodes = placed.Nodes(atMode, 1);
        (HeavyTails tails, double changed) = Tails.After(
            Table, atMode.Gram, nodes, atMode.Weights, Math.Exp(mode.LogOuting), Math.Exp(mode.LogPiece));
        double[] tops = CurveMoments.Tops(nodes, Table);
        double shifted = 0;
        for (int h = 0; h < tops.Length; h++)
            shifted = Math.Max(shifted, Math.Abs(tops[h] - Table.Tops[h]));
        return (placed with { Mode = mode, Tails = tails, Table = Table.WithTops(tops) }, mode.Moved < 0.05 && changed < 0.003
            && shifted < 0.01);
    }

    private double LogDensity(double logOuting, double logPiece) => Nodes(At(logOuting, logPiece), 1, moments: false).LogSum;

    private CurveNodes Nodes(Reduced reduced, double credit, bool moments = true) =>
        new(Table, Prior, Settings, Axes, reduced.Gram, reduced.LogDensity, credit, moments);

    private Reduced At(double logOuting, double logPiece)
    {
        double outing = (logOuting - Math.Log(Settings.OutingMedian)) / Settings.OutingLogSpread;
        double piece = (logPiece - Math.Log(Settings.PieceMedian)) / Settings.PieceLogSpread;
        if (_seen is null || !_seen.IsOf(Table, Tails, Settings))
            _seen = new(Table, Tails, Settings);
        (PieceWeights weights, PieceSums sums) = _seen.At(logPiece);
        ReducedGram gram = new(sums, Math.Exp(logOuting));
        return new(gram, weights.LogDensity + gram.LogDensity - 0.5 * (outing * outing + piece * piece) - Math.Log(Settings.PieceLogSpread),
            weights.Weights);
    }

    /// <summary>The log at one pair of spreads.</summary>
    private readonly record struct Reduced(ReducedGram Gram, double LogDensity, double[] Weights);

    /// <summary>The log at each spread of pieces that was asked for: most are asked for with many spreads between outings.</summary>
    private sealed class Seen(PieceTable table, HeavyTails tails, TuningSettings settings)
    {
        private readonly Dictionary<double, (PieceWeights, PieceSums)> _at = [];

        public bool IsOf(PieceTable otherTable, HeavyTails otherTails, TuningSettings otherSettings) =>
            ReferenceEquals(table, otherTable) && ReferenceEquals(tails, otherTails) && ReferenceEquals(settings, otherSettings);

        public (PieceWeights Weights, PieceSums Sums) At(double logPiece)
        {
            if (_at.TryGetValue(logPiece, out (PieceWeights, PieceSums) known))
                return known;
            PieceWeights weights = tails.At(Math.Exp(logPiece));
            return _at[logPiece] = (weights, new PieceSums(table, settings, Math.Exp(logPiece), weights.Weights));
        }
    }
}
