using MathNet.Numerics.Interpolation;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>
/// What is known beforehand of the error of a piece's speed: by what timed it and over which distance, unless the piece itself says.
/// </summary>
internal static class KnownError
{
    /// <summary>
    /// By the satellite fixes of a watch: standard error of the mean speed in percent by distance in metres. Chosen, from trying recordings
    /// of invented outings; held level beyond the ends. Between, the logarithms follow a curve without bumps.
    /// </summary>
    private static readonly (double Metres, double Percent)[] ByWatch = [(300, 1.8), (750, 1.3), (1000, 0.6), (2000, 0.2)];

    // Fritsch and Carlson 1980, SIAM J Numer Anal 17(2):238-46: monotone where the points are.
    private static readonly CubicSpline LogByWatch =
        CubicSpline.InterpolatePchipSorted(
            [.. ByWatch.Select(point => Math.Log(point.Metres))], [.. ByWatch.Select(point => Math.Log(point.Percent))]);

    /// <summary>Variance of a piece's speed, percent squared.</summary>
    public static double Variance(Piece piece, TuningSettings settings) =>
        piece.SpeedErrorPercent is { } percent ? percent * percent
            : Variance(piece.TimedBy, piece.Distance.Metres, piece.Time.Seconds, settings);

    /// <summary>Variance of the speed of a piece to come, percent squared.</summary>
    /// <param name="timedBy">What times it; by hand where nobody said.</param>
    /// <param name="metres">How far it goes.</param>
    /// <param name="seconds">About how long it takes.</param>
    /// <param name="settings">Errors of time and distance by hand.</param>
    public static double Variance(TimedBy? timedBy, double metres, double seconds, TuningSettings settings)
    {
        if (timedBy == TimedBy.Watch)
            return Math.Exp(2 * LogByWatch.Interpolate(Math.Log(Math.Clamp(metres, ByWatch[0].Metres, ByWatch[^1].Metres))));
        double timing = 100 * settings.TimingErrorSeconds / seconds, placing = 100 * settings.DistanceErrorMetres / metres;
        return timing * timing + placing * placing;
    }
}
