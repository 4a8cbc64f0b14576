using CsCheck;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;

namespace TrialLog.Tests.Recordings;

public class TrackTests
{
    private static readonly Gen<int[]> Times = Gen.Int[0, 12].Array[0, 9];

    [Fact]
    public void No_longer_run_of_increasing_times_can_be_kept_and_every_sample_is_accounted_for()
    {
        Times.Sample(times =>
        {
            (List<RecordedSample> kept, int duplicates, int backward) = IncreasingTimes.Of(
                [.. times.Select(t => new RecordedSample(t, 0, 0, 0, 0, 0))]);
            double[] run = [.. kept.Select(s => s.Time)];
            int longest = Enumerable.Range(0, 1 << times.Length)
                .Select(mask => times.Where((_, i) => (mask >> i & 1) == 1).ToArray())
                .Where(some => some.Zip(some.Skip(1)).All(p => p.First < p.Second))
                .Max(some => some.Length);
            return run.Length == longest && run.Zip(run.Skip(1)).All(p => p.First < p.Second)
                && run.Length + duplicates + backward == times.Length && duplicates >= 0 && backward >= 0;
        });
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1.5)]
    [InlineData(3)]
    public void Noise_does_not_inflate_the_distance(double jitter)
    {
        // Ten straight courses of 3 km: the mean error tells the bias.
        var random = new Random(9);
        var errors = new List<double>();
        double raw = 0;
        for (int run = 0; run < 10; run++)
        {
            var points = new List<RecordedPoint>();
            double latitude = 40, longitude = 20;
            for (int i = 0; i < 1000; i++)
            {
                (double noisyLatitude, double noisyLongitude) = Water.Moved(
                    latitude, longitude, jitter * Noise.Normal(random), jitter * Noise.Normal(random));
                points.Add(new RecordedPoint(1_777_000_000 + i, noisyLatitude, noisyLongitude, 140, 60));
                (latitude, longitude) = Water.Moved(latitude, longitude, 3 * Math.Cos(run), 3 * Math.Sin(run));
            }

            Track track = Recorded.Read(points).Track;
            errors.Add(100 * ((track.Along[^30] - track.Along[30]) / (3 * (track.Seconds[^30] - track.Seconds[30])) - 1));
            raw += points.Zip(points.Skip(1)).Sum(p =>
                (Ellipsoid.ToCartesian(p.First.Latitude, p.First.Longitude)
                    - Ellipsoid.ToCartesian(p.Second.Latitude, p.Second.Longitude)).Norm);
        }

        // Adding up the noisy steps instead would be far out.
        Assert.True(raw / (10 * 999 * 3) > 1 + 0.02 * jitter * jitter);
        Assert.InRange(errors.Average(), -0.1, 0.1);
    }

    [Fact]
    public void Dropouts_jumps_duplicate_and_backward_times_are_counted_and_do_no_harm()
    {
        List<RecordedPoint> points = Recorded.OutAndBack(3, 3, 600);
        RecordedOuting sound = Recorded.Read(points);
        Assert.True(sound.Mended.IsNothing);

        var spoiled = new List<RecordedPoint>(points);
        spoiled[100] = spoiled[100] with { Latitude = spoiled[100].Latitude + 0.01 };
        spoiled[180] = spoiled[180] with { Time = spoiled[180].Time - 500 };
        spoiled[190] = spoiled[190] with { Latitude = double.NaN };
        spoiled.Insert(200, spoiled[200]);
        spoiled.RemoveRange(140, 20);
        RecordedOuting mended = Recorded.Read(spoiled);
        Assert.Equal(
            new Mended { Dropouts = 1, DropoutSeconds = 20, Jumps = 1, BackwardTimes = 1, DuplicateTimes = 1, WithoutPosition = 1 },
            mended.Mended);
        Assert.Equal(sound.Kept[0].MetresPerSecond, mended.Kept[0].MetresPerSecond, 0.002);
        Assert.Contains("1 dropout (20 s in all)", mended.Mended.ToString());
        Assert.Contains(mended.Kept[0].Remarks, r => r.Contains("lost its position for 21 s", StringComparison.Ordinal));
        Assert.Empty(sound.Kept[0].Remarks);
    }

    [Theory]
    [InlineData(0.0, 179.999)]
    [InlineData(89.998, 10)]
    [InlineData(-89.998, -170)]
    public void Poles_and_the_180_degree_meridian_are_nothing_special(double latitude, double longitude)
    {
        var points = new List<RecordedPoint>();
        double origin = 0;
        // A straight line through the place by the chord between two Cartesian points, 3 m a second.
        Point3 centre = Ellipsoid.ToCartesian(latitude, longitude);
        Point3 ahead = Ellipsoid.ToCartesian(
            latitude > 80 ? 90 : latitude < -80 ? -90 : latitude, latitude is > 80 or < -80 ? longitude : -179.999);
        Point3 step = 3 / (ahead - centre).Norm * (ahead - centre);
        for (int i = -150; i < 150; i++)
        {
            Point3 at = centre + i * step;
            // The reverse of the Cartesian formula for points on the ellipsoid itself.
            const double e2 = 0.0066943799901413165;
            double lat = Math.Atan2(at.Z / (1 - e2), Math.Sqrt(at.X * at.X + at.Y * at.Y));
            points.Add(
                new RecordedPoint(1_777_000_000 + origin++, double.RadiansToDegrees(lat),
                double.RadiansToDegrees(Math.Atan2(at.Y, at.X)), 140, 60));
        }

        Track track = Recorded.Read(points).Track;
        Assert.Equal(3 * 299, track.Along[^1], 0.5);
        Assert.All(track.Speed[20..^20], speed => Assert.InRange(speed, 2.99, 3.01));
    }

    [Fact]
    public void A_track_in_two_parts_has_no_distance_in_between()
    {
        RecordedOuting outing = Recorded.Read(Recorded.OutAndBack(3, 3, 900, lost: null).Where((_, i) => i is < 150 or > 330).ToList());
        Assert.Equal(2, outing.Track.Part.Distinct().Count());
        Assert.Contains(outing.SpeedSeries(100), p => p.MetresPerSecond is null);
        Assert.InRange(outing.Track.Along[^1], 1250, 1262);
    }
}
