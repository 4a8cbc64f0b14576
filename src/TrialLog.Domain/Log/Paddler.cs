using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>A person whose paddle length is tuned.</summary>
public sealed record Paddler
{
    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>1 to 80 characters, unique in a logbook without regard to case.</summary>
    public required string Name { get; init; }

    /// <summary>The unit this paddler reads and types lengths in.</summary>
    public LengthUnit Unit { get; init; } = LengthUnit.Inches;

    /// <summary>What is known of the body.</summary>
    public BodyMeasures Body { get; init; } = BodyMeasures.Unknown;

    /// <summary>Overall length of a paddle already known to suit in a solo canoe, if any.</summary>
    public Length? KnownLength { get; init; }

    /// <summary>The race this is all for, if one was named.</summary>
    public GoalEvent? Goal { get; init; }

    /// <summary>Whether lengths can be changed on the water between pieces. If not, an outing has one length.</summary>
    public bool SwapsOnWater { get; init; } = true;

    /// <summary>What trial outings look like.</summary>
    public TrialHabits Trials { get; init; } = TrialHabits.Untold;

    /// <summary>
    /// The smallest change of speed that matters, in percent, above 0 to 5; null for the default 0.3 % (Bonetti and Hopkins 2010).
    /// </summary>
    public double? WorthwhilePercent { get; init; }
}
