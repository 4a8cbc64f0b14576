using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>Effort as told, piece by piece.</summary>
/// <param name="Points">CR10 points; a piece whose effort was not told stands at its outing's mean, else the log's.</param>
/// <param name="KnownVariance">What the effort of a piece that was not told may have done to its speed, percent squared.</param>
/// <param name="Varies">Whether some outing has two told efforts: such a paddler tells more than the number that was asked for.</param>
internal sealed record ToldEffort(double[] Points, double[] KnownVariance, bool Varies)
{
    /// <summary>Efforts closer than this are one, points.</summary>
    private const double Same = 1e-9;

    /// <summary>Collects the efforts.</summary>
    public static ToldEffort Of(TuningSettings settings, IReadOnlyList<Piece> pieces, int[] starts)
    {
        double[] effort = new double[pieces.Count], known = new double[pieces.Count];
        double sum = 0;
        int told = 0;
        foreach (Piece piece in pieces)
            if (piece.Effort is { } points)
            {
                sum += points.Points;
                told++;
            }

        if (told == 0)
            return new(effort, known, false);

        double overall = sum / told, squares = 0;
        int freedom = 0;
        List<int> untold = [];
        bool varies = false;
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
                varies |= Math.Abs(effort[i] - mean) > Same;
                if (pieces[i].Effort is null)
                    untold.Add(i);
            }
        }

        // Half a point squared counts as one more told piece, so that two alike efforts do not promise a third.
        double variance = (squares + 0.25) / (freedom + 1);
        double perPoint = settings.EffortMean * settings.EffortMean + settings.EffortSpread * settings.EffortSpread;
        foreach (int i in untold)
            known[i] = perPoint * variance;
        return new(effort, known, varies);
    }
}
