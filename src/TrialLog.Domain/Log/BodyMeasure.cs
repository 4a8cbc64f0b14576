using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>Which body measure.</summary>
public enum BodyMeasure
{
    /// <summary>Seat surface to the middle of the palm of the arm raised straight up.</summary>
    SeatedReach,

    /// <summary>Standing height.</summary>
    Stature,

    /// <summary>Seat surface to the bony tip of the shoulder.</summary>
    SittingShoulderHeight,

    /// <summary>Tip of the shoulder to the elbow, arm bent.</summary>
    ShoulderElbow,

    /// <summary>Elbow to the centre of a gripped rod.</summary>
    ElbowGrip,

    /// <summary>Seat surface to the eye.</summary>
    EyeHeight,

    /// <summary>Distance between the bony tips of the shoulders.</summary>
    ShoulderBreadth,

    /// <summary>Fingertip to fingertip of the arms stretched sideways.</summary>
    ArmSpan,

    /// <summary>Seat surface to the fingertip of the arm raised straight up.</summary>
    OverheadReach,

    /// <summary>Wrist crease to the tip of the middle finger.</summary>
    HandLength,

    /// <summary>Wrist crease to the root of the middle finger.</summary>
    PalmLength,
}
