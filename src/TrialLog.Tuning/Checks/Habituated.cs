using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Checks;

/// <summary>Nearly all experience at one length: what one is used to goes better at first than it deserves.</summary>
internal sealed class Habituated : ILogCheck
{
    private const int EnoughPieces = 8;

    /// <summary>Share of the pieces at one length from which the others count as hardly tried. Chosen.</summary>
    private const double NearlyAll = 0.8;

    /// <summary>Half a setting's width, inches, and a little for rounding.</summary>
    private const double Within = 0.125 + 1e-9;

    public HealthCheck? Look(CheckedLog log)
    {
        if (log.Counted.Count < EnoughPieces)
            return null;
        double[] sorted = [.. log.Counted.Select(piece => piece.Aligned).Order()];
        CheckedPiece usual = log.Counted.MaxBy(piece => Near(sorted, piece))!;
        int near = Near(sorted, usual);
        return near >= NearlyAll * log.Counted.Count && near < log.Counted.Count
            ? new("habituated") { Count = near, Of = log.Counted.Count, Inches = usual.LengthInches }
            : null;
    }

    private static int Near(double[] sorted, CheckedPiece to) => UpTo(sorted, to.Aligned + Within) - UpTo(sorted, to.Aligned - Within);

    /// <summary>How many are no greater; the logs of years make it worth halving rather than counting.</summary>
    private static int UpTo(double[] sorted, double most)
    {
        int low = 0, high = sorted.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (sorted[middle] <= most)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
