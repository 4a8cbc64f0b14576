namespace TrialLog.Domain;

/// <summary>Body measures, each of which may be unknown.</summary>
public sealed record BodyMeasures
{
    /// <summary>Nothing measured.</summary>
    public static readonly BodyMeasures Unknown = new();

    /// <summary>Seat surface to the middle of the palm of the arm raised straight up.</summary>
    public Length? SeatedReach { get; init; }

    /// <summary>Standing height.</summary>
    public Length? Stature { get; init; }

    /// <summary>Seat surface to the bony tip of the shoulder (acromion).</summary>
    public Length? SittingShoulderHeight { get; init; }

    /// <summary>Tip of the shoulder to the elbow, arm bent.</summary>
    public Length? ShoulderElbow { get; init; }

    /// <summary>Elbow to the centre of a gripped rod.</summary>
    public Length? ElbowGrip { get; init; }

    /// <summary>Seat surface to the eye, sitting upright.</summary>
    public Length? EyeHeight { get; init; }

    /// <summary>Distance between the bony tips of the shoulders (biacromial breadth).</summary>
    public Length? ShoulderBreadth { get; init; }
}
