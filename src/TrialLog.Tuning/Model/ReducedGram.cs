using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// For one spread of the pieces: what the log comes to before anything is said of the spread between outings, so that every such spread
/// needs one pass over the outings and none over the pieces.
/// </summary>
internal sealed class PieceSums
{
    /// <param name="table">The pieces.</param>
    /// <param name="settings">The priors.</param>
    /// <param name="pieceSpread">σ, percent.</param>
    /// <param name="weights">Heavy-tail weight of each piece.</param>
    public PieceSums(PieceTable table, TuningSettings settings, double pieceSpread, double[] weights)
    {
        Table = table;
        AlongCourseVariance = settings.AlongCourseSpread * settings.AlongCourseSpread;
        int width = table.Width, outings = table.OutingHull.Length;
        OfHull = new double[table.HullsWithPieces][];
        for (int h = 0; h < OfHull.Length; h++)
            OfHull[h] = new double[width * width];
        Level = new double[outings * width];
        bool oneWay = Array.Exists(table.Direction, static direction => direction != 0);
        Along = oneWay ? new double[outings * width] : [];
        AlongSquares = oneWay ? new double[outings] : [];
        LogProduct determinant = new();
        for (int j = 0; j < outings; j++)
            Add(j, pieceSpread * pieceSpread, weights, ref determinant);
        LogDeterminant = determinant.Log;
    }

    /// <summary>The pieces.</summary>
    public PieceTable Table { get; }

    /// <summary>Prior variance of what wind along the course does to an outing, percent squared.</summary>
    public double AlongCourseVariance { get; }

    /// <summary>Precision-weighted products of a row's columns, row-major, summed over each hull; above the diagonal and on it.</summary>
    public double[][] OfHull { get; }

    /// <summary>Precision-weighted sum of each column by outing, which is what the outing's level sees.</summary>
    public double[] Level { get; }

    /// <summary>The same with the sign of the direction; empty where every piece cancels the wind.</summary>
    public double[] Along { get; }

    /// <summary>Precision of the one-way pieces by outing; empty where there are none.</summary>
    public double[] AlongSquares { get; }

    /// <summary>Log determinant of the pieces' own variances.</summary>
    public double LogDeterminant { get; }

    private void Add(int outing, double pieceVariance, double[] weights, ref LogProduct determinant)
    {
        int width = Table.Width;
        double[] rows = Table.Rows, known = Table.KnownVariance, sums = OfHull[Table.OutingHull[outing]];
        Span<double> level = Level.AsSpan(outing * width, width);
        for (int i = Table.OutingStart[outing]; i < Table.OutingStart[outing + 1]; i++)
        {
            double variance = (pieceVariance + known[i]) / weights[i], precision = 1 / variance, direction = Table.Direction[i];
            determinant.Times(variance);
            ReadOnlySpan<double> row = rows.AsSpan(i * width, width);
            for (int a = 0; a < row.Length; a++)
            {
                double scaled = precision * row[a];
                level[a] += scaled;
                Rows.AddScaled(row[a..], scaled, sums.AsSpan(a * width + a, width - a));
            }

            if (direction == 0)
                continue;
            AlongSquares[outing] += precision * direction * direction;
            Rows.AddScaled(row, precision * direction, Along.AsSpan(outing * width, width));
        }
    }
}

/// <summary>The logarithm of a long product of positive numbers, with few logarithms taken.</summary>
internal struct LogProduct
{
    private const double Least = 1e-150, Most = 1e150;
    private double _sum, _product;

    /// <summary>The empty product.</summary>
    public LogProduct() => _product = 1;

    /// <summary>The logarithm.</summary>
    public readonly double Log => _sum + Math.Log(_product);

    /// <summary>Takes one more factor in, between 1e-150 and 1e150.</summary>
    public void Times(double factor)
    {
        _product *= factor;
        if (_product is > Least and < Most)
            return;
        _sum += Math.Log(_product);
        _product = 1;
    }
}

/// <summary>
/// For one pair of spreads (outings, pieces): the Gram matrix of log speed and of the fixed vectors that the response curve
/// expands into, with hull levels, covariates, outing effects and wind along the course integrated out. From it every
/// (c, κ, θ) costs a few multiplications. Outing effects go by Woodbury's identity, so the cost is linear in outings.
/// </summary>
internal sealed class ReducedGram
{
    private readonly PieceTable _table;

    /// <param name="sums">The log at the pieces' spread.</param>
    /// <param name="outingSpread">τ, percent.</param>
    public ReducedGram(PieceSums sums, double outingSpread)
    {
        PieceTable table = _table = sums.Table;
        FixedCount = table.HullsWithPieces + table.Covariates.Count;
        Size = 2 + PieceTable.HullColumns * table.HullsWithPieces;
        FixedBlock = new double[FixedCount * FixedCount];
        Cross = new double[FixedCount * Size];
        Matrix = new double[Size * Size];
        double[] left = new double[table.Width * table.Width];
        int[] globalOf = new int[table.Width];
        LogProduct determinant = new();
        for (int h = 0; h < table.HullsWithPieces; h++)
        {
            sums.OfHull[h].CopyTo(left, 0);
            TakeOutings(h, sums, outingSpread * outingSpread, left, ref determinant);
            Map(h, globalOf);
            Place(left, globalOf);
        }

        LogDensity = -0.5 * (sums.LogDeterminant + determinant.Log + Reduce());
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

    /// <summary>Takes the levels of a hull's outings, and the wind along their courses, out of its products.</summary>
    private void TakeOutings(int hull, PieceSums sums, double outingVariance, double[] left, ref LogProduct determinant)
    {
        int width = _table.Width;
        double along = sums.AlongCourseVariance;
        Span<double> tilted = stackalloc double[width];
        for (int j = 0; j < _table.OutingHull.Length; j++)
        {
            if (_table.OutingHull[j] != hull)
                continue;
            ReadOnlySpan<double> level = sums.Level.AsSpan(j * width, width);
            double levelPrecision = 1 / outingVariance + level[0];
            determinant.Times(outingVariance * levelPrecision);
            Take(level, 1 / levelPrecision, left);
            if (sums.AlongSquares.Length == 0 || sums.AlongSquares[j] == 0)
                continue;
            ReadOnlySpan<double> course = sums.Along.AsSpan(j * width, width);
            double tilt = course[0] / levelPrecision, precision = 1 / along + sums.AlongSquares[j] - tilt * course[0];
            determinant.Times(along * precision);
            for (int a = 0; a < width; a++)
                tilted[a] = course[a] - tilt * level[a];
            Take(tilted, 1 / precision, left);
        }
    }

    private static void Take(ReadOnlySpan<double> column, double scale, double[] left)
    {
        for (int a = 0; a < column.Length; a++)
            Rows.AddScaled(column[a..], -(scale * column[a]), left.AsSpan(a * column.Length + a, column.Length - a));
    }

    private void Place(double[] left, int[] globalOf)
    {
        int width = _table.Width, fixedColumns = 1 + _table.Covariates.Count;
        for (int a = 0; a < width; a++)
        {
            int rowOf = globalOf[a];
            for (int b = a; b < width; b++)
            {
                double value = left[a * width + b];
                int columnOf = globalOf[b];
                if (b < fixedColumns)
                    FixedBlock[columnOf * FixedCount + rowOf] += value;
                else if (a < fixedColumns)
                    Cross[rowOf * Size + columnOf] += value;
                else
                    Matrix[rowOf * Size + columnOf] += value;
            }
        }
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
