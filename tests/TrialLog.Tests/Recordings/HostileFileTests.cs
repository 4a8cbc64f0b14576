using System.IO.Compression;
using System.Text;
using TrialLog.Plots;
using TrialLog.Recordings;
using TrialLog.Recordings.Files;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Fuzzing;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.Tests.Recordings;

public class HostileFileTests
{
    private static readonly IReadOnlyList<byte[]> SoundFiles = DamagedFiles.SoundFiles();

    [Fact]
    public void Damaged_files_give_pieces_or_one_clear_sentence_and_never_another_exception()
    {
        for (int seed = 1; seed <= 1500; seed++)
        {
            FuzzResult result = DamagedFiles.Try(DamagedFiles.Make(SoundFiles, seed), seed);
            Assert.True(result.Failure is null, $"seed {seed}: {result.Failure}");
        }
    }

    [Fact]
    public void A_FIT_file_cut_off_anywhere_or_with_any_byte_changed_is_refused()
    {
        byte[] file = FitWriter.Activity(
            [.. Simulator.Run(new OutingPlan { Speeds = [3], Leg = 100, WarmUp = 20 }, 3).Recorded.Take(40)], [], null);
        for (int i = 0; i < file.Length; i++)
        {
            Refused(file[..i]);
            byte[] changed = [.. file];
            changed[i] ^= 0x20;
            // A header check of nothing means none was made; the check at the end still holds.
            Refused(changed);
        }
    }

    [Fact]
    public void An_XML_file_cut_off_anywhere_is_refused()
    {
        byte[] file = SoundFiles[0];
        for (int length = 0; length < file.Length - 8; length += 97)
            Refused(file[..length]);
    }

    [Theory]
    [InlineData("<!DOCTYPE gpx [<!ENTITY a \"ha\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;\">]><gpx>&b;</gpx>")]
    [InlineData("<!DOCTYPE gpx [<!ENTITY a SYSTEM \"file:///etc/hostname\">]><gpx><trk>&a;</trk></gpx>")]
    [InlineData("<!DOCTYPE gpx SYSTEM \"http://127.0.0.1:9/x.dtd\"><gpx/>")]
    public void Document_types_and_entities_are_refused(string text) =>
        Assert.Contains("document type", Refused(Encoding.UTF8.GetBytes(text)));

    [Fact]
    public void A_gzipped_bomb_is_refused_before_it_unpacks()
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            byte[] nothing = new byte[1024 * 1024];
            for (int i = 0; i < 400; i++)
                gzip.Write(nothing);
        }

        packed.Position = 0;
        Assert.Contains("larger than", Assert.Throws<RecordingException>(() => RecordingReader.Read(packed, "bomb.fit.gz")).Message);
    }

    [Fact]
    public void An_endless_stream_is_refused() =>
        Assert.Contains("larger than", Assert.Throws<RecordingException>(() => RecordingReader.Read(new Endless(), "endless")).Message);

    [Fact]
    public void A_tag_of_absurd_size_and_a_nest_of_absurd_depth_are_refused()
    {
        Assert.Contains("absurd", Refused(Encoding.UTF8.GetBytes("<gpx creator=\"" + new string('a', 5_000_000) + "\"/>")));
        Refused(Encoding.UTF8.GetBytes("<gpx>" + string.Concat(Enumerable.Repeat("<a>", 1_000_000))));
    }

    [Theory]
    [InlineData("")]
    [InlineData("hull,date\nOC1,2026-05-01\n")]
    [InlineData("<html><body>404</body></html>")]
    [InlineData("<gpx version=\"1.1\"></gpx>")]
    [InlineData("<gpx><trk><trkseg/></trk></gpx>")]
    [InlineData("<gpx><trk><trkseg><trkpt lat=\"1\" lon=\"2\"/><trkpt lat=\"1\" lon=\"2.001\"/></trkseg></trk></gpx>")]
    [InlineData("<TrainingCenterDatabase/>")]
    public void What_holds_no_recorded_track_is_refused(string text) => Refused(Encoding.UTF8.GetBytes(text));

    [Fact]
    public void An_empty_FIT_activity_is_refused() => Assert.Contains("no track points", Refused(FitWriter.Activity([], [], null)));

    [Fact]
    public void The_refusal_names_the_file_and_cannot_drive_a_terminal()
    {
        string message = Assert.Throws<RecordingException>(
            () => RecordingReader.Read(new MemoryStream(), "/some/where/\u001b[2Jx.fit")).Message;
        Assert.StartsWith("“", message);
        Assert.DoesNotContain('\u001b', message);
        Assert.DoesNotContain("where", message);
    }

    private static string Refused(byte[] file) =>
        Assert.Throws<RecordingException>(() => RecordingReader.Read(new MemoryStream(file), "hostile")).Message;

    private sealed class Endless : Stream
    {
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }
        public override int Read(byte[] buffer, int offset, int count)
        {
            Array.Fill(buffer, (byte)'<', offset, count);
            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
