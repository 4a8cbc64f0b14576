using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>
/// Where the top hand was against the eye with the whole blade just buried at the catch
/// (common practice, no source: it should be about level).
/// </summary>
public sealed record TechniqueCheck
{
    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>Whose.</summary>
    public required Guid PaddlerId { get; init; }

    /// <summary>In which hull.</summary>
    public required Guid HullId { get; init; }

    /// <summary>With which paddle.</summary>
    public required Guid PaddleId { get; init; }

    /// <summary>At which length.</summary>
    public required Length Length { get; init; }

    /// <summary>Top hand above eye level in inches; negative below. -30 to 30.</summary>
    public required double HandAboveEyeInches { get; init; }

    /// <summary>Shaft lean from the vertical at the catch, degrees, 0 to 60; null where not measured.</summary>
    public double? ShaftLeanDegrees { get; init; }

    /// <summary>Whether it was measured in a photo, not judged by eye.</summary>
    public bool FromPhoto { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }
}
