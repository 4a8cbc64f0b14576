using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Pieces;

/// <summary>What a recording cannot tell about its pieces and the user is asked for.</summary>
public sealed record PieceAnswers
{
    /// <summary>The paddle used.</summary>
    public required Guid PaddleId { get; init; }

    /// <summary>The length of each piece that counts, in the order paddled: the card's, or as corrected.</summary>
    public required IReadOnlyList<Length> Lengths { get; init; }

    /// <summary>Effort held, for all pieces.</summary>
    public Effort? Effort { get; init; }

    /// <summary>Soreness of shoulder, elbow or back, for all pieces.</summary>
    public Soreness? Soreness { get; init; }
}

/// <summary>Pieces ready to be saved, or the question that must be answered first.</summary>
public sealed record MatchedPieces
{
    /// <summary>The pieces; empty while there is a question.</summary>
    public IReadOnlyList<Piece> Pieces { get; init; } = [];

    /// <summary>What to ask the user, one plain sentence; null where the numbers agree.</summary>
    public string? Question { get; init; }
}
