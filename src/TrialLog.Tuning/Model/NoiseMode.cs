using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>The most probable pair of log spreads (outings, pieces), and how wide the posterior is around it.</summary>
/// <param name="LogOuting">Logarithm of the outings' spread τ at the mode.</param>
/// <param name="LogPiece">Logarithm of the pieces' spread σ at the mode.</param>
/// <param name="OutingSd">Standard deviation around <paramref name="LogOuting"/>.</param>
/// <param name="PieceSd">Standard deviation around <paramref name="LogPiece"/>.</param>
/// <param name="Moved">How far the last step went, in those standard deviations.</param>
internal readonly record struct NoiseMode(double LogOuting, double LogPiece, double OutingSd, double PieceSd, double Moved)
{
    /// <summary>Half the width of the stencil that slopes and bends are taken on.</summary>
    private const double Stencil = 0.12;

    /// <summary>Where the search for it begins: at the prior.</summary>
    public static NoiseMode Before(TuningSettings settings) =>
        new(Math.Log(settings.OutingMedian), Math.Log(settings.PieceMedian), settings.OutingLogSpread, settings.PieceLogSpread,
            double.PositiveInfinity);

    /// <summary>One Newton step on that log density.</summary>
    public NoiseMode Step(Func<double, double, double> logDensity, TuningSettings settings)
    {
        const double H = Stencil;
        double centre = logDensity(LogOuting, LogPiece);
        double outingUp = logDensity(LogOuting + H, LogPiece), outingDown = logDensity(LogOuting - H, LogPiece);
        double pieceUp = logDensity(LogOuting, LogPiece + H), pieceDown = logDensity(LogOuting, LogPiece - H);
        double bothUp = logDensity(LogOuting + H, LogPiece + H), bothDown = logDensity(LogOuting - H, LogPiece - H);

        double slopeOuting = (outingUp - outingDown) / (2 * H), slopePiece = (pieceUp - pieceDown) / (2 * H);
        double bendOuting = -(outingUp - 2 * centre + outingDown) / (H * H), bendPiece = -(pieceUp - 2 * centre + pieceDown) / (H * H);
        double bendBoth = -(bothUp - outingUp - pieceUp + 2 * centre - outingDown - pieceDown + bothDown) / (2 * H * H);

        // Nothing is known worse than the prior tells it, so the curvature is not let fall far below the prior's.
        bendOuting = Math.Max(bendOuting, 0.3 / (settings.OutingLogSpread * settings.OutingLogSpread));
        bendPiece = Math.Max(bendPiece, 0.3 / (settings.PieceLogSpread * settings.PieceLogSpread));
        double limit = 0.9 * Math.Sqrt(bendOuting * bendPiece);
        bendBoth = Math.Clamp(bendBoth, -limit, limit);

        double determinant = bendOuting * bendPiece - bendBoth * bendBoth;
        double stepOuting = Math.Clamp((bendPiece * slopeOuting - bendBoth * slopePiece) / determinant, -0.8, 0.8);
        double stepPiece = Math.Clamp((bendOuting * slopePiece - bendBoth * slopeOuting) / determinant, -0.8, 0.8);
        double outingSd = Math.Sqrt(bendPiece / determinant), pieceSd = Math.Sqrt(bendOuting / determinant);
        return new(LogOuting + stepOuting, LogPiece + stepPiece, outingSd, pieceSd,
            Math.Max(Math.Abs(stepOuting) / outingSd, Math.Abs(stepPiece) / pieceSd));
    }

    /// <summary>Evenly spaced values along one axis through the mode, as far as the density is worth counting.</summary>
    /// <param name="logDensity">The log density.</param>
    /// <param name="outing">The outings' axis rather than the pieces'.</param>
    public double[] Axis(Func<double, double, double> logDensity, bool outing)
    {
        const double StepInSds = 1.2, Worth = 9;
        const int MostEachWay = 10;
        double logOuting = LogOuting, logPiece = LogPiece;
        double centre = outing ? LogOuting : LogPiece, step = StepInSds * (outing ? OutingSd : PieceSd);
        double atMode = logDensity(LogOuting, LogPiece);
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
                if (atMode - (outing ? logDensity(at, logPiece) : logDensity(logOuting, at)) > Worth)
                    break;
                reach++;
            }

            return reach;
        }
    }
}
