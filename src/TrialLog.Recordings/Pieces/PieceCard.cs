using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Pieces;

/// <summary>What a recording is held against: the card that was paddled, or no more than how many lengths were typed.</summary>
/// <param name="Pieces">The number of pieces.</param>
/// <param name="Distance">Of each piece; null where it is not known.</param>
/// <param name="Rest">Between pieces; null where it is not known.</param>
public sealed record PieceCard(int Pieces, Distance? Distance = null, PieceTime? Rest = null)
{
    // How far a piece between two marks may be from the distance meant. No source: chosen; half or twice as far is far outside.
    private const double Share = 0.15;

    /// <summary>Whether a piece of that distance can be one of the card's.</summary>
    public bool Fits(Distance distance) => Distance is not { } meant || Math.Abs(distance.Metres / meant.Metres - 1) <= Share;
}
