namespace TrialLog.Tuning.Model;

/// <summary>
/// A curve need not be as steep on the long side as on the short side. Its lopsidedness enters as a cubic term around the top,
/// with a coefficient in proportion to the curvature; the top comes from the posterior, by turns.
/// </summary>
internal sealed class Skew
{
    private readonly PieceTable _table;
    private readonly double _share;
    private readonly double[] _tops;

    public Skew(PieceTable table, TuningSettings settings)
    {
        _table = table;
        _share = settings.SkewSpread;
        _tops = new double[table.HullsWithPieces];
        if (table.Covariates.HasSkew)
            table.SetSkew(_tops, _share * settings.CurvatureMedian);
    }

    /// <summary>Moves the tops to where the posterior has them; returns the farthest move, inches.</summary>
    public double Update(CurveNodes nodes)
    {
        if (!_table.Covariates.HasSkew)
            return 0;
        double moved = 0, curvature = 0;
        for (int h = 0; h < _tops.Length; h++)
        {
            (double[] mean, _) = CurveMoments.Of(nodes, _table, h);
            double top = -mean[2] / (2 * mean[1]);
            moved = Math.Max(moved, Math.Abs(top - _tops[h]));
            _tops[h] = top;
            curvature = mean[1] / _table.Share[h];
        }

        _table.SetSkew(_tops, _share * curvature);
        return moved;
    }

    /// <summary>What is known of the cubic coefficient, given the curve, from a Gram matrix computed at the mode; for planning.</summary>
    public SkewGivenCurve Given(ReducedGram gram)
    {
        int hull = _table.AskedHull;
        if (!_table.Covariates.HasSkew || hull >= _table.HullsWithPieces)
            return default;
        int n = gram.FixedCount, at = n - 1, size = gram.Size;
        // The last row of the triangular system needs no other.
        double pivot = gram.FixedBlock[at * n + at];
        return new(
            _tops[hull],
            gram.Cross[at * size] / pivot,
            gram.Cross[at * size + 5 * hull + 1] / pivot * _table.Share[hull],
            -2 * gram.Cross[at * size + 5 * hull + 2] / pivot * _table.Share[hull],
            1 / (pivot * pivot));
    }
}

/// <summary>The cubic coefficient given curvature and best length: normal, with a mean that is linear in c and c θ.</summary>
/// <param name="Top">Around which length the cubic stands.</param>
/// <param name="Constant">Constant part of the mean.</param>
/// <param name="PerCurvature">Times c.</param>
/// <param name="PerProduct">Times c θ.</param>
/// <param name="Variance">Variance.</param>
internal readonly record struct SkewGivenCurve(double Top, double Constant, double PerCurvature, double PerProduct, double Variance);
