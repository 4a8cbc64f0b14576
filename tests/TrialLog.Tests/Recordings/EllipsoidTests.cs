using System.Globalization;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;

namespace TrialLog.Tests.Recordings;

public class EllipsoidTests
{
    [Fact]
    public void The_way_along_a_track_agrees_with_GeographicLib_at_every_latitude_and_course()
    {
        // Each pair of places is paddled at an even speed and read as a recording. Near the poles and across 180° the way between two
        // places is no straight line in degrees; TrackTests go there.
        double[][] steps = [.. File.ReadAllLines(Repository.File("tests/reference/geodesic/steps.csv")).Skip(1)
            .Select(line => line.Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray())
            .Where(step => step[4] is >= 100 and <= 5000 && Math.Abs(step[0]) < 80 && Math.Abs(step[2]) < 80
                && Math.Abs(step[1] - step[3]) < 1)];
        Assert.True(steps.Length >= 25);
        Assert.All(steps, step =>
        {
            int seconds = (int)(step[4] / 2.5);
            var points = Enumerable.Range(0, seconds + 1)
                .Select(i => new RecordedPoint(1_777_000_000 + i, At(step[0], step[2], i), At(step[1], step[3], i), 140, 60));
            double At(double from, double to, int i) => from + (to - from) * i / seconds;
            // A recording tells coordinates to 1e-7 degrees or so, a centimetre.
            Assert.Equal(step[4], Recorded.Read([.. points]).Track.Along[^1], 0.03);
        });
    }

    [Fact]
    public void A_sphere_would_err_by_the_effect_that_is_sought()
    {
        // 100 m north and 100 m east at 20° north, in degrees by the sphere of mean radius.
        double degree = double.RadiansToDegrees(100 / 6_371_008.8);
        Point3 here = Ellipsoid.ToCartesian(20, 0);
        double north = (here - Ellipsoid.ToCartesian(20 + degree, 0)).Norm;
        double east = (here - Ellipsoid.ToCartesian(20, degree / Math.Cos(double.DegreesToRadians(20)))).Norm;
        Assert.True(100 * (east / north - 1) > 0.3, $"north {north}, east {east}");
    }
}
