using System.Globalization;
using TrialLog.Recordings.Pieces;

namespace TrialLog.Recordings;

/// <summary>Chooses the local time of a recording, whose own clock is UTC.</summary>
internal static class LocalClock
{
    // Time zones stray this far from the sun's, summer time counted.
    private const double MostHoursFromSun = 3.5;

    // Nautical darkness; and civil twilight, in which one can paddle.
    private const double Dark = -12, Light = -6;

    /// <summary>
    /// The offset the file tells, else the given time zone's, each only if the sun is near enough to it at the start; else the
    /// nautical zone of the longitude: whole hours, 15° each.
    /// </summary>
    /// <param name="start">Start, seconds since 1970.</param>
    /// <param name="told">The offset in the file, if any.</param>
    /// <param name="longitude">Degrees east at the start.</param>
    /// <param name="home">The user's time zone, if known.</param>
    public static (DateTimeOffset StartedAt, string Note) Choose(double start, TimeSpan? told, double longitude, TimeZoneInfo? home)
    {
        DateTimeOffset utc = DateTimeOffset.UnixEpoch.AddSeconds(Math.Floor(start));
        if (told is TimeSpan offset && IsNearSun(offset))
            return (utc.ToOffset(offset), "Local time as the recording tells it.");
        string why = told is null ? "the recording tells only UTC" : "what the recording tells is far from the sun's";
        return home is not null && IsNearSun(home.GetUtcOffset(utc))
            ? (utc.ToOffset(home.GetUtcOffset(utc)), $"Local time by this computer's time zone; {why}.")
            : (utc.ToOffset(TimeSpan.FromHours(Math.Round(longitude / 15))), $"Local time by the sun, to the hour; {why}.");

        bool IsNearSun(TimeSpan zone) => Math.Abs(Around(zone.TotalHours - longitude / 15)) <= MostHoursFromSun;
    }

    /// <summary>
    /// What to ask where the whole outing would lie in the dark, and would not if the device wrote its local time as UTC; null where
    /// nothing is.
    /// </summary>
    public static RecordingQuestion? Doubt(DateTimeOffset startedAt, double seconds, double latitude, double longitude)
    {
        double start = startedAt.ToUnixTimeSeconds(), shifted = start - startedAt.Offset.TotalSeconds;
        if (!Everywhere(start, at => at < Dark) || !Everywhere(shifted, at => at > Light))
            return null;
        string Clock(double at) => DateTimeOffset.UnixEpoch.AddSeconds(at).ToOffset(startedAt.Offset)
            .ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        return new RecordingQuestion(
            QuestionKind.Clock,
            $"By its clock it began on {Clock(start)}, in the dark. If the device writes local time as if it were UTC, it was " +
                $"{Clock(shifted)}. When was it?",
            CanBeConfirmed: true);

        bool Everywhere(double from, Func<double, bool> holds) =>
            holds(Sun.Elevation(from, latitude, longitude)) && holds(Sun.Elevation(from + seconds, latitude, longitude));
    }

    private static double Around(double hours) => hours - 24 * Math.Round(hours / 24);
}
