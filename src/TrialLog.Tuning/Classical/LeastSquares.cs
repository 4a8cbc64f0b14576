using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Classical;

/// <summary>
/// Ordinary least squares, y = X·b + e. Source: Golub and Van Loan, Matrix Computations, section 5.3 (full-rank
/// least squares by Householder QR).
/// </summary>
/// <param name="Coefficients">The estimates, in the order of the columns.</param>
/// <param name="InverseCrossProduct">(XᵀX)⁻¹; times the residual variance it is the covariance of the estimates.</param>
/// <param name="LogDeterminant">ln |XᵀX|.</param>
/// <param name="ResidualSumOfSquares">Sum of squared residuals.</param>
/// <param name="DegreesOfFreedom">Rows less columns.</param>
internal sealed record LeastSquares(
    Vector<double> Coefficients, Matrix<double> InverseCrossProduct, double LogDeterminant,
    double ResidualSumOfSquares, int DegreesOfFreedom)
{
    /// <summary>Residual variance, residual sum of squares over degrees of freedom.</summary>
    public double ResidualVariance => ResidualSumOfSquares / DegreesOfFreedom;

    /// <summary>Standard error of the coefficient of that column.</summary>
    public double StandardError(int column) => Math.Sqrt(ResidualVariance * InverseCrossProduct[column, column]);

    /// <summary>Fits by QR; the columns must be linearly independent, and fewer than the rows.</summary>
    /// <exception cref="ArgumentException">As many columns as rows, or more.</exception>
    public static LeastSquares Fit(Matrix<double> design, Vector<double> response)
    {
        if (design.RowCount <= design.ColumnCount)
            throw new ArgumentException("Least squares needs more rows than columns.", nameof(design));
        QR<double> factors = design.QR(QRMethod.Thin);
        Vector<double> coefficients = factors.R.Solve(factors.Q.TransposeThisAndMultiply(response));
        // One step of refinement: the rounding of the factors, not that of the data, is what it takes back.
        Vector<double> residual = response - design * coefficients;
        coefficients += factors.R.Solve(factors.Q.TransposeThisAndMultiply(residual));
        residual = response - design * coefficients;

        Matrix<double> inverse = factors.R.Inverse();
        return new(
            coefficients, inverse.TransposeAndMultiply(inverse),
            2 * factors.R.Diagonal().Sum(entry => Math.Log(Math.Abs(entry))),
            residual.DotProduct(residual), design.RowCount - design.ColumnCount);
    }
}
