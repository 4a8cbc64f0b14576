using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// A curve need not be as steep on the long side as on the short side: the loss is s c ((x − θ)² + g (x − top) |x − top|), so that
/// the long side is (1 + g)/(1 − g) times as steep. The top that the second part stands around comes from the posterior, by turns.
/// </summary>
internal sealed class Skew
{
    private readonly PieceTable _table;
    private readonly double[] _tops;

    public Skew(PieceTable table)
    {
        _table = table;
        _tops = new double[table.HullsWithPieces];
        table.SetTops(_tops);
    }

    /// <summary>Moves the tops to where the posterior has them; returns the farthest move, inches.</summary>
    public double Update(CurveNodes nodes)
    {
        double moved = 0;
        for (int h = 0; h < _tops.Length; h++)
        {
            (double[] mean, _) = CurveMoments.Of(nodes, _table, h);
            double top = -mean[2] / (2 * mean[1]);
            moved = Math.Max(moved, Math.Abs(top - _tops[h]));
            _tops[h] = top;
        }

        _table.SetTops(_tops);
        return moved;
    }

    /// <summary>What is known of g given the curve, from a Gram matrix computed at the mode; for planning.</summary>
    public SkewGivenCurve Given(ReducedGram gram, TuningSettings settings, double credit)
    {
        int hull = _table.AskedHull;
        if (hull >= _table.HullsWithPieces)
            return SkewGivenCurve.Before(settings);
        int size = gram.Size, last = size - 1, at = PieceTable.HullColumns * hull;
        double share = _table.Share[hull];
        double[] matrix = gram.Matrix;
        return SkewGivenCurve.Before(settings) with
        {
            Top = _tops[hull],
            Response = credit * matrix[last],
            Plain = credit * share * matrix[(at + 1) * size + last],
            Slope = -2 * credit * share * matrix[(at + 2) * size + last],
            Square = credit * matrix[last * size + last],
        };
    }
}
