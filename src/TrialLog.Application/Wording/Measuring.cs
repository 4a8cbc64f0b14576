using TrialLog.Domain.Boats;

namespace TrialLog.Application.Wording;

/// <summary>How to take a measure alone, with a tape.</summary>
/// <param name="What">What is measured.</param>
/// <param name="Steps">The steps in order.</param>
public sealed record Measuring(string What, IReadOnlyList<string> Steps)
{
    /// <summary>Said before any of them.</summary>
    public const string Caution = "If raising the arm hurts, do not: take arm span and sitting eye height instead, and have " +
        "the shoulder seen to.";

    /// <summary>Seated reach, the measure that counts most.</summary>
    public static readonly Measuring SeatedReach = new("Seated reach",
    [
        "Sit upright on a hard, level stool or box with one shoulder beside a wall, feet flat, both sit bones down.",
        "Hold a pencil across the middle of the palm, as you would hold the top of the grip. Raise that arm straight up beside the " +
            "ear, relaxed: the shoulder not pushed up, the hip not hitched.",
        "Mark the wall with the pencil, and mark the wall level with the seat under you.",
        "Stand up and measure from the lower mark to the upper one. Do it three times and keep the middle one.",
    ]);

    /// <summary>The same to the fingertip, with the hand.</summary>
    public static readonly Measuring OverheadReach = new("Overhead fingertip reach, with hand and palm",
    [
        "Sit as for the reach. Raise the arm straight up beside the ear, hand open and relaxed, the shoulder not pushed up. Mark the " +
            "wall at the tip of the middle finger, and measure from the seat.",
        "Lay the hand flat on a ruler: from the crease of the wrist to the tip of the middle finger (hand), and to where that " +
            "finger begins (palm).",
    ]);

    /// <summary>Arm span.</summary>
    public static readonly Measuring ArmSpan = new("Arm span",
    [
        "Stand with your back to a wall, one middle finger in a corner of the room, both arms stretched out level as far as they go. " +
            "Mark the wall at the other middle finger, and measure from the corner.",
    ]);

    /// <summary>The segments of the reach.</summary>
    public static readonly Measuring Segments = new("Segments, if no arm can be raised or stretched",
    [
        "Sitting shoulder height: sit with the side of the shoulder to a wall, lay a book level on the bony tip of the shoulder, mark " +
            "the wall, measure down to the seat.",
        "Shoulder-elbow: bend the elbow to 90°; from the bony tip of the shoulder down to the bottom of the elbow.",
        "Elbow-grip: same bend, fist around a pencil; from the back of the elbow to the pencil.",
    ]);

    /// <summary>Stature.</summary>
    public static readonly Measuring Stature = new("Stature",
    [
        "Without shoes, heels to a wall, look straight ahead; lay a book level on the head, mark the wall, measure to the floor.",
    ]);

    /// <summary>Sitting eye height.</summary>
    public static readonly Measuring EyeHeight = new("Sitting eye height",
    [
        "Sit upright beside a mirror or a wall, look straight ahead, mark the wall level with the outer corner of the eye, " +
            "measure down to the seat.",
    ]);

    /// <summary>Shoulder breadth.</summary>
    public static readonly Measuring ShoulderBreadth = new("Shoulder breadth",
    [
        "Stand with your back to a door frame or a wall, and find the bony tip at the end of each shoulder. Mark both on the wall " +
            "with a straight book edge, and measure between the marks.",
    ]);

    /// <summary>Seat height in a hull.</summary>
    public static readonly Measuring SeatHeight = new("Seat height in a hull",
    [
        "With you (and the crew) sitting in it afloat, mark the waterline on the hull beside your seat with tape; in calm, " +
            "shallow, sheltered water.",
        "Ashore, level the hull, lay a straight batten across the seat where the sit bones go, and measure straight down " +
            "from it to the mark.",
    ]);

    /// <summary>A paddle's lengths.</summary>
    public static readonly Measuring Paddle = new("Paddle and blade",
    [
        "Overall length: stand the paddle against a wall on its blade tip; from the floor to the top of the grip, along the wall.",
        "Blade length: from the tip to the throat, where the blade has become shaft.",
    ]);

    /// <summary>The technique check.</summary>
    public static readonly Measuring Technique = new("Technique check",
    [
        "In sheltered water, have someone photograph you level from the side, from the bank or a dock, several strokes " +
            "at your usual effort.",
        "Take the picture in which the whole blade is just under. The shaft above the water gives the scale: overall length less " +
            "blade length, in inches.",
        "Measure how far the middle of the top hand is above (+) or below (−) the eye, and how many degrees the shaft leans from upright.",
        "By eye, without a photo: judge it against your own eye line at the moment the blade is buried; it counts for less.",
    ]);

    /// <summary>Everything, in the order of use.</summary>
    public static readonly IReadOnlyList<Measuring> All =
        [SeatedReach, OverheadReach, Stature, ArmSpan, EyeHeight, Segments, ShoulderBreadth, SeatHeight, Paddle, Technique];
}
