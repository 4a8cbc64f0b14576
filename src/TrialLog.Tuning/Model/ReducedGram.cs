using System.Runtime.CompilerServices;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// For one pair of spreads (outings, pieces): the Gram matrix of log speed and of the fixed vectors that the response curve
/// expands into, with hull levels, covariates, outing effects and wind along the course integrated out. From it every
/// (c, κ, θ) costs a few multiplications. Outing effects go by Woodbury's identity, so the cost is linear in outings.
/// </summary>
internal sealed class ReducedGram
{
    private readonly PieceTable _table;
    private readonly double _alongCourseVariance;
    private readonly double[] _local, _along;
    private readonly int _fixedCount, _responseCount;
    private readonly int[] _globalOf;

    public ReducedGram(PieceTable table, TuningSettings settings)
    {
        _table = table;
        _alongCourseVariance = settings.AlongCourseSpread * settings.AlongCourseSpread;
        _fixedCount = table.HullsWithPieces + table.Covariates.Count;
        _responseCount = 2 + PieceTable.HullColumns * table.HullsWithPieces;
        _local = new double[table.Width * table.Width];
        _along = new double[table.Width];
        _globalOf = new int[table.Width];
        FixedBlock = new double[_fixedCount * _fixedCount];
        Cross = new double[_fixedCount * _responseCount];
        Matrix = new double[_responseCount * _responseCount];
    }

    /// <summary>Row and column count of <see cref="Matrix"/>: log speed, then five vectors a hull, then the lopsided part.</summary>
    public int Size => _responseCount;

    /// <summary>The Gram matrix after the last <see cref="Compute"/>, whole and symmetric.</summary>
    public double[] Matrix { get; }

    /// <summary>Cholesky factor (lower) of the precision of hull levels and covariates.</summary>
    public double[] FixedBlock { get; }

    /// <summary>That factor's inverse times the cross products with the response vectors.</summary>
    public double[] Cross { get; }

    /// <summary>Hull levels and covariates.</summary>
    public int FixedCount => _fixedCount;

    /// <summary>Computes the matrix and returns the log density's part that is free of (c, κ, θ), up to a constant.</summary>
    /// <param name="outingSpread">τ, percent.</param>
    /// <param name="pieceSpread">σ, percent.</param>
    /// <param name="weights">Heavy-tail weight of each piece.</param>
    public double Compute(double outingSpread, double pieceSpread, double[] weights)
    {
        Array.Clear(FixedBlock);
        Array.Clear(Cross);
        Array.Clear(Matrix);
        double logDeterminant = 0;
        for (int j = 0; j < _table.OutingHull.Length; j++)
            logDeterminant += AddOuting(j, outingSpread * outingSpread, pieceSpread * pieceSpread, weights);
        return -0.5 * (logDeterminant + Reduce());
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double AddOuting(int outing, double outingVariance, double pieceVariance, double[] weights)
    {
        int width = _table.Width, from = _table.OutingStart[outing], to = _table.OutingStart[outing + 1];
        double[] local = _local, along = _along, rows = _table.Rows, direction = _table.Direction;
        Array.Clear(local);
        Array.Clear(along);
        double logDeterminant = 0, alongSquares = 0;
        bool oneWay = false;
        for (int i = from; i < to; i++)
        {
            double variance = (pieceVariance + _table.KnownVariance[i]) / weights[i], precision = 1 / variance;
            logDeterminant += Math.Log(variance);
            int row = i * width;
            for (int a = 0; a < width; a++)
            {
                double scaled = precision * rows[row + a];
                int at = a * width;
                for (int b = a; b < width; b++)
                    local[at + b] += scaled * rows[row + b];
            }

            if (direction[i] != 0)
            {
                oneWay = true;
                double scaled = precision * direction[i];
                alongSquares += scaled * direction[i];
                for (int a = 0; a < width; a++)
                    along[a] += scaled * rows[row + a];
            }
        }

        // The first row of the local matrix is the precision-weighted sum of each column, which is what the outing's level sees.
        double levelPrecision = 1 / outingVariance + local[0];
        logDeterminant += Math.Log(outingVariance * levelPrecision);
        double alongPrecision = 0, tilt = 0;
        if (oneWay)
        {
            tilt = along[0] / levelPrecision;
            alongPrecision = 1 / _alongCourseVariance + alongSquares - tilt * along[0];
            logDeterminant += Math.Log(_alongCourseVariance * alongPrecision);
        }

        Map(_table.OutingHull[outing]);
        int fixedColumns = 1 + _table.Covariates.Count;
        for (int a = 0; a < width; a++)
        {
            double level = local[a] / levelPrecision, slope = oneWay ? (along[a] - tilt * local[a]) / alongPrecision : 0;
            int rowOf = _globalOf[a];
            for (int b = a; b < width; b++)
            {
                double value = local[a * width + b] - level * local[b];
                if (oneWay)
                    value -= slope * (along[b] - tilt * local[b]);
                int columnOf = _globalOf[b];
                if (b < fixedColumns)
                    FixedBlock[columnOf * _fixedCount + rowOf] += value;
                else if (a < fixedColumns)
                    Cross[rowOf * _responseCount + columnOf] += value;
                else
                    Matrix[rowOf * _responseCount + columnOf] += value;
            }
        }

        return logDeterminant;
    }

    private void Map(int hull)
    {
        int covariates = _table.Covariates.Count, response = 1 + covariates;
        _globalOf[0] = hull;
        for (int k = 0; k < covariates; k++)
            _globalOf[1 + k] = _table.HullsWithPieces + k;
        _globalOf[response] = 0;
        for (int k = 1; k <= PieceTable.HullColumns; k++)
            _globalOf[response + k] = PieceTable.HullColumns * hull + k;
        _globalOf[response + PieceTable.HullColumns + 1] = _responseCount - 1;
    }

    /// <summary>Takes hull levels (flat prior) and covariates out; returns the log determinant of their precision.</summary>
    private double Reduce()
    {
        int n = _fixedCount, m = _responseCount;
        for (int k = 0; k < _table.Covariates.Count; k++)
        {
            int at = _table.HullsWithPieces + k;
            double spread = _table.Covariates.PriorSpread[k];
            FixedBlock[at * n + at] += 1 / (spread * spread);
        }

        double logDeterminant = Cholesky.Factor(FixedBlock, n);
        for (int column = 0; column < m; column++)
            for (int row = 0; row < n; row++)
            {
                double sum = Cross[row * m + column];
                for (int k = 0; k < row; k++)
                    sum -= FixedBlock[row * n + k] * Cross[k * m + column];
                Cross[row * m + column] = sum / FixedBlock[row * n + row];
            }

        for (int a = 0; a < m; a++)
            for (int b = a; b < m; b++)
            {
                double sum = Matrix[a * m + b];
                for (int k = 0; k < n; k++)
                    sum -= Cross[k * m + a] * Cross[k * m + b];
                Matrix[a * m + b] = sum;
                Matrix[b * m + a] = sum;
            }

        return logDeterminant;
    }
}
