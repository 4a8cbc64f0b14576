namespace TrialLog.Recordings;

/// <summary>
/// Where the sun stands: the low-accuracy formulas of Meeus, Astronomical Algorithms, 2nd edition, chapters 12, 13 and 25; within 0.02°.
/// </summary>
internal static class Sun
{
    /// <summary>Degrees of the sun's centre above the horizon, without refraction.</summary>
    /// <param name="seconds">Since 1970-01-01T00:00:00Z.</param>
    /// <param name="latitude">Degrees north.</param>
    /// <param name="longitude">Degrees east.</param>
    public static double Elevation(double seconds, double latitude, double longitude)
    {
        double days = seconds / 86400 + 2440587.5 - 2451545.0;
        (double ascension, double declination) = Place(days);
        double sidereal = 280.46061837 + 360.98564736629 * days + longitude;
        double hour = double.DegreesToRadians(sidereal) - ascension, north = double.DegreesToRadians(latitude);
        return double.RadiansToDegrees(
            Math.Asin(Math.Sin(north) * Math.Sin(declination) + Math.Cos(north) * Math.Cos(declination) * Math.Cos(hour)));
    }

    /// <summary>Apparent right ascension and declination, radians, so many days after 2000-01-01T12:00.</summary>
    public static (double Ascension, double Declination) Place(double days)
    {
        double t = days / 36525, anomaly = double.DegreesToRadians(357.52911 + 35999.05029 * t - 0.0001537 * t * t);
        double centre = (1.914602 - 0.004817 * t) * Math.Sin(anomaly) + (0.019993 - 0.000101 * t) * Math.Sin(2 * anomaly)
            + 0.000289 * Math.Sin(3 * anomaly);
        double node = double.DegreesToRadians(125.04 - 1934.136 * t);
        double longitude = double.DegreesToRadians(280.46646 + 36000.76983 * t + centre - 0.00569 - 0.00478 * Math.Sin(node));
        double tilt = double.DegreesToRadians(23.439291 - 0.0130042 * t + 0.00256 * Math.Cos(node));
        return (Math.Atan2(Math.Cos(tilt) * Math.Sin(longitude), Math.Cos(longitude)), Math.Asin(Math.Sin(tilt) * Math.Sin(longitude)));
    }
}
