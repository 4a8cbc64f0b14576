using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings;
using TrialLog.TestData.Recordings.Fuzzing;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.Tests.Recordings;

public class MatchingTests
{
    private static readonly RecordedOuting Outing = Recorded.Read(
        new OutingPlan { Speeds = [3, 3.05, 3.02, 3], Current = 0.2, Watch = new WatchFaults { NoiseFactor = 0.3 } });

    [Theory]
    [InlineData(3, "drop or merge")]
    [InlineData(6, "add, keep or split")]
    public void Another_number_of_pieces_than_the_cards_is_asked_about_and_nothing_is_guessed(int lengths, string hint)
    {
        Assert.Empty(Outing.For(new PieceCard(4, Distance.FromMetres(1000))).Questions);
        RecordingQuestion question = Assert.Single(Outing.For(new PieceCard(lengths, Distance.FromMetres(1000))).Questions);
        Assert.Equal((QuestionKind.Count, false), (question.Kind, question.CanBeConfirmed));
        Assert.Contains(hint, question.Says);
        Assert.Contains($"The card has {lengths} pieces, the recording shows 4", question.Says);
        Assert.Contains($"There are lengths for {lengths} pieces, the recording shows 4",
            Outing.For(new PieceCard(lengths)).Questions[0].Says);
    }

    [Fact]
    public void A_file_and_its_gzipped_copy_are_the_same_recording()
    {
        byte[] file = Repository.Bytes("sample-sessions/recordings/ilse-round-trips-laps.fit");
        RecordedOuting plain = RecordingReader.Read(new MemoryStream(file), "a.fit");
        RecordedOuting packed = RecordingReader.Read(new MemoryStream(DamagedFiles.Gzip(file)), "b.gz");
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(file)), plain.Hash);
        Assert.Equal(plain.Hash, packed.Hash);
        Assert.Equal(RecordingFormat.Fit, packed.Format);
    }

    [Theory]
    [InlineData("ilse-round-trips-laps.fit", RecordingFormat.Fit, 4, Course.RoundTrip, true)]
    [InlineData("bram-round-trips.gpx.gz", RecordingFormat.Gpx, 4, Course.RoundTrip, false)]
    [InlineData("tova-one-way-laps.tcx.gz", RecordingFormat.Tcx, 6, null, true)]
    public void The_sample_recordings_show_what_they_say(string name, RecordingFormat format, int pieces, Course? course, bool laps)
    {
        using FileStream file = File.OpenRead(Repository.File("sample-sessions/recordings/" + name));
        RecordedOuting outing = RecordingReader.Read(file, name);
        Assert.Equal(format, outing.Format);
        Assert.Equal(laps, outing.HasPressedLaps);
        Assert.Equal(pieces, outing.Kept.Count);
        Assert.Equal(
            course is Course same ? Enumerable.Repeat(same, pieces)
                : Enumerable.Range(0, pieces).Select(i => i % 2 == 0 ? Course.Out : Course.Back),
            outing.Kept.Select(p => p.Course));
    }

    [Fact]
    public void The_sample_recordings_are_what_the_study_program_makes()
    {
        Assert.All(SampleRecordings.All(), sample =>
            Assert.True(Unpacked(sample.Bytes).SequenceEqual(Repository.Bytes("sample-sessions/recordings/" + sample.Name)), sample.Name));
    }

    [Fact]
    public void Local_time_is_the_files_own_else_the_given_zones_where_the_sun_agrees_else_the_suns()
    {
        var plan = new OutingPlan { Speeds = [3], Leg = 200, Watch = WatchFaults.None };
        SimulatedOuting simulated = Simulator.Run(plan, 1);
        DateTimeOffset start = plan.Start;
        RecordedOuting told = Recorded.Read(simulated);
        Assert.Equal(start, told.StartedAt);
        Assert.Equal(start.Offset, told.StartedAt.Offset);
        Assert.Equal(new TimeOnly(16, 0), told.Time);
        Assert.Contains("as the recording tells", told.ClockNote);

        byte[] untold = FitWriter.Activity(simulated.Recorded, [], null);
        TimeSpan At(TimeZoneInfo? zone) => RecordingReader.Read(new MemoryStream(untold), "x", zone).StartedAt.Offset;
        TimeZoneInfo Zone(double hours) => TimeZoneInfo.CreateCustomTimeZone("made", TimeSpan.FromHours(hours), "made", "made");
        Assert.Equal(TimeSpan.FromHours(-10), At(null));
        Assert.Equal(TimeSpan.FromHours(-9.5), At(Zone(-9.5)));
        Assert.Equal(TimeSpan.FromHours(-10), At(Zone(2)));
        Assert.Equal(TimeSpan.FromHours(14), At(Zone(14)));
    }

    [Fact]
    public void No_coordinate_is_to_be_had_from_an_outing()
    {
        IEnumerable<Type> seen = new[] { typeof(RecordedOuting), typeof(PieceProposal), typeof(Leg), typeof(SpeedPoint) };
        Assert.DoesNotContain(seen.SelectMany(t => t.GetProperties()), p =>
            p.Name.Contains("itude", StringComparison.Ordinal) || p.Name is "East" or "North" or "Track");
    }

    private static byte[] Unpacked(byte[] bytes) => [.. FileBytes.ReadAll(new MemoryStream(bytes))];
}
