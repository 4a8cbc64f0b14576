using MathNet.Numerics.LinearAlgebra;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>One thing that may explain speed beside the length.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Values">Its value by piece.</param>
/// <param name="Mean">Prior mean of its coefficient, percent of speed per unit.</param>
/// <param name="Variance">Prior variance of the same.</param>
internal sealed record Covariate(string Name, double[] Values, double Mean, double Variance);

/// <summary>
/// What explains speed beside the length: order in the outing, effort, distance, week of the season, and what heart rate adds. A column
/// that does not vary is left out, since the hull's level takes it up; the rest are centred.
/// </summary>
internal sealed class Covariates
{
    private const double Varies = 1e-9;

    private Covariates(IReadOnlyList<string> names, double[] values, double[] priorMean, double[] priorPrecision, double logDeterminant) =>
        (Names, Values, PriorMean, PriorPrecision, LogDeterminant) = (names, values, priorMean, priorPrecision, logDeterminant);

    /// <summary>Names of the columns.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Values by piece, then by column.</summary>
    public double[] Values { get; }

    /// <summary>Prior mean of each coefficient, percent of speed per unit.</summary>
    public double[] PriorMean { get; }

    /// <summary>Prior precision matrix of the coefficients, row-major.</summary>
    public double[] PriorPrecision { get; }

    /// <summary>Its log determinant.</summary>
    public double LogDeterminant { get; }

    /// <summary>Columns.</summary>
    public int Count => Names.Count;

    /// <summary>Joins columns whose coefficients are believed apart from each other but for <paramref name="covariances"/>.</summary>
    /// <param name="columns">The columns.</param>
    /// <param name="covariances">Prior covariances of two coefficients, by name; each pair once.</param>
    public static Covariates Of(IReadOnlyList<Covariate> columns, IReadOnlyDictionary<(string, string), double>? covariances = null)
    {
        List<Covariate> kept = [.. columns.Where(column => column.Values.Length > 0 && column.Values.Max() - column.Values.Min() > Varies)];
        int count = kept.Count, pieces = columns[0].Values.Length;
        double[] values = new double[pieces * count], precision = new double[count * count];
        for (int k = 0; k < count; k++)
        {
            double sum = 0;
            foreach (double value in kept[k].Values)
                sum += value;
            double mean = sum / pieces;
            for (int i = 0; i < pieces; i++)
                values[i * count + k] = kept[k].Values[i] - mean;
        }

        double logDeterminant = 0;
        if (covariances is null)
        {
            for (int k = 0; k < count; k++)
            {
                precision[k * count + k] = 1 / kept[k].Variance;
                logDeterminant -= Math.Log(kept[k].Variance);
            }
        }
        else if (count > 0)
        {
            Matrix<double> covariance = Matrix<double>.Build.DenseOfDiagonalArray([.. kept.Select(column => column.Variance)]);
            foreach (((string one, string other), double value) in covariances)
            {
                int a = kept.FindIndex(column => column.Name == one), b = kept.FindIndex(column => column.Name == other);
                if (a >= 0 && b >= 0)
                    covariance[a, b] = covariance[b, a] = value;
            }

            var factor = covariance.Cholesky();
            precision = factor.Solve(Matrix<double>.Build.DenseIdentity(count)).ToRowMajorArray();
            logDeterminant = -factor.DeterminantLn;
        }

        return new([.. kept.Select(column => column.Name)], values, [.. kept.Select(column => column.Mean)], precision, logDeterminant);
    }

    /// <summary>The columns of a log without heart rate.</summary>
    /// <param name="settings">The priors.</param>
    /// <param name="pieces">The pieces.</param>
    /// <param name="outings">Their outings.</param>
    /// <param name="starts">Where each outing's pieces begin.</param>
    /// <param name="effort">Told effort by piece.</param>
    public static IReadOnlyList<Covariate> Plain(
        TuningSettings settings, IReadOnlyList<Piece> pieces, IReadOnlyList<Outing> outings, int[] starts, double[] effort)
    {
        double[] order = [.. pieces.Select(piece => piece.Order - 1.0)],
            distance = [.. pieces.Select(piece => Math.Log(piece.Distance.Metres / 1000))], week = new double[pieces.Count];
        for (int j = 0; j < outings.Count; j++)
            for (int i = starts[j]; i < starts[j + 1]; i++)
                week[i] = (outings[j].Date.DayNumber - outings[0].Date.DayNumber) / 7.0;
        return
        [
            new("order", order, settings.OrderMean, settings.OrderSpread * settings.OrderSpread),
            new("effort", effort, settings.EffortMean, settings.EffortSpread * settings.EffortSpread),
            new("distance", distance, settings.DistanceMean, settings.DistanceSpread * settings.DistanceSpread),
            new("trend", week, 0, settings.TrendSpread * settings.TrendSpread),
        ];
    }
}
