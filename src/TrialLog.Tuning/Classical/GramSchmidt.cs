using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Classical;

/// <summary>
/// Columns made orthogonal one by one, each projection done twice for accuracy. Source: Golub and Van Loan, Matrix
/// Computations, section 5.2.8 (modified Gram-Schmidt).
/// </summary>
internal sealed class GramSchmidt
{
    /// <summary>A column whose part not explained by the earlier ones is smaller than this share of it says nothing new.</summary>
    public const double TangledShare = 1e-7;

    private readonly List<double[]> _axes = [];

    /// <summary>Takes the column in if it says something that the earlier ones do not.</summary>
    public bool TryAdd(double[] column)
    {
        double[] rest = Rest(column);
        double left = Norm(rest);
        if (left == 0 || left <= TangledShare * Norm(column))
            return false;
        _axes.Add([.. rest.Select(value => value / left)]);
        return true;
    }

    /// <summary>What the columns taken in so far leave of <paramref name="values"/>.</summary>
    public double[] Rest(double[] values)
    {
        double[] rest = [.. values];
        for (int pass = 0; pass < 2; pass++)
            foreach (double[] axis in _axes)
            {
                double along = rest.Zip(axis, (a, b) => a * b).Sum();
                for (int row = 0; row < rest.Length; row++)
                    rest[row] -= along * axis[row];
            }

        return rest;
    }

    /// <summary>Length of the vector.</summary>
    public static double Norm(double[] values) => Math.Sqrt(values.Sum(value => value * value));
}
