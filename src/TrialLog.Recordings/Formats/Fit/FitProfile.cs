using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Formats.Fit;

/// <summary>The message and field numbers of the FIT profile that a recording of an outing needs.</summary>
internal static class FitProfile
{
    /// <summary>Seconds from 1970-01-01 to the protocol's own start of time, 1989-12-31T00:00:00Z.</summary>
    public const double Epoch = 631_065_600;

    /// <summary>Times below this are seconds since the device was switched on, not dates.</summary>
    public const uint FirstDate = 0x1000_0000;

    /// <summary>Degrees in one semicircle unit: 180 / 2³¹.</summary>
    public const double DegreesPerSemicircle = 180.0 / 2147483648.0;

    // Messages.
    public const int Sport = 12, Session = 18, Lap = 19, Record = 20, WorkoutStep = 27, Activity = 34;

    // Fields of any message.
    public const int Timestamp = 253;

    // Fields of a record.
    public const int Latitude = 0, Longitude = 1, HeartRate = 3, Cadence = 4, Speed = 6, Cadence256 = 52, FractionalCadence = 53,
        EnhancedSpeed = 73;

    // Fields of a lap.
    public const int LapStart = 2, LapElapsed = 7, LapIntensity = 23, LapTrigger = 24, LapStep = 71;

    // Fields of a session, and of a sport message.
    public const int SessionSport = 5, SportSport = 0;

    // Fields of a step of a workout.
    public const int MessageIndex = 254, StepName = 0, StepIntensity = 7;

    // Field of an activity: the local time at its timestamp.
    public const int LocalTimestamp = 5;

    // A lap trigger: the paddler pressed.
    public const int Manual = 0;

    // The profile's sports that are no paddling and are told apart by what they are; others are told by number. Those of the water: 15
    // rowing, 19 paddling, 37 stand-up paddling, 41 kayaking, 42 rafting.
    private static readonly Dictionary<long, string> Sports = new()
    {
        [1] = "running", [2] = "cycling", [5] = "swimming", [11] = "walking", [12] = "skiing", [13] = "skiing", [16] = "mountaineering",
        [17] = "hiking", [15] = "rowing", [19] = "paddling", [20] = "flying", [21] = "cycling", [22] = "motorcycling", [23] = "boating",
        [24] = "driving", [32] = "sailing", [37] = "stand-up paddling", [41] = "kayaking", [42] = "rafting",
    };

    /// <summary>The word for a sport's number; null for one without a word here.</summary>
    public static string? SportOf(long? number) => number is long known ? Sports.GetValueOrDefault(known) : null;

    /// <summary>What a lap's or a step's intensity means.</summary>
    public static LapKind KindOf(long? intensity) => intensity switch
    {
        0 or 5 => LapKind.Active,
        1 or 4 => LapKind.Rest,
        2 or 3 => LapKind.Easy,
        _ => LapKind.Untold,
    };
}
