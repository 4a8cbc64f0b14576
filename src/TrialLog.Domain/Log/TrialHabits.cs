using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>
/// What a paddler's trial outings look like: told once, changed for one outing where that differs. What is null was not told.
/// </summary>
public sealed record TrialHabits
{
    /// <summary>Nothing told.</summary>
    public static readonly TrialHabits Untold = new();

    /// <summary>The fewest pieces of a trial outing, two at each of two lengths, and the most.</summary>
    public const int FewestPieces = 4, MostPieces = 16;

    /// <summary>Pieces of an outing, an even number from 4 to 16.</summary>
    public int? Pieces { get; init; }

    /// <summary>Distance of a piece.</summary>
    public Distance? Distance { get; init; }

    /// <summary>Time on the water with warm-up and rests, minutes; 15 to 300.</summary>
    public int? Minutes { get; init; }

    /// <summary>How pieces are timed.</summary>
    public TimedBy? TimedBy { get; init; }

    /// <summary>
    /// What an outing of testing is worth to the paddler, percent of speed, 0.0005 to 1; null for 0.005, more where outings are long
    /// (chosen, no source).
    /// </summary>
    public double? PricePercent { get; init; }

    /// <summary>
    /// Whether a trial outing may have so many pieces. An odd number cannot be mirrored: one length would come oftener, and tiring would
    /// not cancel.
    /// </summary>
    public static bool MayHave(int pieces) => pieces is >= FewestPieces and <= MostPieces && pieces % 2 == 0;
}
