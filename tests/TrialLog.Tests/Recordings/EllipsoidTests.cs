using System.Globalization;
using CsCheck;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Recordings;

public class EllipsoidTests
{
    [Fact]
    public void Steps_agree_with_GeographicLib_at_every_latitude_and_course_over_the_poles_and_across_180_degrees()
    {
        string[] lines = File.ReadAllLines(Repository.PathOf("tests/reference/geodesic/steps.csv"));
        Assert.True(lines.Length > 100);
        Assert.All(lines.Skip(1), line =>
        {
            double[] step = [.. line.Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
            double metres = Ellipsoid.Distance(Ellipsoid.ToCartesian(step[0], step[1]), Ellipsoid.ToCartesian(step[2], step[3]));
            // A micrometre of rounding in the stored coordinates; and the arc's own error, which grows with the cube of the step.
            double allowed = 1e-6 + 0.012 * Math.Pow(step[4], 3) / (24 * 6.371e6 * 6.371e6);
            Assert.InRange(metres, step[4] - allowed, step[4] + allowed);
        });
    }

    [Fact]
    public void A_sphere_would_err_by_the_effect_that_is_sought()
    {
        // 100 m north and 100 m east at 20° north, in degrees by the sphere of mean radius.
        double degree = double.RadiansToDegrees(100 / 6_371_008.8);
        Point3 here = Ellipsoid.ToCartesian(20, 0);
        double north = Ellipsoid.Distance(here, Ellipsoid.ToCartesian(20 + degree, 0));
        double east = Ellipsoid.Distance(here, Ellipsoid.ToCartesian(20, degree / Math.Cos(double.DegreesToRadians(20))));
        Assert.True(100 * (east / north - 1) > 0.3, $"north {north}, east {east}");
    }

    [Fact]
    public void Distance_is_symmetric_and_obeys_the_triangle()
    {
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180], Gen.Double[-0.01, 0.01], Gen.Double[-0.01, 0.01], Gen.Double[-0.01, 0.01], Gen.Double[-0.01, 0.01])
            .Sample((latitude, longitude, dLatitude, dLongitude, eLatitude, eLongitude) =>
            {
                Point3 a = Ellipsoid.ToCartesian(latitude, longitude);
                Point3 b = Ellipsoid.ToCartesian(latitude + dLatitude, longitude + dLongitude);
                Point3 c = Ellipsoid.ToCartesian(latitude + eLatitude, longitude + eLongitude);
                return Ellipsoid.Distance(a, b) == Ellipsoid.Distance(b, a)
                    && Ellipsoid.Distance(a, c) <= Ellipsoid.Distance(a, b) + Ellipsoid.Distance(b, c) + 1e-6;
            });
    }
}
