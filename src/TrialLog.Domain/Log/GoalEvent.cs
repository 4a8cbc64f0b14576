using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>The event that the length is tuned for: a hull, and either a distance or a time.</summary>
public sealed record GoalEvent
{
    /// <summary>The hull it is raced in.</summary>
    public required Guid HullId { get; init; }

    /// <summary>The distance, if that is what is fixed.</summary>
    public Distance? Distance { get; init; }

    /// <summary>The time, if that is what is fixed or known.</summary>
    public PieceTime? Time { get; init; }
}
