namespace TrialLog.Recordings.Tracks;

/// <summary>
/// The WGS-84 ellipsoid (a = 6,378,137 m, 1/f = 298.257223563; NIMA TR8350.2). Positions become Cartesian points on it,
/// where neither the poles nor the 180° meridian are special. The way of a second is the chord: of 12 m it is shorter than
/// the arc by 2 picometres.
/// </summary>
internal static class Ellipsoid
{
    private const double SemiMajorAxis = 6_378_137;
    private const double Flattening = 1 / 298.257223563;
    private const double EccentricitySquared = Flattening * (2 - Flattening);

    /// <summary>The point on the ellipsoid at that latitude and longitude, in degrees; metres from the Earth's centre.</summary>
    public static Point3 ToCartesian(double latitude, double longitude)
    {
        (double sinLatitude, double cosLatitude) = Math.SinCos(double.DegreesToRadians(latitude));
        (double sinLongitude, double cosLongitude) = Math.SinCos(double.DegreesToRadians(longitude));
        double normal = SemiMajorAxis / Math.Sqrt(1 - EccentricitySquared * sinLatitude * sinLatitude);
        return new Point3(
            normal * cosLatitude * cosLongitude,
            normal * cosLatitude * sinLongitude,
            normal * (1 - EccentricitySquared) * sinLatitude);
    }
}

/// <summary>A point or a difference of points, in metres.</summary>
internal readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>Its length.</summary>
    public double Norm => Math.Sqrt(X * X + Y * Y + Z * Z);

    /// <summary>The scalar product.</summary>
    public double Dot(Point3 other) => X * other.X + Y * other.Y + Z * other.Z;

    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Point3 operator *(double factor, Point3 a) => new(factor * a.X, factor * a.Y, factor * a.Z);
}
