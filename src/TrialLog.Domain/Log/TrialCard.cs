using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>The plan of an outing: which lengths, in which order, how far, how hard.</summary>
public sealed record TrialCard
{
    /// <summary>The length for each piece, in the order to paddle.</summary>
    public required IReadOnlyList<Length> Lengths { get; init; }

    /// <summary>Distance of each piece.</summary>
    public required Distance Distance { get; init; }

    /// <summary>Effort to hold in each piece.</summary>
    public required Effort Effort { get; init; }

    /// <summary>Easy paddling or rest between pieces.</summary>
    public required PieceTime Rest { get; init; }
}
