using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>What was decided about a length: where a search ends, and what the next season's follow-up looks back to.</summary>
public sealed record Decision
{
    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>For whom.</summary>
    public required Guid PaddlerId { get; init; }

    /// <summary>For which hull.</summary>
    public required Guid HullId { get; init; }

    /// <summary>For which paddle.</summary>
    public required Guid PaddleId { get; init; }

    /// <summary>The length decided on.</summary>
    public required Length Length { get; init; }

    /// <summary>What was done.</summary>
    public required DecisionKind Kind { get; init; }

    /// <summary>When.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Who decided, 1 to 80 characters; null where nobody was named.</summary>
    public string? By { get; init; }

    /// <summary>Why, up to 4,000 characters; null where nothing was said.</summary>
    public string? Because { get; init; }
}

/// <summary>What was done about a length.</summary>
public enum DecisionKind
{
    /// <summary>This length is raced from now on; nothing was bought.</summary>
    Raced,

    /// <summary>A paddle of this length was ordered.</summary>
    Ordered,

    /// <summary>A shaft was cut to this length.</summary>
    Cut,

    /// <summary>The ordered paddle came.</summary>
    Delivered,

    /// <summary>After trying it, the paddle was kept as it is.</summary>
    Kept,
}
