namespace TrialLog.Domain.Log;

/// <summary>Word that soreness is gone: without it, or a later outing that says so, pain that was told stands.</summary>
public sealed record SorenessClearance
{
    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>Who was sore.</summary>
    public required Guid PaddlerId { get; init; }

    /// <summary>The day from which it is gone: soreness told on that day or before no longer holds anything back.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Who says so: the paddler, a coach, a clinician; 1 to 80 characters.</summary>
    public required string By { get; init; }

    /// <summary>Why, up to 4,000 characters; null where nothing was said.</summary>
    public string? Because { get; init; }
}
