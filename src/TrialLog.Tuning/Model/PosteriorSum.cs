using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// Adds up the nodes over the grid of spreads. Nodes that share the way of seeing the pieces, the prior component, the curvature and the
/// pieces' spread are merged into one normal with their mean and variance; the pieces' spread is kept apart since it makes the tails.
/// </summary>
internal sealed class PosteriorSum
{
    private const int Moments = 10, LeastChecked = 5, MoreCells = 8, MostCells = 24;

    /// <summary>More probability than this in the outermost cell of a grid means that the grid does not hold the posterior.</summary>
    private const double MostAtEdge = 0.01;

    private readonly PieceTable _table;
    private readonly CurveAxes _axes;
    private readonly double[] _outings, _pieces, _sums, _outingWeights, _pieceWeights, _curvatureWeights, _durationWeights;
    private readonly double _goal, _card;

    public PosteriorSum(PieceTable table, CurveAxes axes, int components, double[] outings, double[] pieces, double goal, double card,
        double offset)
    {
        _table = table;
        _axes = axes;
        _outings = outings;
        _pieces = pieces;
        _goal = goal;
        _card = card;
        Offset = offset;
        _sums = new double[components * pieces.Length * axes.LogCurvatures.Length * Moments];
        _outingWeights = new double[outings.Length];
        _pieceWeights = new double[pieces.Length];
        _curvatureWeights = new double[axes.LogCurvatures.Length];
        _durationWeights = new double[axes.DurationEffects.Length];
    }

    /// <summary>What is taken from each log weight, so that the most probable is about 1.</summary>
    public double Offset { get; }

    /// <summary>Adds the nodes of that pair of spreads, as seen in one way.</summary>
    /// <param name="way">Which of the ways to see the pieces, from 0.</param>
    /// <param name="outing">Which of the outings' spreads.</param>
    /// <param name="piece">Which of the pieces' spreads.</param>
    /// <param name="nodes">The nodes.</param>
    /// <param name="raise">Added to each log weight.</param>
    public void Add(int way, int outing, int piece, CurveNodes nodes, double raise)
    {
        int components = nodes.Count / (nodes.DurationEffects.Length * nodes.LogCurvatures.Length);
        int unknowns = nodes.Unknowns, asked = _table.AskedHull, curvatures = nodes.LogCurvatures.Length;
        for (int component = 0; component < components; component++)
            for (int duration = 0; duration < nodes.DurationEffects.Length; duration++)
                for (int c = 0; c < curvatures; c++)
                {
                    int node = nodes.Node(component, duration, c);
                    double logWeight = nodes.LogWeights[node] + raise - Offset;
                    if (logWeight < -25)
                        continue;
                    double weight = Math.Exp(logWeight), kappa = nodes.DurationEffects[duration];
                    int of = node * unknowns;
                    double best = nodes.Means[of + asked], skew = nodes.Means[of + unknowns - 1];
                    int at = (((way * components + component) * _pieces.Length + piece) * curvatures + c) * Moments;
                    _sums[at] += weight;
                    _sums[at + 1] += weight * best;
                    _sums[at + 2] += weight * kappa;
                    _sums[at + 3] += weight * skew;
                    _sums[at + 4] += weight * (best * best + nodes.Variances[of + asked]);
                    _sums[at + 5] += weight * kappa * kappa;
                    _sums[at + 6] += weight * (skew * skew + nodes.Variances[of + unknowns - 1]);
                    _sums[at + 7] += weight * best * kappa;
                    _sums[at + 8] += weight * (best * skew + nodes.WithSkew[of + asked]);
                    _sums[at + 9] += weight * kappa * skew;
                    _outingWeights[outing] += weight;
                    _pieceWeights[piece] += weight;
                    _curvatureWeights[c] += weight;
                    _durationWeights[duration] += weight;
                }
    }

    /// <summary>Whether no axis of the grid has much probability in its outermost cells.</summary>
    public bool IsHeld => Edges(_curvatureWeights) == (false, false) && Edges(_durationWeights) == (false, false)
        && Edges(_outingWeights) == (false, false) && Edges(_pieceWeights) == (false, false);

    /// <summary>The axes, longer at each end that has much probability.</summary>
    public (CurveAxes Axes, double[] Outings, double[] Pieces) Longer(TuningSettings settings) => (
        CurveAxes.At(settings, Longer(_axes.LogCurvatures, _curvatureWeights), Longer(_axes.DurationEffects, _durationWeights)),
        Longer(_outings, _outingWeights), Longer(_pieces, _pieceWeights));

    private static double[] Longer(double[] axis, double[] weights)
    {
        (bool low, bool high) = Edges(weights);
        if (!low && !high)
            return axis;
        int before = low ? MoreCells : 0;
        // A grid that has grown long is made coarser: it had been laid around a spike beside the mass.
        double step = (axis[1] - axis[0]) * (axis.Length > MostCells ? 2 : 1);
        return [.. Enumerable.Range(-before, (int)Math.Round((axis[^1] - axis[0]) / step) + 1 + before + (high ? MoreCells : 0))
            .Select(k => axis[0] + k * step)];
    }

    private static (bool Low, bool High) Edges(double[] weights)
    {
        // A few values are a quantity that no piece tells anything about.
        if (weights.Length < LeastChecked)
            return (false, false);
        double most = MostAtEdge * weights.Sum();
        return (!(weights[0] < most), !(weights[^1] < most));
    }

    /// <summary>The posterior.</summary>
    /// <param name="carried">Variance that the best length gains on its way to the blade asked for, inches squared.</param>
    public Posterior Posterior(double carried)
    {
        double total = 0;
        for (int at = 0; at < _sums.Length; at += Moments)
            total += _sums[at];
        List<CurveCell> cells = [];
        int curvatures = _axes.LogCurvatures.Length;
        for (int at = 0; at < _sums.Length; at += Moments)
        {
            double weight = _sums[at];
            if (!(weight > 1e-9 * total))
                continue;
            double[] sums = _sums;
            cells.Add(
                new CurveCell(weight / total, Math.Exp(_axes.LogCurvatures[at / Moments % curvatures]), sums[at + 1], sums[at + 2],
                sums[at + 3], sums[at + 4], sums[at + 5],
                sums[at + 6], sums[at + 7], sums[at + 8], sums[at + 9]).Over(weight));
        }

        return new([.. cells], Normalised("the curvature", _axes.LogCurvatures, _curvatureWeights),
            Normalised("what the duration does", _axes.DurationEffects, _durationWeights),
            Normalised("the spread between outings", _outings, _outingWeights),
                Normalised("the spread between pieces", _pieces, _pieceWeights),
            _table.Share[_table.AskedHull], _goal, _card, carried);
    }

    private static Marginal Normalised(string what, double[] values, double[] weights)
    {
        double total = 0;
        foreach (double weight in weights)
            total += weight;
        double[] probabilities = new double[weights.Length];
        for (int k = 0; k < weights.Length; k++)
            probabilities[k] = weights[k] / total;
        if (Edges(weights) != (false, false))
            throw new UnweighableLogException(what);
        return new(values, probabilities);
    }
}
