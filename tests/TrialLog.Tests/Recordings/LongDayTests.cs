using TrialLog.Recordings;
using TrialLog.Study.Recordings;

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
}
