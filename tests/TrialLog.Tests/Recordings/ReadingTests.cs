using CsCheck;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Formats.Fit;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.Tests.Recordings;

public class ReadingTests
{
    private static readonly Gen<RecordedPoint[]> Points =
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-179.99, 179.99], Gen.Int[30, 220], Gen.Int[0, 120], Gen.Int[1, 40])
            .Array[1, 50]
            .Select(all =>
            {
                double time = 1_777_000_000;
                return all.Select(p => new RecordedPoint(time += p.Item5, p.Item1, p.Item2, p.Item3, p.Item4)).ToArray();
            });

    [Fact]
    public void A_FIT_file_gives_back_what_was_written_in_either_byte_order_with_and_without_compressed_times()
    {
        Gen.Select(Points, Gen.Bool, Gen.Bool).Sample((points, big, compressed) =>
            Same(points, FitFormat.Read(FitWriter.Activity(points, [], null, big, compressed)), 180 / 2147483648.0));
    }

    [Fact]
    public void GPX_and_TCX_files_give_back_what_was_written()
    {
        Points.Sample(points =>
            Same(points, GpxFormat.Read(XmlWriting.Gpx(points, "x")), 1e-7)
                && Same(points, TcxFormat.Read(XmlWriting.Tcx(points, [])), 1e-7));
    }

    [Fact]
    public void FIT_messages_and_fields_it_does_not_know_are_stepped_over()
    {
        var writer = new FitWriter();
        writer.Define(0, 20, [(200, 7, 0x07), (253, 4, 0x86), (0, 4, 0x85), (99, 8, 0x8F), (1, 4, 0x85)], developer: [(0, 3, 0)]);
        writer.Define(1, 777, [(1, 5, 0x0D)]);
        writer.Message(1, [1, 2, 3, 4, 5], [1, 1, 1, 1, 1]);
        writer.Message(0, [0, 1_100_000_000, 100_000_000, -1, -200_000_000, 7], [7, 4, 4, 8, 4, 3]);
        RecordedSample sample = Assert.Single(FitFormat.Read(writer.ToFile()).Samples);
        Assert.Equal(631_065_600 + 1_100_000_000.0, sample.Time);
        Assert.Equal(100_000_000 * (180 / 2147483648.0), sample.Latitude, 12);
        Assert.Equal(-200_000_000 * (180 / 2147483648.0), sample.Longitude, 12);
        Assert.True(float.IsNaN(sample.HeartRate));
    }

    [Fact]
    public void FIT_values_marked_invalid_are_not_values()
    {
        var point = new RecordedPoint(1_777_000_000, double.NaN, double.NaN, double.NaN, double.NaN);
        RecordedSample sample = Assert.Single(FitFormat.Read(FitWriter.Activity([point], [], null)).Samples);
        Assert.False(sample.HasPosition);
        Assert.True(float.IsNaN(sample.HeartRate) && float.IsNaN(sample.Cadence) && float.IsNaN(sample.Speed));
    }

    [Fact]
    public void FIT_files_one_after_the_other_are_read_as_one()
    {
        Gen.Select(Points, Points).Sample((first, second) =>
            Same([.. first, .. second],
                FitFormat.Read((byte[])[.. FitWriter.Activity(first, [], null), .. FitWriter.Activity(second, [], null, bigEndian: true)]),
                180 / 2147483648.0));
    }

    [Fact]
    public void The_FIT_check_value_of_the_nine_digits_is_that_of_CRC_16_ARC()
    {
        // Catalogue of parametrised CRC algorithms (Cook): CRC-16/ARC, check = 0xbb3d.
        Assert.Equal(0xBB3D, FitChecksum.Of("123456789"u8));
    }

    [Fact]
    public void A_pressed_lap_is_told_from_one_by_the_device()
    {
        var points = Enumerable.Range(0, 100).Select(i => new RecordedPoint(1_777_000_000 + i, 1, 1 + i * 1e-5, 100, 50)).ToList();
        foreach (Recording recording in new[]
        {
            FitFormat.Read(FitWriter.Activity(points, [1_777_000_030, 1_777_000_060], null)),
            TcxFormat.Read(XmlWriting.Tcx(points, [1_777_000_030, 1_777_000_060])),
        })
        {
            Assert.Equal([true, true, false], recording.Laps.Select(l => l.Pressed));
            Assert.Equal([1_777_000_030.0, 1_777_000_060], recording.Laps.Take(2).Select(l => l.End));
        }
    }

    [Theory]
    [InlineData("2026-05-01T06:00:00Z", 1777615200.0, null)]
    [InlineData("2026-05-01T06:00:00.25", 1777615200.25, null)]
    [InlineData("2026-05-01T08:00:00+02:00", 1777615200.0, 120)]
    [InlineData("2026-04-30T20:00:00-1000", 1777615200.0, -600)]
    [InlineData("2026-05-01T05:59:60Z", 1777615200.0, null)]
    public void Times_are_read_as_XML_writes_them(string text, double seconds, int? minutes)
    {
        Assert.True(IsoTime.TryRead(text, out double read, out TimeSpan? offset));
        Assert.Equal(seconds, read);
        Assert.Equal(minutes, (int?)offset?.TotalMinutes);
    }

    [Theory]
    [InlineData("")]
    [InlineData("2026-05-01")]
    [InlineData("2026-02-30T06:00:00Z")]
    [InlineData("2026-05-01T25:00:00Z")]
    [InlineData("2026-05-01T06:00:00+15:00")]
    [InlineData("2026-05-01T06:00:00 yesterday")]
    public void What_is_no_time_is_not_read_as_one(string text) => Assert.False(IsoTime.TryRead(text, out _, out _));

    private static bool Same(RecordedPoint[] written, Recording read, double degrees) =>
        written.Length == read.Samples.Count && written.Zip(read.Samples).All(pair =>
            Math.Abs(pair.First.Time - pair.Second.Time) < 1e-3
            && Math.Abs(pair.First.Latitude - pair.Second.Latitude) <= degrees
            && Math.Abs(pair.First.Longitude - pair.Second.Longitude) <= degrees
            && pair.First.HeartRate == pair.Second.HeartRate
            && pair.First.Cadence == pair.Second.Cadence);
}
