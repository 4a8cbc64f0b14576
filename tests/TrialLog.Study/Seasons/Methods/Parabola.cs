using MathNet.Numerics.LinearAlgebra;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>Least squares for a parabola.</summary>
internal static class Parabola
{
    /// <summary>The top, no farther than that; null where it opens upwards or cannot be fitted.</summary>
    public static double? Top(IReadOnlyList<(double Away, double Percent)> points, double farthest)
    {
        Matrix<double> design = Matrix<double>.Build.Dense(points.Count, 3, (row, power) => Math.Pow(points[row].Away, power));
        Vector<double> percent = Vector<double>.Build.Dense(points.Count, row => points[row].Percent);
        return Top(design.QR().Solve(percent), farthest);
    }

    /// <summary>The top of coefficients by rising power.</summary>
    public static double? Top(Vector<double> coefficients, double farthest) =>
        coefficients[2] < -1e-6 ? Math.Clamp(-coefficients[1] / (2 * coefficients[2]), -farthest, farthest) : null;
}
