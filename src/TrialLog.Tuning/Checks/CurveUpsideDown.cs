using TrialLog.Domain.Log;
using TrialLog.Tuning.Classical;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Checks;

/// <summary>
/// Faster at both ends of the lengths tried than in between. The model believes that the curve bends down, so it would take such a
/// log for a flat one.
/// </summary>
internal sealed class CurveUpsideDown : ILogCheck
{
    private const int EnoughPieces = 12;

    /// <summary>From how many standard errors on the classical parabola surely bends upwards. Chosen.</summary>
    private const double SurelyInErrors = 2.5;

    public HealthCheck? Look(CheckedLog log)
    {
        // The classical fit is the dearest thing an analysis could do, so it is asked only where the curve may bend upwards at all.
        if (log.InHull.Count < EnoughPieces || BendsDownWithinOutings(log))
            return null;
        IReadOnlyList<Coefficient> coefficients = ClassicalAnalysis.Fit(log.Question).Coefficients;
        return coefficients.Count > 2 && coefficients[2].Estimate > SurelyInErrors * coefficients[2].StandardError
            ? new("curve-upside-down")
            : null;
    }

    /// <summary>Whether least squares of log speed on length and its square, all less their means by outing, bends down.</summary>
    private static bool BendsDownWithinOutings(CheckedLog log)
    {
        double lengths = 0, cross = 0, linear = 0, bend = 0;
        foreach (IGrouping<Guid, CheckedPiece> outing in log.InHull.GroupBy(piece => piece.Outing.Id))
        {
            (double X, double Square, double Speed)[] pieces =
                [.. outing.Select(piece => (piece.Aligned, piece.Aligned * piece.Aligned, Math.Log(piece.Piece.MetresPerSecond)))];
            double x = pieces.Average(piece => piece.X), square = pieces.Average(piece => piece.Square),
                speed = pieces.Average(piece => piece.Speed);
            foreach ((double X, double Square, double Speed) piece in pieces)
            {
                lengths += (piece.X - x) * (piece.X - x);
                cross += (piece.X - x) * (piece.Square - square);
                linear += (piece.X - x) * (piece.Speed - speed);
                bend += (piece.Square - square) * (piece.Speed - speed);
            }
        }

        // The bend is this divided by a determinant that is never negative.
        return bend * lengths - cross * linear < 0;
    }
}
