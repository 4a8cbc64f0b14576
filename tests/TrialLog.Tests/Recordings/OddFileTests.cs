using System.Text;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;
using TrialLog.Tests.Tuning.References;

namespace TrialLog.Tests.Recordings;

/// <summary>Files as devices and services really write them, and clocks that are not what they say.</summary>
public class OddFileTests
{
    private static readonly SimulatedOuting Morning = Simulator.Run(
        new OutingPlan
        {
            Start = new DateTimeOffset(2026, 5, 9, 9, 0, 0, TimeSpan.FromHours(-10)), Speeds = [3, 3.05],
            Watch = WatchFaults.None
        }, 5);

    [Theory]
    [InlineData("\n  \r\n")]
    [InlineData("\uFEFF \n")]
    public void Blanks_before_the_XML_declaration_do_no_harm(string before)
    {
        byte[] file = [.. Encoding.UTF8.GetBytes(before), .. XmlWriting.Gpx(Morning.Recorded, "x")];
        Assert.Equal(2, Read(file).Kept.Count);
    }

    [Fact]
    public void A_prefix_that_is_nowhere_declared_does_no_harm()
    {
        string text = Encoding.UTF8.GetString(XmlWriting.Gpx(Morning.Recorded, "x"))
            .Replace(" xmlns:x=\"urn:triallog:sample\"", "", StringComparison.Ordinal);
        Assert.NotNull(Read(Encoding.UTF8.GetBytes(text)).Kept[0].HeartRate);
    }

    [Fact]
    public void Of_a_FIT_file_whose_end_is_missing_what_is_whole_is_taken_on_request_only()
    {
        byte[] file = FitWriter.Activity(Morning.Recorded, [], Morning.Offset)[..^2000];
        RecordingException refused = Assert.Throws<RecordingException>(() => Read(file));
        Assert.True(refused.CanTakeWhatIsWhole);
        RecordedOuting read = Assert.Single(RecordingReader.ReadAll(new MemoryStream(file), "cut.fit", null, evenIfCutOff: true));
        Assert.Equal(2, read.Kept.Count);
        Assert.True(read.Mended.IsCutOff);
        Assert.Contains("end of the file is missing", read.Mended.ToString());
    }

    [Fact]
    public void Two_tracks_a_day_apart_are_two_outings_in_the_order_of_time()
    {
        string one = Encoding.UTF8.GetString(XmlWriting.Gpx([.. Morning.Recorded.Select(p => p with { Time = p.Time + 86400 })], "b"));
        string two = Encoding.UTF8.GetString(XmlWriting.Gpx(Morning.Recorded, "a"));
        string both = one.Replace("</gpx>", two[two.IndexOf("<trk>", StringComparison.Ordinal)..], StringComparison.Ordinal);
        IReadOnlyList<RecordedOuting> outings = RecordingReader.ReadAll(new MemoryStream(Encoding.UTF8.GetBytes(both)), "both.gpx");
        Assert.Equal([9, 10], outings.Select(o => o.Date.Day));
        Assert.All(outings, o => Assert.Equal(2, o.Kept.Count));
        Assert.Equal(2, outings.Select(o => o.Hash).Distinct().Count());
    }

    [Fact]
    public void Activities_months_apart_in_one_TCX_are_as_many_outings_and_a_stray_point_is_none()
    {
        // A history of 581 days: an outing every seventh, and one point with a wild date.
        SimulatedOuting brief = Simulator.Run(new OutingPlan { Speeds = [3], Leg = 200, WarmUp = 60, Watch = WatchFaults.None }, 5);
        string[] activities = [.. Enumerable.Range(0, 84).Select(week => Encoding.UTF8.GetString(
            XmlWriting.Tcx([.. brief.Recorded.Select(p => p with { Time = p.Time + 7 * 86400 * week })], [])))];
        string all = activities[0].Replace("</Activities>", string.Concat(activities[1..].Select(Activity)) + "</Activities>",
            StringComparison.Ordinal);
        IReadOnlyList<RecordedOuting> outings = RecordingReader.ReadAll(new MemoryStream(Encoding.UTF8.GetBytes(all)), "history.tcx");
        Assert.Equal(Enumerable.Range(1, 84), outings.Select(o => o.Number));
        Assert.Equal(581, outings[^1].Date.DayNumber - outings[0].Date.DayNumber);
        Assert.All(outings, o => Assert.Single(o.Kept));

        byte[] stray = XmlWriting.Tcx([.. brief.Recorded, brief.Recorded[0] with { Time = brief.Recorded[0].Time + 581 * 86400 }], []);
        Assert.Equal(outings[0].Date, Assert.Single(RecordingReader.ReadAll(new MemoryStream(stray), "stray.tcx")).Date);

        static string Activity(string document) => document[document.IndexOf("<Activity ", StringComparison.Ordinal)..document.IndexOf(
            "</Activities>", StringComparison.Ordinal)];
    }

    [Fact]
    public void An_outing_stopped_and_started_again_is_one()
    {
        byte[] file = FitWriter.Activity([.. Morning.Recorded.Where((_, i) => i is < 600 or > 900)], [], Morning.Offset);
        Assert.Single(RecordingReader.ReadAll(new MemoryStream(file), "paused.fit"));
    }

    [Fact]
    public void The_suns_height_is_that_of_Meeus()
    {
        // Astronomical Algorithms, 2nd edition, example 25.a: 13 October 1992, 0 h: ascension 198.38083°, declination −7.78507°.
        (double ascension, double declination) = Sun.Place(2448908.5 - 2451545.0);
        Assert.Equal(198.38083 - 360, double.RadiansToDegrees(ascension), 0.001);
        Assert.Equal(-7.78507, double.RadiansToDegrees(declination), 0.001);

        // At noon by the sun's own time of an equinox the sun stands as high as the latitude leaves of 90°, within the equation of time.
        double equinox = new DateTimeOffset(2026, 3, 20, 12, 7, 0, TimeSpan.Zero).ToUnixTimeSeconds();
        Assert.Equal(40, Sun.Elevation(equinox, 50, 0), 0.3);
        Assert.True(Sun.Elevation(equinox + 43200, 50, 0) < -35);
    }

    [Fact]
    public void An_offset_far_from_the_sun_is_not_believed()
    {
        // The place lies ten hours behind UTC; the device tells UTC as its local time.
        RecordedOuting read = Read(FitWriter.Activity(Morning.Recorded, [], TimeSpan.Zero));
        Assert.Equal(TimeSpan.FromHours(-10), read.StartedAt.Offset);
        Assert.Equal(new DateOnly(2026, 5, 9), read.Date);
        Assert.Contains("far from the sun's", read.ClockNote);
        Assert.Empty(read.Questions);
    }

    [Fact]
    public void Local_time_written_as_UTC_puts_the_outing_into_the_night_and_is_asked_about()
    {
        List<RecordedPoint> asUtc = [.. Morning.Recorded.Select(p => p with { Time = p.Time - 36000 })];
        RecordedOuting read = Read(XmlWriting.Gpx(asUtc, "x"));
        RecordingQuestion question = Assert.Single(read.Questions);
        Assert.Equal(QuestionKind.Clock, question.Kind);
        Assert.Contains("it was 2026-05-09 09:00", question.Says);
        RecordedOuting told = read.StartingAt(new DateTime(2026, 5, 9, 9, 0, 0, DateTimeKind.Unspecified));
        Assert.Empty(told.Questions);
        Assert.Equal((new DateOnly(2026, 5, 9), new TimeOnly(9, 0)), (told.Date, told.Time));
        Assert.Empty(read.Confirm(QuestionKind.Clock).Questions);
    }

    [Theory]
    [InlineData("Running", true)]
    [InlineData("Biking", true)]
    [InlineData("Other", false)]
    public void A_run_or_a_ride_is_asked_about(string sport, bool asked)
    {
        string text = Encoding.UTF8.GetString(XmlWriting.Tcx(Morning.Recorded, []))
            .Replace("Sport=\"Other\"", $"Sport=\"{sport}\"", StringComparison.Ordinal);
        Assert.Equal(asked, Read(Encoding.UTF8.GetBytes(text)).Questions.Any(q => q.Kind == QuestionKind.Sport));
    }

    [Fact]
    public void A_lap_of_a_TCX_whose_timer_stood_still_ends_where_the_next_begins()
    {
        string text = Encoding.UTF8.GetString(
            XmlWriting.Tcx(Morning.Recorded, [Morning.Recorded[0].Time + 800, Morning.Recorded[0].Time + 1100]));
        int at = text.IndexOf("<TotalTimeSeconds>800<", StringComparison.Ordinal);
        Assert.True(at > 0);
        string paused = text.Replace("<TotalTimeSeconds>800<", "<TotalTimeSeconds>500<", StringComparison.Ordinal);
        Assert.Equal([800, 1100], Read(Encoding.UTF8.GetBytes(paused)).Presses.Select(p => p.TotalSeconds));
    }

    [Fact]
    public void Launched_in_the_middle_of_the_stretch_the_pieces_still_go_out_and_back_by_turns()
    {
        // Warm-up half a kilometre one way; then pieces to and fro over a kilometre around the launch.
        var points = new List<RecordedPoint>();
        double latitude = 12.3, time = 1_777_000_000;
        void Go(double north, int seconds)
        {
            for (int i = 0; i < seconds; i++, time++)
            {
                points.Add(new RecordedPoint(time, latitude, -150.6, 140, 60));
                (latitude, _) = Water.Moved(latitude, -150.6, north, 0);
            }
        }

        Go(2.2, 230);
        for (int i = 0; i < 4; i++)
        {
            Go(0, 90);
            Go(i % 2 == 0 ? -3 : 3, 330);
        }

        Go(0, 60);
        RecordedOuting read = RecordingReader.Read(new MemoryStream(FitWriter.Activity(points, [], null)), "middle.fit")
            .For(new PieceCard(4, Distance.FromMetres(1000)));
        Assert.Equal([Course.Out, Course.Back, Course.Out, Course.Back], read.Kept.Select(p => p.Course));
    }

    private static RecordedOuting Read(byte[] file) => RecordingReader.Read(new MemoryStream(file), "odd");
}
