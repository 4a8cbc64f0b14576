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
    public const int Lap = 19, Record = 20, Activity = 34;

    // Fields of any message.
    public const int Timestamp = 253;

    // Fields of a record.
    public const int Latitude = 0, Longitude = 1, HeartRate = 3, Cadence = 4, Speed = 6, Cadence256 = 52, FractionalCadence = 53, EnhancedSpeed = 73;

    // Fields of a lap.
    public const int LapStart = 2, LapElapsed = 7, LapTrigger = 24;

    // Field of an activity: the local time at its timestamp.
    public const int LocalTimestamp = 5;

    // A lap trigger: the paddler pressed.
    public const int Manual = 0;
}
