using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Pieces;

/// <summary>What a recording is held against: the card that was paddled, or no more than how many lengths were typed.</summary>
/// <param name="Pieces">The number of pieces.</param>
/// <param name="Distance">Of each piece; null where it is not known.</param>
/// <param name="Rest">Between pieces; null where it is not known.</param>
/// <param name="Usual">Where the distance is not known: of the card that was open, or of the outing before. It asks nothing, but tells
/// between two readings of which only one is of that distance.</param>
public sealed record PieceCard(int Pieces, Distance? Distance = null, PieceTime? Rest = null, Distance? Usual = null)
{
    // How far a piece between two marks may be from the distance meant. No source: chosen; half or twice as far is far outside.
    private const double Share = 0.15;

    /// <summary>Whether a piece of that distance can be one of the card's.</summary>
    public bool Fits(Distance distance) => Distance is not { } meant || IsAbout(distance, meant);

    /// <summary>Whether a piece of that distance is of the usual one; false where none is known.</summary>
    public bool IsUsual(Distance distance) => Usual is { } usual && IsAbout(distance, usual);

    private static bool IsAbout(Distance distance, Distance meant) => Math.Abs(distance.Metres / meant.Metres - 1) <= Share;
}
