using TrialLog.Domain.Values;

namespace TrialLog.Domain.Boats;

/// <summary>A craft.</summary>
public sealed record Hull
{
    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>1 to 80 characters, unique in a logbook without regard to case: <c>OC1</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Paddlers aboard, 1 to 24.</summary>
    public required int Crew { get; init; }

    /// <summary>Sit bones to waterline, paddler aboard; null where not measured.</summary>
    public Length? SeatHeight { get; init; }
}
