namespace TrialLog.Tuning.Model;

/// <summary>Cholesky factor of a small positive definite matrix, in place.</summary>
internal static class Cholesky
{
    /// <summary>
    /// Replaces the lower triangle of the row-major <paramref name="matrix"/> by its factor; returns the log determinant of the
    /// matrix. A pivot lost to rounding is kept above zero, as for a column that others explain all but exactly.
    /// </summary>
    public static double Factor(Span<double> matrix, int size)
    {
        if (size == 2)
            return FactorTwo(matrix);
        double logDeterminant = 0;
        for (int row = 0; row < size; row++)
        {
            for (int column = 0; column < row; column++)
            {
                double sum = matrix[row * size + column];
                for (int k = 0; k < column; k++)
                    sum -= matrix[row * size + k] * matrix[column * size + k];
                matrix[row * size + column] = sum / matrix[column * size + column];
            }

            double diagonal = matrix[row * size + row], pivot = diagonal;
            for (int k = 0; k < row; k++)
                pivot -= matrix[row * size + k] * matrix[row * size + k];
            pivot = Held(pivot, diagonal);
            matrix[row * size + row] = Math.Sqrt(pivot);
            logDeterminant += Math.Log(pivot);
        }

        return logDeterminant;
    }

    /// <summary>Two by two, of which a fit has a hundred thousand.</summary>
    private static double FactorTwo(Span<double> matrix)
    {
        double first = Held(matrix[0], matrix[0]), root = Math.Sqrt(first), below = matrix[2] / root;
        double second = Held(matrix[3] - below * below, matrix[3]);
        (matrix[0], matrix[2], matrix[3]) = (root, below, Math.Sqrt(second));
        return Math.Log(first * second);
    }

    private static double Held(double pivot, double diagonal) => Math.Max(pivot, 1e-13 * Math.Abs(diagonal) + 1e-300);

    /// <summary>Solves L x = b in place, L being the factor.</summary>
    public static void Forward(ReadOnlySpan<double> factor, int size, Span<double> vector)
    {
        for (int row = 0; row < size; row++)
        {
            double sum = vector[row];
            for (int k = 0; k < row; k++)
                sum -= factor[row * size + k] * vector[k];
            vector[row] = sum / factor[row * size + row];
        }
    }

    /// <summary>Solves Lᵀ x = b in place, L being the factor.</summary>
    public static void Backward(ReadOnlySpan<double> factor, int size, Span<double> vector)
    {
        for (int row = size - 1; row >= 0; row--)
        {
            double sum = vector[row];
            for (int k = row + 1; k < size; k++)
                sum -= factor[k * size + row] * vector[k];
            vector[row] = sum / factor[row * size + row];
        }
    }
}
