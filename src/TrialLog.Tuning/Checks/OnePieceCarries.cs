using MathNet.Numerics.LinearAlgebra;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Classical;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Checks;

/// <summary>One piece without which the best length would be another.</summary>
internal sealed class OnePieceCarries : ILogCheck
{
    private const double QuarterInch = 0.25;

    /// <summary>So few pieces are asked about in full; which ones, a parabola through the adjusted pieces tells.</summary>
    private const int AskedAbout = 3;

    /// <summary>
    /// Pieces that move the vertex of that parabola by less are not asked about: the parabola has no prior to hold it, so
    /// the best length moves by less still.
    /// </summary>
    private const double WorthAskingInches = 0.15;

    /// <summary>With fewer, every piece carries the result, and the range says so already.</summary>
    private const int EnoughPieces = 8;

    public HealthCheck? Look(CheckedLog log)
    {
        if (log.BestWithoutInches is not { } bestWithout || log.Adjusted.Count < EnoughPieces)
            return null;
        (AdjustedPiece? piece, double moved) = MostInfluential(log.Adjusted)
            .Select(piece => (piece, moved: bestWithout(piece.PieceId) - log.BestInches))
            .Where(one => one.moved is { } by && Math.Abs(by) > QuarterInch)
            .Select(one => (one.piece, one.moved!.Value))
            .OrderByDescending(one => Math.Abs(one.Value))
            .FirstOrDefault();
        if (piece is null || log.InHull.FirstOrDefault(one => one.Piece.Id == piece.PieceId) is not { } carrier)
            return null;
        return new("one-piece-carries")
        {
            Piece = (carrier.Outing.Date, carrier.Piece.Order), Inches = Math.Abs(moved),
            Longer = moved > 0
        };
    }

    /// <summary>
    /// The pieces whose leaving out changes a weighted parabola most (Cook's distance; Cook 1977, Technometrics
    /// 19(1):15-18), the most influential first.
    /// </summary>
    private static IEnumerable<AdjustedPiece> MostInfluential(IReadOnlyList<AdjustedPiece> pieces)
    {
        double centre = pieces.Average(piece => piece.Length.Inches);
        double[] inches = [.. pieces.Select(piece => piece.Length.Inches - centre)];
        double[] roots = [.. pieces.Select(piece => Math.Sqrt(piece.Weight))];
        var columns = new GramSchmidt();
        var design = new List<double[]>();
        foreach (int power in (int[])[0, 1, 2])
        {
            double[] column = [.. inches.Zip(roots, (x, root) => root * Math.Pow(x, power))];
            if (columns.TryAdd(column))
                design.Add(column);
        }

        if (design.Count == 0)
            return [];
        LeastSquares fit = LeastSquares.Fit(
            Matrix<double>.Build.DenseOfColumnArrays(design),
            Vector<double>.Build.Dense(pieces.Count, row => roots[row] * pieces[row].Percent));
        return pieces.Select((piece, row) => (piece, without: Without(row)))
            .Where(one => Math.Abs(Vertex(one.without.Coefficients) - Vertex(fit.Coefficients)) is not < WorthAskingInches)
            .OrderByDescending(one => one.without.Distance).ThenBy(one => one.piece.PieceId).Take(AskedAbout).Select(one => one.piece);

        (Vector<double> Coefficients, double Distance) Without(int row)
        {
            Vector<double> at = Vector<double>.Build.DenseOfEnumerable(design.Select(column => column[row]));
            Vector<double> pull = fit.InverseCrossProduct * at;
            double residual = roots[row] * pieces[row].Percent - at.DotProduct(fit.Coefficients);
            double leverage = Math.Min(at.DotProduct(pull), 1 - 1e-9);
            return (fit.Coefficients - pull * (residual / (1 - leverage)),
                residual * residual * leverage / ((1 - leverage) * (1 - leverage)));
        }

        // Not a number where nothing bends down; then only the full answer can tell.
        static double Vertex(Vector<double> coefficients) =>
            coefficients.Count == 3 && coefficients[2] < 0 ? -coefficients[1] / (2 * coefficients[2]) : double.NaN;
    }
}
