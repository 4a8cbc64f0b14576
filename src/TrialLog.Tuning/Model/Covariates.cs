using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// What explains speed beside the length: order in the outing, effort, distance, week of the season. A column that does
/// not vary is left out, since the hull's level takes it up.
/// </summary>
internal sealed class Covariates
{
    private Covariates(IReadOnlyList<string> names, double[] values, double[] priorMean, double[] priorSpread) =>
        (Names, Values, PriorMean, PriorSpread) = (names, values, priorMean, priorSpread);

    /// <summary>Names of the columns.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Values by piece, then by column.</summary>
    public double[] Values { get; }

    /// <summary>Prior mean of each coefficient, percent of speed per unit.</summary>
    public double[] PriorMean { get; }

    /// <summary>Prior standard deviation of each coefficient.</summary>
    public double[] PriorSpread { get; }

    /// <summary>Columns.</summary>
    public int Count => Names.Count;

    /// <summary>
    /// Collects the columns. A piece whose effort was not told stands at its outing's mean (else the log's), and
    /// <paramref name="knownVariance"/> grows by what its effort may have differed.
    /// </summary>
    public static Covariates Of(TuningSettings settings, List<Piece> pieces, List<Outing> outings, int[] starts, double[] knownVariance)
    {
        int count = pieces.Count;
        double[] order = new double[count], distance = new double[count], week = new double[count];
        for (int j = 0; j < outings.Count; j++)
            for (int i = starts[j]; i < starts[j + 1]; i++)
            {
                order[i] = pieces[i].Order - 1;
                distance[i] = Math.Log(pieces[i].Distance.Metres / 1000);
                week[i] = (outings[j].Date.DayNumber - outings[0].Date.DayNumber) / 7.0;
            }

        double[] effort = Efforts(settings, pieces, starts, knownVariance);
        List<string> names = [];
        List<double[]> columns = [];
        List<double> means = [], spreads = [];
        Add("order", order, settings.OrderMean, settings.OrderSpread);
        Add("effort", effort, settings.EffortMean, settings.EffortSpread);
        Add("distance", distance, settings.DistanceMean, settings.DistanceSpread);
        Add("trend", week, 0, settings.TrendSpread);

        double[] values = new double[count * columns.Count];
        for (int k = 0; k < columns.Count; k++)
            for (int i = 0; i < count; i++)
                values[i * columns.Count + k] = columns[k][i];
        return new(names, values, [.. means], [.. spreads]);

        void Add(string name, double[] column, double mean, double spread)
        {
            double least = double.MaxValue, most = double.MinValue, sum = 0;
            foreach (double value in column)
            {
                least = Math.Min(least, value);
                most = Math.Max(most, value);
                sum += value;
            }

            if (!(most - least > 1e-9))
                return;
            for (int i = 0; i < column.Length; i++)
                column[i] -= sum / column.Length;
            names.Add(name);
            columns.Add(column);
            means.Add(mean);
            spreads.Add(spread);
        }
    }

    private static double[] Efforts(TuningSettings settings, List<Piece> pieces, int[] starts, double[] knownVariance)
    {
        double[] effort = new double[pieces.Count];
        double sum = 0;
        int told = 0;
        foreach (Piece piece in pieces)
            if (piece.Effort is { } points)
            {
                sum += points.Points;
                told++;
            }

        if (told == 0)
            return effort;

        double overall = sum / told, squares = 0;
        int freedom = 0;
        List<int> untold = [];
        for (int j = 0; j + 1 < starts.Length; j++)
        {
            double here = 0;
            int toldHere = 0;
            for (int i = starts[j]; i < starts[j + 1]; i++)
                if (pieces[i].Effort is { } points)
                {
                    here += points.Points;
                    toldHere++;
                }

            double mean = toldHere > 0 ? here / toldHere : overall;
            freedom += Math.Max(0, toldHere - 1);
            for (int i = starts[j]; i < starts[j + 1]; i++)
            {
                effort[i] = pieces[i].Effort?.Points ?? mean;
                squares += (effort[i] - mean) * (effort[i] - mean);
                if (pieces[i].Effort is null)
                    untold.Add(i);
            }
        }

        // Half a point squared counts as one more told piece, so that two alike efforts do not promise a third.
        double variance = (squares + 0.25) / (freedom + 1);
        double perPoint = settings.EffortMean * settings.EffortMean + settings.EffortSpread * settings.EffortSpread;
        foreach (int i in untold)
            knownVariance[i] += perPoint * variance;
        return effort;
    }
}
