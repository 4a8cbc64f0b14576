using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// Finds the most probable pair of log spreads (outings, pieces) by Newton's steps on a nine-point stencil, and how wide the
/// posterior is around it.
/// </summary>
internal sealed class NoiseMode
{
    private const double Stencil = 0.12;
    private readonly Func<double, double, double> _logDensity;
    private readonly double _outingPriorSpread, _piecePriorSpread;

    public NoiseMode(Func<double, double, double> logDensity, TuningSettings settings)
    {
        _logDensity = logDensity;
        _outingPriorSpread = settings.OutingLogSpread;
        _piecePriorSpread = settings.PieceLogSpread;
        LogOuting = Math.Log(settings.OutingMedian);
        LogPiece = Math.Log(settings.PieceMedian);
        OutingSpread = _outingPriorSpread;
        PieceSpread = _piecePriorSpread;
    }

    /// <summary>Logarithm of the outings' spread at the mode.</summary>
    public double LogOuting { get; private set; }

    /// <summary>Logarithm of the pieces' spread at the mode.</summary>
    public double LogPiece { get; private set; }

    /// <summary>Standard deviation around <see cref="LogOuting"/>.</summary>
    public double OutingSpread { get; private set; }

    /// <summary>Standard deviation around <see cref="LogPiece"/>.</summary>
    public double PieceSpread { get; private set; }

    /// <summary>One Newton step; returns how far it went.</summary>
    public double Step()
    {
        const double H = Stencil;
        double centre = _logDensity(LogOuting, LogPiece);
        double outingUp = _logDensity(LogOuting + H, LogPiece), outingDown = _logDensity(LogOuting - H, LogPiece);
        double pieceUp = _logDensity(LogOuting, LogPiece + H), pieceDown = _logDensity(LogOuting, LogPiece - H);
        double bothUp = _logDensity(LogOuting + H, LogPiece + H), bothDown = _logDensity(LogOuting - H, LogPiece - H);

        double slopeOuting = (outingUp - outingDown) / (2 * H), slopePiece = (pieceUp - pieceDown) / (2 * H);
        double bendOuting = -(outingUp - 2 * centre + outingDown) / (H * H), bendPiece = -(pieceUp - 2 * centre + pieceDown) / (H * H);
        double bendBoth = -(bothUp - outingUp - pieceUp + 2 * centre - outingDown - pieceDown + bothDown) / (2 * H * H);

        // Nothing is known worse than the prior tells it, so the curvature is not let fall far below the prior's.
        bendOuting = Math.Max(bendOuting, 0.3 / (_outingPriorSpread * _outingPriorSpread));
        bendPiece = Math.Max(bendPiece, 0.3 / (_piecePriorSpread * _piecePriorSpread));
        double limit = 0.9 * Math.Sqrt(bendOuting * bendPiece);
        bendBoth = Math.Clamp(bendBoth, -limit, limit);

        double determinant = bendOuting * bendPiece - bendBoth * bendBoth;
        double stepOuting = Math.Clamp((bendPiece * slopeOuting - bendBoth * slopePiece) / determinant, -0.8, 0.8);
        double stepPiece = Math.Clamp((bendOuting * slopePiece - bendBoth * slopeOuting) / determinant, -0.8, 0.8);
        OutingSpread = Math.Sqrt(bendPiece / determinant);
        PieceSpread = Math.Sqrt(bendOuting / determinant);
        LogOuting += stepOuting;
        LogPiece += stepPiece;
        return Math.Max(Math.Abs(stepOuting) / OutingSpread, Math.Abs(stepPiece) / PieceSpread);
    }

    /// <summary>Evenly spaced values along one axis through the mode, as far as the density is worth counting.</summary>
    /// <param name="outing">The outings' axis rather than the pieces'.</param>
    public double[] Axis(bool outing)
    {
        const double StepInSpreads = 1.2, Worth = 9;
        const int MostEachWay = 6;
        double centre = outing ? LogOuting : LogPiece, step = StepInSpreads * (outing ? OutingSpread : PieceSpread);
        double atMode = _logDensity(LogOuting, LogPiece);
        int below = Reach(-1), above = Reach(1);
        double[] axis = new double[below + above + 1];
        for (int k = 0; k < axis.Length; k++)
            axis[k] = centre + (k - below) * step;
        return axis;

        int Reach(int sign)
        {
            int reach = 1;
            while (reach < MostEachWay)
            {
                double at = centre + sign * reach * step;
                if (atMode - (outing ? _logDensity(at, LogPiece) : _logDensity(LogOuting, at)) > Worth)
                    break;
                reach++;
            }

            return reach;
        }
    }
}
