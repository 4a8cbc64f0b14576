namespace TrialLog.Recordings;

/// <summary>Chooses the local time of a recording, whose own clock is UTC.</summary>
internal static class LocalClock
{
    // Time zones stray this far from the sun's, summer time counted.
    private const double MostHoursFromSun = 3.5;

    /// <summary>
    /// The offset the file tells; else the given time zone's, if the sun is near enough to it at the start; else the
    /// nautical zone of the longitude: whole hours, 15° each.
    /// </summary>
    /// <param name="start">Start, seconds since 1970.</param>
    /// <param name="told">The offset in the file, if any.</param>
    /// <param name="longitude">Degrees east at the start.</param>
    /// <param name="home">The user's time zone, if known.</param>
    public static (DateTimeOffset StartedAt, string Note) Choose(double start, TimeSpan? told, double longitude, TimeZoneInfo? home)
    {
        DateTimeOffset utc = DateTimeOffset.UnixEpoch.AddSeconds(Math.Floor(start));
        if (told is TimeSpan offset)
            return (utc.ToOffset(offset), "Local time as the recording tells it.");
        if (home is not null && Math.Abs(Around(home.GetUtcOffset(utc).TotalHours - longitude / 15)) <= MostHoursFromSun)
            return (utc.ToOffset(home.GetUtcOffset(utc)), "Local time by this computer's time zone; the recording tells only UTC.");
        return (utc.ToOffset(TimeSpan.FromHours(Math.Round(longitude / 15))), "Local time by the sun, to the hour; the recording tells only UTC.");
    }

    private static double Around(double hours) => hours - 24 * Math.Round(hours / 24);
}
