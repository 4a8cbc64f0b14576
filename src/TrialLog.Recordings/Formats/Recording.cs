using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Formats;

/// <summary>What a file said, before anything is mended.</summary>
internal sealed record Recording
{
    /// <summary>The most samples taken from one file: above five days at one a second.</summary>
    public const int MostSamples = 500_000;

    /// <summary>Samples in file order.</summary>
    public required IReadOnlyList<RecordedSample> Samples { get; init; }

    /// <summary>The numbers of the samples with which a new track, activity or file begins, in order; the first of all is none.</summary>
    public IReadOnlyList<int> Breaks { get; init; } = [];

    /// <summary>Whether the file's end is missing.</summary>
    public bool IsCutOff { get; init; }

    /// <summary>Laps in file order.</summary>
    public IReadOnlyList<LapMark> Laps { get; init; } = [];

    /// <summary>The steps of the workout that the watch led through, by their number.</summary>
    public IReadOnlyDictionary<int, RecordedStep> Steps { get; init; } = new Dictionary<int, RecordedStep>();

    /// <summary>What the file says was done, in lower-case words, such as <c>paddling</c>; null where it does not say.</summary>
    public string? Sport { get; init; }

    /// <summary>Local time less UTC, where the file told it.</summary>
    public TimeSpan? Offset { get; init; }
}

/// <summary>One sample. What was not given is <see cref="double.NaN"/>.</summary>
/// <param name="Time">Seconds since 1970-01-01T00:00:00Z.</param>
/// <param name="Latitude">Degrees north, −90 to 90.</param>
/// <param name="Longitude">Degrees east, −180 to 180.</param>
/// <param name="HeartRate">Beats a minute.</param>
/// <param name="Cadence">Strokes a minute.</param>
/// <param name="Speed">The device's own speed over ground, m/s.</param>
internal readonly record struct RecordedSample(double Time, double Latitude, double Longitude, float HeartRate, float Cadence, float Speed)
{
    /// <summary>Whether there is a position. Exactly 0, 0 is how devices write “no fix”.</summary>
    public bool HasPosition => Math.Abs(Latitude) <= 90 && Math.Abs(Longitude) <= 180 && (Latitude != 0 || Longitude != 0);

    /// <summary>Whether there is a time that a GPS watch can have had.</summary>
    public bool HasTime => Time is >= 631_152_000 and < 4_102_444_800; // 1990 to 2100
}

/// <summary>What a lap or a step of a workout was for.</summary>
internal enum LapKind
{
    /// <summary>The file does not say.</summary>
    Untold,

    /// <summary>Work.</summary>
    Active,

    /// <summary>Rest or recovery.</summary>
    Rest,

    /// <summary>Warm-up or cool-down.</summary>
    Easy,
}

/// <summary>A lap.</summary>
/// <param name="Start">When it began, seconds since 1970; NaN if not told.</param>
/// <param name="End">When it ended.</param>
/// <param name="Pressed">Whether the paddler pressed for it, rather than the device by distance, time or a workout's step.</param>
/// <param name="Kind">What it was for.</param>
/// <param name="Step">The number of the workout's step that it was; null where there was none.</param>
internal readonly record struct LapMark(double Start, double End, bool Pressed, LapKind Kind = LapKind.Untold, int? Step = null);

/// <summary>A step of a workout.</summary>
/// <param name="Name">Its name; null for none.</param>
/// <param name="Kind">What it is for.</param>
internal sealed record RecordedStep(string? Name, LapKind Kind);
