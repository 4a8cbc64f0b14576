using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

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

    /// <summary>Fingertip to fingertip of the arms stretched sideways, back to a wall.</summary>
    public Length? ArmSpan { get; init; }

    /// <summary>Seat surface to the fingertip of the arm raised straight up.</summary>
    public Length? OverheadReach { get; init; }

    /// <summary>Wrist crease to the tip of the middle finger.</summary>
    public Length? HandLength { get; init; }

    /// <summary>Wrist crease to the root of the middle finger.</summary>
    public Length? PalmLength { get; init; }

    /// <summary>That measure; null where unknown.</summary>
    public Length? this[BodyMeasure measure] => measure switch
    {
        BodyMeasure.SeatedReach => SeatedReach,
        BodyMeasure.Stature => Stature,
        BodyMeasure.SittingShoulderHeight => SittingShoulderHeight,
        BodyMeasure.ShoulderElbow => ShoulderElbow,
        BodyMeasure.ElbowGrip => ElbowGrip,
        BodyMeasure.EyeHeight => EyeHeight,
        BodyMeasure.ShoulderBreadth => ShoulderBreadth,
        BodyMeasure.ArmSpan => ArmSpan,
        BodyMeasure.OverheadReach => OverheadReach,
        BodyMeasure.HandLength => HandLength,
        BodyMeasure.PalmLength => PalmLength,
        _ => throw new ArgumentOutOfRangeException(nameof(measure)),
    };

    /// <summary>The same with one measure set, or unset by null.</summary>
    public BodyMeasures With(BodyMeasure measure, Length? length) => measure switch
    {
        BodyMeasure.SeatedReach => this with { SeatedReach = length },
        BodyMeasure.Stature => this with { Stature = length },
        BodyMeasure.SittingShoulderHeight => this with { SittingShoulderHeight = length },
        BodyMeasure.ShoulderElbow => this with { ShoulderElbow = length },
        BodyMeasure.ElbowGrip => this with { ElbowGrip = length },
        BodyMeasure.EyeHeight => this with { EyeHeight = length },
        BodyMeasure.ShoulderBreadth => this with { ShoulderBreadth = length },
        BodyMeasure.ArmSpan => this with { ArmSpan = length },
        BodyMeasure.OverheadReach => this with { OverheadReach = length },
        BodyMeasure.HandLength => this with { HandLength = length },
        BodyMeasure.PalmLength => this with { PalmLength = length },
        _ => throw new ArgumentOutOfRangeException(nameof(measure)),
    };
}
