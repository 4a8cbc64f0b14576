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

    /// <param name="table">The pieces.</param>
    /// <param name="settings">The priors.</param>
    /// <param name="outingSpread">τ, percent.</param>
    /// <param name="pieceSpread">σ, percent.</param>
    /// <param name="weights">Heavy-tail weight of each piece.</param>
    public ReducedGram(PieceTable table, TuningSettings settings, double outingSpread, double pieceSpread, double[] weights)
    {
        _table = table;
        _alongCourseVariance = settings.AlongCourseSpread * settings.AlongCourseSpread;
        FixedCount = table.HullsWithPieces + table.Covariates.Count;
        Size = 2 + PieceTable.HullColumns * table.HullsWithPieces;
        FixedBlock = new double[FixedCount * FixedCount];
        Cross = new double[FixedCount * Size];
        Matrix = new double[Size * Size];
        Working working = new(new double[table.Width * table.Width], new double[table.Width], new int[table.Width]);
        double logDeterminant = 0;
        for (int j = 0; j < table.OutingHull.Length; j++)
            logDeterminant += AddOuting(j, outingSpread * outingSpread, pieceSpread * pieceSpread, weights, working);
        LogDensity = -0.5 * (logDeterminant + Reduce());
    }

    /// <summary>Row and column count of <see cref="Matrix"/>: log speed, then five vectors a hull, then the lopsided part.</summary>
    public int Size { get; }

    /// <summary>The Gram matrix, whole and symmetric.</summary>
    public double[] Matrix { get; }

    /// <summary>Cholesky factor (lower) of the precision of hull levels and covariates.</summary>
    public double[] FixedBlock { get; }

    /// <summary>That factor's inverse times the cross products with the response vectors.</summary>
    public double[] Cross { get; }

    /// <summary>Hull levels and covariates.</summary>
    public int FixedCount { get; }

    /// <summary>The log density's part that is free of (c, κ, θ, g), up to a constant.</summary>
    public double LogDensity { get; }

    /// <summary>Room for one outing's sums, used again for each.</summary>
    private readonly record struct Working(double[] Local, double[] Along, int[] GlobalOf);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double AddOuting(int outing, double outingVariance, double pieceVariance, double[] weights, Working working)
    {
        int width = _table.Width, from = _table.OutingStart[outing], to = _table.OutingStart[outing + 1];
        double[] local = working.Local, along = working.Along, rows = _table.Rows, direction = _table.Direction;
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

        int[] globalOf = working.GlobalOf;
        Map(_table.OutingHull[outing], globalOf);
        int fixedColumns = 1 + _table.Covariates.Count;
        for (int a = 0; a < width; a++)
        {
            double level = local[a] / levelPrecision, slope = oneWay ? (along[a] - tilt * local[a]) / alongPrecision : 0;
            int rowOf = globalOf[a];
            for (int b = a; b < width; b++)
            {
                double value = local[a * width + b] - level * local[b];
                if (oneWay)
                    value -= slope * (along[b] - tilt * local[b]);
                int columnOf = globalOf[b];
                if (b < fixedColumns)
                    FixedBlock[columnOf * FixedCount + rowOf] += value;
                else if (a < fixedColumns)
                    Cross[rowOf * Size + columnOf] += value;
                else
                    Matrix[rowOf * Size + columnOf] += value;
            }
        }

        return logDeterminant;
    }

    /// <summary>Mean of the square of a fixed effect's coefficient: hull level or covariate.</summary>
    /// <param name="effect">Which; hull levels first.</param>
    /// <param name="nodes">The curve's nodes, evaluated on this matrix.</param>
    /// <param name="table">The pieces.</param>
    public double MeanSquare(int effect, CurveNodes nodes, PieceTable table)
    {
        double[] vector = new double[Size];
        vector[0] = 1;
        for (int h = 0; h < table.HullsWithPieces; h++)
        {
            (double[] mean, _) = CurveMoments.Of(nodes, table, h);
            for (int k = 1; k <= PieceTable.HullColumns; k++)
                vector[PieceTable.HullColumns * h + k] = mean[k];
            vector[^1] = mean[^1];
        }

        double[] fitted = new double[FixedCount], unit = new double[FixedCount];
        for (int a = 0; a < FixedCount; a++)
            for (int k = 0; k < Size; k++)
                fitted[a] += Cross[a * Size + k] * vector[k];
        Cholesky.Backward(FixedBlock, FixedCount, fitted);
        unit[effect] = 1;
        Cholesky.Forward(FixedBlock, FixedCount, unit);
        // The response is less the prior mean, so that is added back.
        double at = fitted[effect] + (effect < table.HullsWithPieces ? 0 : table.Covariates.PriorMean[effect - table.HullsWithPieces]);
        return at * at + unit.Sum(value => value * value);
    }

    private void Map(int hull, int[] globalOf)
    {
        int covariates = _table.Covariates.Count, response = 1 + covariates;
        globalOf[0] = hull;
        for (int k = 0; k < covariates; k++)
            globalOf[1 + k] = _table.HullsWithPieces + k;
        globalOf[response] = 0;
        for (int k = 1; k <= PieceTable.HullColumns; k++)
            globalOf[response + k] = PieceTable.HullColumns * hull + k;
        globalOf[response + PieceTable.HullColumns + 1] = Size - 1;
    }

    /// <summary>
    /// Takes hull levels (flat prior) and covariates out; returns the log determinant of their precision over that of their prior.
    /// </summary>
    private double Reduce()
    {
        int n = FixedCount, m = Size;
        int covariates = _table.Covariates.Count, first = _table.HullsWithPieces;
        for (int a = 0; a < covariates; a++)
            for (int b = 0; b <= a; b++)
                FixedBlock[(first + a) * n + first + b] += _table.Covariates.PriorPrecision[a * covariates + b];

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

        return logDeterminant - _table.Covariates.LogDeterminant;
    }
}
