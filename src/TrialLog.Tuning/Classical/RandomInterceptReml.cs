using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.RootFinding;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Classical;

/// <summary>
/// The random-intercept mixed model y = X·b + u_group + e by restricted maximum likelihood (REML). The criterion is
/// profiled down to the ratio r of the two variances, var(u) / var(e), and minimised over r ≥ 0; at a given r the fit
/// is least squares on partly centred data. Sources: Patterson and Thompson 1971, Biometrika 58(3):545-54;
/// Bates, Mächler, Bolker and Walker 2015, J Stat Softw 67(1), equation 41.
/// </summary>
/// <param name="Coefficients">Fixed effects, in the order of the columns.</param>
/// <param name="Covariance">Their covariance.</param>
/// <param name="GroupSd">Standard deviation of the random intercept; 0 where the criterion is least at the boundary.</param>
/// <param name="ResidualSd">Standard deviation within groups.</param>
/// <param name="Criterion">−2 × restricted log-likelihood at the minimum.</param>
internal sealed record RandomInterceptReml(
    Vector<double> Coefficients, Matrix<double> Covariance, double GroupSd, double ResidualSd, double Criterion)
{
    /// <summary>Ratios that are tried before the search narrows: none, then four a decade.</summary>
    private static readonly double[] Ratios =
        [0, .. Enumerable.Range(0, 61).Select(step => Math.Pow(10, -7 + step / 4.0))];

    /// <summary>Standard error of the coefficient of that column.</summary>
    public double StandardError(int column) => Math.Sqrt(Covariance[column, column]);

    /// <summary>Fits; the columns must be linearly independent and fewer than the rows, with some residual left within groups.</summary>
    /// <param name="design">One row an observation; the first column is usually the constant.</param>
    /// <param name="response">The observations.</param>
    /// <param name="groups">The group of each observation, from 0 without gaps.</param>
    public static RandomInterceptReml Fit(Matrix<double> design, Vector<double> response, IReadOnlyList<int> groups)
    {
        var profile = new Profile(design, response, groups);
        double ratio = profile.LeastRatio();
        (LeastSquares fit, double criterion, _) = profile.At(ratio);
        double variance = fit.ResidualVariance;
        return new(fit.Coefficients, variance * fit.InverseCrossProduct, Math.Sqrt(ratio * variance), Math.Sqrt(variance), criterion);
    }

    /// <summary>The criterion as a function of the variance ratio alone.</summary>
    private sealed class Profile
    {
        private readonly Matrix<double> _design;
        private readonly Vector<double> _response;
        private readonly IReadOnlyList<int> _groups;
        private readonly Matrix<double> _designSums;
        private readonly double[] _responseSums;
        private readonly int[] _sizes;

        public Profile(Matrix<double> design, Vector<double> response, IReadOnlyList<int> groups)
        {
            (_design, _response, _groups) = (design, response, groups);
            int count = groups.Max() + 1;
            _sizes = new int[count];
            _responseSums = new double[count];
            _designSums = Matrix<double>.Build.Dense(count, design.ColumnCount);
            for (int row = 0; row < groups.Count; row++)
            {
                int group = groups[row];
                _sizes[group]++;
                _responseSums[group] += response[row];
                for (int column = 0; column < design.ColumnCount; column++)
                    _designSums[group, column] += design[row, column];
            }
        }

        /// <summary>The fit, the criterion and its slope in the ratio.</summary>
        public (LeastSquares Fit, double Criterion, double Slope) At(double ratio)
        {
            LeastSquares fit = LeastSquares.Fit(
                Matrix<double>.Build.Dense(_design.RowCount, _design.ColumnCount,
                    (row, column) => _design[row, column] - Centring(row) * _designSums[_groups[row], column]),
                Vector<double>.Build.Dense(_response.Count, row => _response[row] - Centring(row) * _responseSums[_groups[row]]));
            double logInflation = 0, slope = 0, betweenResidual = 0;
            for (int group = 0; group < _sizes.Length; group++)
            {
                double inflation = 1 + ratio * _sizes[group];
                Vector<double> sums = _designSums.Row(group);
                double residual = (_responseSums[group] - sums.DotProduct(fit.Coefficients)) / inflation;
                logInflation += Math.Log(inflation);
                slope += _sizes[group] / inflation - sums.DotProduct(fit.InverseCrossProduct * sums) / (inflation * inflation);
                betweenResidual += residual * residual;
            }
            slope -= betweenResidual / fit.ResidualVariance;
            double criterion = fit.DegreesOfFreedom * (1 + Math.Log(2 * Math.PI * fit.ResidualVariance)) + logInflation
                + fit.LogDeterminant;
            return (fit, criterion, slope);

            // V⁻¹ of a group is (I − 11ᵀ(1 − 1/(1 + r·n))/n)/σ²; this is its square root, applied to a row.
            double Centring(int row)
            {
                int size = _sizes[_groups[row]];
                return (1 - 1 / Math.Sqrt(1 + ratio * size)) / size;
            }
        }

        /// <summary>The ratio at which the criterion is least: the best of a coarse scan, then the root of the slope beside it.</summary>
        public double LeastRatio()
        {
            int best = Enumerable.Range(0, Ratios.Length).MinBy(index => At(Ratios[index]).Criterion);
            double slope = At(Ratios[best]).Slope;
            int other = slope > 0 ? best - 1 : best + 1;
            if (other < 0 || other >= Ratios.Length || slope == 0)
                return Ratios[best];
            double low = Math.Min(Ratios[best], Ratios[other]), high = Math.Max(Ratios[best], Ratios[other]);
            return Brent.TryFindRoot(ratio => At(ratio).Slope, low, high, high * 1e-14, 200, out double root) ? root : Ratios[best];
        }
    }
}
