using TrialLog.Recordings;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.Tests.Recordings;

/// <summary>Alone, so that processor time is this test's own.</summary>
[CollectionDefinition(nameof(LongDayTests), DisableParallelization = true)]
[Collection(nameof(LongDayTests))]
public class LongDayTests
{
    [Fact]
    public void A_day_at_one_sample_a_second_is_read_within_two_seconds_and_300_MB_in_every_format()
    {
        IReadOnlyList<RecordedPoint> day = LongDay.Points(24);
        foreach (byte[] file in new[] { FitWriter.Activity(day, [], null), XmlWriting.Gpx(day, "day"), XmlWriting.Tcx(day, []) })
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            TimeSpan start = Environment.CpuUsage.TotalTime;
            RecordedOuting outing = RecordingReader.Read(new MemoryStream(file), "day");
            Assert.InRange((Environment.CpuUsage.TotalTime - start).TotalSeconds, 0, 2);
            // All that was ever allocated, which is more than was ever held at once.
            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before + file.Length, 0, 300_000_000);
            Assert.True(outing.Kept.Count > 50);
        }
    }

    [Fact]
    public void Two_days_of_turning_about_every_minute_do_not_take_longer()
    {
        // Some 2,800 legs: what is compared leg with leg must not grow with the cube of their number.
        double latitude = 12.3;
        List<RecordedPoint> points = [.. Enumerable.Range(0, 47 * 3600).Select(i =>
        {
            (latitude, _) = Water.Moved(latitude, -150.6, (3 + 0.4 * (i / 60 % 7) / 7) * (i / 60 % 2 == 0 ? 1 : -1), 0);
            return new RecordedPoint(1_777_000_000 + i, latitude, -150.6, 140, 60);
        })];
        byte[] file = FitWriter.Activity(points, [], null);
        TimeSpan start = Environment.CpuUsage.TotalTime;
        RecordedOuting outing = RecordingReader.Read(new MemoryStream(file), "turning");
        Assert.InRange((Environment.CpuUsage.TotalTime - start).TotalSeconds, 0, 4);
        Assert.True(outing.Proposals.Count > 1000);
    }
}
