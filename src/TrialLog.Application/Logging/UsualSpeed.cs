using System.Globalization;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Logging;

/// <summary>
/// How fast a paddler usually is in a hull, by which a mistyped time or distance is noticed. Speeds over different distances
/// are compared by Riegel's rule (1981): time grows with distance to the power of 1.06.
/// </summary>
internal sealed class UsualSpeed
{
    /// <summary>
    /// From how many times faster or slower than usual a piece is asked about. Chosen, no source: half way between a mile taken
    /// for a kilometre (1.61) and what effort, wind and current do (seldom over 1.3).
    /// </summary>
    public const double Questionable = 1.45;

    private const int FewestPieces = 3;
    private const double Fading = 0.06;

    private readonly double? _usual;

    private UsualSpeed(double? usual) => _usual = usual;

    /// <summary>The usual speed: the median of the pieces that count, in that hull where there are at least three, else in any.</summary>
    /// <param name="outings">The paddler's outings.</param>
    /// <param name="hull">The hull.</param>
    public static UsualSpeed Of(IEnumerable<Outing> outings, Guid hull)
    {
        ILookup<bool, double> speeds = outings.SelectMany(outing => outing.Pieces.Where(piece => piece.ExcludedBecause is null)
            .Select(piece => (Here: outing.HullId == hull, Speed: Log(piece.Distance, piece.Time))))
                .ToLookup(piece => piece.Here, piece => piece.Speed);
        return new(Median([.. speeds[true]]) ?? Median([.. speeds[true], .. speeds[false]]));
    }

    /// <summary>How far that piece is off, in words: <c>10 times slower</c>; null where nothing is odd.</summary>
    public string? Doubt(Distance distance, PieceTime time)
    {
        if (_usual is not { } usual)
            return null;
        double faster = Math.Exp(Log(distance, time) - usual), times = Math.Max(faster, 1 / faster);
        return times < Questionable ? null
            : $"{times.ToString(times < 3 ? "0.0" : "0", CultureInfo.InvariantCulture)} times {(faster > 1 ? "faster" : "slower")}";
    }

    /// <summary>Whether nothing is odd about that piece.</summary>
    public bool Fits(Distance distance, PieceTime time) => Doubt(distance, time) is null;

    private static double Log(Distance distance, PieceTime time) =>
        Math.Log(distance.Metres / time.Seconds) + Fading * Math.Log(distance.Metres);

    private static double? Median(double[] speeds)
    {
        if (speeds.Length < FewestPieces)
            return null;
        Array.Sort(speeds);
        return (speeds[(speeds.Length - 1) / 2] + speeds[speeds.Length / 2]) / 2;
    }
}
