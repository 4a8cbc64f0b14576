using TrialLog.Application.Logging;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Wording;

/// <summary>A piece as it is being typed, in a paddler's words.</summary>
internal static class PieceSaying
{
    /// <summary>Time per kilometre: <c>5:32 /km</c>.</summary>
    public static string Pace(PieceEntry piece) => Saying.Clock(piece.Time.Seconds / piece.Distance.Metres * 1000) + " /km";
}
