using System.Runtime.CompilerServices;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// Adds up the nodes over the grid of spreads. Nodes that share the prior component, the curvature and the pieces' spread are
/// merged into one normal with their mean and variance; the pieces' spread is kept apart since it makes the tails.
/// </summary>
internal sealed class PosteriorSum
{
    private const int Moments = 6;
    private readonly PieceTable _table;
    private readonly CurveAxes _axes;
    private readonly double[] _outings, _pieces, _sums, _outingWeights, _pieceWeights, _curvatureWeights, _durationWeights;
    private readonly double _goal, _card, _offset;
    private readonly int _priorComponents;

    public PosteriorSum(PieceTable table, CurveAxes axes, BestLengthPrior prior, double[] outings, double[] pieces, double goal, double card, double offset)
    {
        _table = table;
        _axes = axes;
        _outings = outings;
        _pieces = pieces;
        _goal = goal;
        _card = card;
        _offset = offset;
        _priorComponents = prior.Components;
        _sums = new double[prior.Components * pieces.Length * axes.LogCurvatures.Length * Moments];
        _outingWeights = new double[outings.Length];
        _pieceWeights = new double[pieces.Length];
        _curvatureWeights = new double[axes.LogCurvatures.Length];
        _durationWeights = new double[axes.DurationEffects.Length];
    }

    /// <summary>Adds the nodes of that pair of spreads, each log weight raised by <paramref name="raise"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(int outing, int piece, CurveNodes nodes, double raise)
    {
        int unknowns = nodes.Unknowns, asked = _table.AskedHull, curvatures = nodes.LogCurvatures.Length;
        for (int component = 0; component < _priorComponents; component++)
            for (int duration = 0; duration < nodes.DurationEffects.Length; duration++)
                for (int c = 0; c < curvatures; c++)
                {
                    int node = nodes.Node(component, duration, c);
                    double logWeight = nodes.LogWeights[node] + raise - _offset;
                    if (logWeight < -25)
                        continue;
                    double weight = Math.Exp(logWeight), kappa = nodes.DurationEffects[duration];
                    double mean = nodes.Means[node * unknowns + asked], variance = nodes.Variances[node * unknowns + asked];
                    double goal = mean + kappa * _goal, card = mean + kappa * _card;
                    int at = ((component * _pieces.Length + piece) * curvatures + c) * Moments;
                    _sums[at] += weight;
                    _sums[at + 1] += weight * goal;
                    _sums[at + 2] += weight * (goal * goal + variance);
                    _sums[at + 3] += weight * card;
                    _sums[at + 4] += weight * (card * card + variance);
                    _sums[at + 5] += weight * (goal * card + variance);
                    _outingWeights[outing] += weight;
                    _pieceWeights[piece] += weight;
                    _curvatureWeights[c] += weight;
                    _durationWeights[duration] += weight;
                }
    }

    /// <summary>The posterior.</summary>
    public Posterior Posterior()
    {
        double total = 0;
        for (int at = 0; at < _sums.Length; at += Moments)
            total += _sums[at];
        List<PosteriorComponent> components = [];
        int curvatures = _axes.LogCurvatures.Length;
        for (int at = 0; at < _sums.Length; at += Moments)
        {
            double weight = _sums[at];
            if (!(weight > 1e-9 * total))
                continue;
            double goal = _sums[at + 1] / weight, card = _sums[at + 3] / weight;
            components.Add(new(
                weight / total,
                Math.Exp(_axes.LogCurvatures[at / Moments % curvatures]),
                goal,
                Math.Max(1e-8, _sums[at + 2] / weight - goal * goal),
                card,
                Math.Max(1e-8, _sums[at + 4] / weight - card * card),
                _sums[at + 5] / weight - goal * card));
        }

        return new([.. components], Normalised(_axes.LogCurvatures, _curvatureWeights), Normalised(_axes.DurationEffects, _durationWeights),
            Normalised(_outings, _outingWeights), Normalised(_pieces, _pieceWeights), _table.Share[_table.AskedHull]);
    }

    private static Marginal Normalised(double[] values, double[] weights)
    {
        double total = 0;
        foreach (double weight in weights)
            total += weight;
        double[] probabilities = new double[weights.Length];
        for (int k = 0; k < weights.Length; k++)
            probabilities[k] = weights[k] / total;
        return new(values, probabilities);
    }
}
