using System.Text.Json;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;
using TrialLog.Tests.Tuning.References;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Commands;

/// <summary>Recordings brought in on the command line, without a screen.</summary>
public sealed class ImportRecordingTests : IDisposable
{
    private static readonly SimulatedOuting Morning = Simulator.Run(
        new OutingPlan
        {
            Start = new DateTimeOffset(2026, 5, 9, 9, 0, 0, TimeSpan.FromHours(-10)), Speeds = [3, 3.05, 3.02, 3],
            Watch = WatchFaults.None
        }, 5);

    private readonly TestProgram _program = TestProgram.WithIlse();

    private string Fit => Bytes("Long Reach.fit", FitWriter.Activity(Morning.Recorded, Morning.Presses, Morning.Offset));

    private string Gpx => Bytes("morning.gpx", XmlWriting.Gpx(Morning.Recorded, "morning"));

    [Fact]
    public void The_pieces_take_the_lengths_their_error_and_the_watch_as_their_clock_and_the_files_name_is_not_kept()
    {
        _program.Must("import", Fit, "--lengths", "49,51,51,49", "--effort", "6", "--soreness", "1");
        Outing outing = Assert.Single(Outings());
        Assert.Equal([49, 51, 51, 49], outing.Pieces.Select(p => p.Length.Inches));
        Assert.Equal(new TimeOnly(9, 0), outing.Time);
        Assert.All(outing.Pieces, piece =>
        {
            Assert.Equal((TimedBy.Watch, Course.RoundTrip, 6, 1),
                (piece.TimedBy, piece.Course, piece.Effort!.Value.Points, piece.Soreness!.Value.Points));
            Assert.NotNull(piece.HeartRate);
            Assert.NotNull(piece.FadePercent);
        });
        Assert.DoesNotContain("Long Reach", System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(_program.Store)));
    }

    [Fact]
    public void What_was_found_is_shown_to_programs_and_what_is_asked_keeps_it_from_being_saved()
    {
        using (JsonDocument look = JsonDocument.Parse(_program.Must("import", Fit, "--look", "--json")))
        {
            JsonElement shown = look.RootElement[0].GetProperty("recordings")[0];
            Assert.False(shown.GetProperty("saved").GetBoolean());
            Assert.Equal(4, shown.GetProperty("pieces").EnumerateArray()
                .Count(p => p.GetProperty("left_out_because").ValueKind == JsonValueKind.Null));
        }

        TestProgram.Outcome asked = _program.Run("import", Fit, "--lengths", "49,51,51", "--json");
        Assert.Equal(1, asked.Code);
        Assert.Contains("There are lengths for 3 pieces, the recording shows 4", asked.Error);
        Assert.Empty(Outings());
    }

    [Fact]
    public void Pieces_are_dropped_kept_split_joined_and_typed_without_a_screen()
    {
        string[] numbers = Numbers("--look");
        _program.Must("import", Fit, "--drop", numbers[1], "--lengths", "49,51,49", "--as-shown");
        Assert.Equal(3, Assert.Single(Outings()).Pieces.Count);
        _program.Must("undo");

        // Cut and joined again it is what it was; its numbers are those first shown.
        using JsonDocument look = JsonDocument.Parse(_program.Must("import", Fit, "--look", "--json"));
        JsonElement piece = look.RootElement[0].GetProperty("recordings")[0].GetProperty("pieces")[int.Parse(numbers[0]) - 1];
        double from = piece.GetProperty("from_s").GetDouble(), to = piece.GetProperty("to_s").GetDouble();
        string middle = Clock((from + to) / 2);
        Assert.Equal(5, Numbers("--look", "--split", $"{numbers[0]}@{middle}").Length);
        _program.Must("import", Fit, "--pieces", $"{Clock(from)}..{Clock(to)}=50.5in");
        Piece typed = Assert.Single(Assert.Single(Outings()).Pieces);
        Assert.Equal((50.5, Course.RoundTrip), (typed.Length.Inches, typed.Course));

        static string Clock(double seconds) => $"{(int)seconds / 60}:{(int)seconds % 60:00}";
    }

    [Theory]
    [InlineData("--split", "1", "1@")]
    [InlineData("--join", "1", "1,3")]
    [InlineData("--pieces", "", "7:21=49in")]
    [InlineData("--keep", "", "99")]
    public void What_cannot_be_read_is_said_and_nothing_is_saved(string option, string _, string value)
    {
        TestProgram.Outcome outcome = _program.Run("import", Fit, option, value, "--lengths", "49,51,51,49");
        Assert.Equal(1, outcome.Code);
        Assert.Contains("“", outcome.Error);
        Assert.Empty(Outings());
    }

    [Fact]
    public void The_same_outing_from_another_file_is_asked_about()
    {
        _program.Must("import", Fit, "--lengths", "49,51,51,49");
        TestProgram.Outcome again = _program.Run("import", Gpx, "--lengths", "49,51,51,49");
        Assert.Equal(1, again.Code);
        Assert.Contains("the log has an outing of that time", again.Error);
        Assert.Single(Outings());
        _program.Must("import", Gpx, "--lengths", "49,51,51,49", "--beside");
        Assert.Equal(2, Outings().Count);
    }

    [Fact]
    public void A_watchs_file_laid_over_an_outing_typed_by_hand_leaves_its_times_and_brings_the_heart_rate()
    {
        _program.Must("log", "--date", "2026-05-09", "49in,1km,5:40,6", "51in,1km,5:38,6", "51in,1km,5:37,6", "49in,1km,5:41,6");
        Outing typed = Assert.Single(Outings());
        Assert.Equal(1, _program.Run("import", Fit, "--lengths", "49,51,51,49").Code);
        _program.Must("import", Fit, "--over");
        Outing over = Assert.Single(Outings());
        Assert.Equal(typed.Pieces.Select(p => (p.Time, p.Distance, p.Length)), over.Pieces.Select(p => (p.Time, p.Distance, p.Length)));
        Assert.All(over.Pieces, p => Assert.NotNull(p.HeartRate));
        Assert.All(over.Pieces, p => Assert.Equal(TimedBy.Hand, p.TimedBy));
        Assert.Equal(new TimeOnly(9, 0), over.Time);
        Assert.Contains("was imported before", _program.Run("import", Fit, "--over").Error);
    }

    [Fact]
    public void A_watchs_file_that_is_not_of_the_outing_is_not_laid_over_it()
    {
        string Refused(params string[] pieces)
        {
            _program.Must(["log", "--date", "2026-05-09", .. pieces]);
            string error = _program.Run("import", Fit, "--over").Error;
            Assert.Null(Assert.Single(Outings()).Time);
            _program.Must("undo");
            return System.Text.RegularExpressions.Regex.Replace(error, @"\s+", " ");
        }

        Assert.Contains(
            "The outing 2026-05-09 has 3 pieces, the recording shows 4: which belongs to which? Nothing was changed.",
            Refused("49in,1km,5:40,6", "51in,1km,5:38,6", "51in,1km,5:37,6"));
        Assert.Matches(
            "Piece 2 of the outing 2026-05-09 took 6:50, that of the recording [0-9:.]+: are they the same[?] Nothing was changed[.]",
            Refused("49in,1km,5:40,6", "51in,1km,6:50,6", "51in,1km,5:37,6", "49in,1km,5:41,6"));
    }

    [Fact]
    public void A_time_typed_over_is_by_hand_and_the_two_do_not_mix_unsaid()
    {
        _program.Must("import", Fit, "--lengths", "49,51,51,49");
        string says = _program.Run("edit", "2026-05-09", "1", "--time", "5:41").Error;
        Assert.Contains("Some pieces are timed by the watch, some by hand",
            System.Text.RegularExpressions.Regex.Replace(says, @"\s+", " "));
        IReadOnlyList<Piece> pieces = Assert.Single(Outings()).Pieces;
        Assert.Equal([TimedBy.Hand, TimedBy.Watch, TimedBy.Watch, TimedBy.Watch], pieces.Select(p => p.TimedBy));
        Assert.Equal([true, false, false, false], pieces.Select(p => p.SpeedErrorPercent is null));
    }

    [Fact]
    public void Of_two_outings_in_one_file_each_or_one_is_taken()
    {
        List<RecordedPoint> both = [.. Morning.Recorded, .. Morning.Recorded.Select(p => p with { Time = p.Time + 86400 })];
        string file = Bytes("two.fit", FitWriter.Activity(both, [], Morning.Offset));
        TestProgram.Outcome asked = _program.Run("import", file, "--lengths", "49,51,51,49");
        Assert.Equal(1, asked.Code);
        Assert.Contains("holds 2 outings", asked.Error);
        Assert.Contains("2026-05-10 09:00", asked.Error);
        _program.Must("import", file, "--lengths", "49,51,51,49", "--outing", "2");
        Assert.Equal(new DateOnly(2026, 5, 10), Assert.Single(Outings()).Date);
        // The numbers are the file's, whatever was taken before.
        Assert.Contains("holds 1 outing that is not imported yet", _program.Run("import", file, "--lengths", "49,51,51,49", "--outing",
            "2").Error);
        Assert.Single(Outings());
        _program.Must("import", file, "--lengths", "49,51,51,49", "--outing", "1");
        Assert.Equal(2, Outings().Count);
    }

    [Fact]
    public void A_card_goes_to_the_watch_and_comes_back_from_it_in_the_order_that_was_paddled()
    {
        string file = Path.Combine(_program.Folder, "card.fit");
        string says = _program.Must("next", "--watch", file);
        Assert.Contains("Press the lap button", says);
        Assert.True(File.Exists(file));
        Assert.Contains("1: ", says);
    }

    [Fact]
    public void Pieces_by_watch_and_by_hand_are_told_apart_wherever_they_are_listed_and_do_not_mix_unsaid_in_an_import()
    {
        _program.Must("import", Fit, "--lengths", "49,51,51,49", "--effort", "6,6.5,7,6");
        Assert.Equal([6, 6.5, 7, 6], Assert.Single(Outings()).Pieces.Select(p => p.Effort!.Value.Points));
        Assert.Contains("by watch, error 0.1%", _program.Must("history"));
        Assert.DoesNotContain("by hand", _program.Must("history"));
        string file = Path.Combine(_program.Folder, "mixed.csv");
        File.WriteAllText(file, "date,hull,paddle,length_in,distance_m,time,timed\n2026-05-11,OC1,Reed,49,1000,5:31,watch\n" +
            "2026-05-11,OC1,Reed,50,1000,5:33,hand\n");
        Assert.Contains("1 outing, the first 2026-05-11, with some pieces timed by the watch and some by hand",
            System.Text.RegularExpressions.Regex.Replace(_program.Must("import", file), @"\s+", " "));
        Assert.Contains("by hand", _program.Must("history"));
    }

    [Fact]
    public void Programs_get_what_else_the_recording_knows()
    {
        using JsonDocument look = JsonDocument.Parse(_program.Must("import", Fit, "--look", "--lengths", "49,51,51,49", "--json"));
        JsonElement shown = look.RootElement[0].GetProperty("recordings")[0];
        Assert.False(shown.GetProperty("tide_turned").GetBoolean());
        Assert.Equal(4, shown.GetProperty("currents_m_per_s").GetArrayLength());
        JsonElement[] lengths = [.. shown.GetProperty("by_length").EnumerateArray()];
        Assert.Equal([49, 51], lengths.Select(of => of.GetProperty("length_in").GetDouble()));
        Assert.All(lengths, of => Assert.InRange(of.GetProperty("heart_rate_at_equal_speed").GetDouble(), 100, 200));
        JsonElement piece = shown.GetProperty("pieces").EnumerateArray().First(p => p.GetProperty("left_out_because").ValueKind
            == JsonValueKind.Null);
        Assert.Equal(4, piece.GetProperty("quarters_pct").GetArrayLength());
        Assert.True(piece.GetProperty("metres_per_stroke").GetDouble() > 1);
    }

    [Fact]
    public void The_error_of_a_piece_reaches_the_model_from_the_watch_and_from_a_CSV_alike()
    {
        _program.Must("import", Fit, "--lengths", "49,51,51,49");
        Piece[] fromWatch = [.. Assert.Single(Outings()).Pieces];
        string csv = Path.Combine(_program.Folder, "out.csv");
        _program.Must("export", "--csv", csv);
        using var other = new TestProgram();
        other.Must("import", csv);
        using var logbook = LogbookFile.Open(other.Store);
        Piece[] fromCsv = [.. logbook.Outings(logbook.Paddlers()[0].Id).Single().Pieces];
        Assert.Equal(fromWatch.Select(p => p.SpeedErrorPercent), fromCsv.Select(p => p.SpeedErrorPercent));
        Assert.All(fromWatch.Concat(fromCsv), piece => Assert.Equal(
            piece.SpeedErrorPercent!.Value * piece.SpeedErrorPercent.Value, KnownError.Variance(piece, new TuningSettings()), 1e-12));
        // Beside a stopwatch over a marked course, whose error is another.
        Assert.All(fromWatch, piece => Assert.NotEqual(KnownError.Variance(piece, new TuningSettings()),
            KnownError.Variance(piece with { SpeedErrorPercent = null, TimedBy = TimedBy.Hand }, new TuningSettings())));
    }

    [Fact]
    public void An_outing_in_the_dark_is_saved_once_its_start_was_typed()
    {
        string file = Bytes("utc.gpx", XmlWriting.Gpx([.. Morning.Recorded.Select(p => p with { Time = p.Time - 36000 })], "utc"));
        string asked = _program.Run("import", file, "--lengths", "49,51,51,49").Error;
        Assert.Contains("it was 2026-05-09 09:00", asked);
        Assert.Contains("--start", asked);
        _program.Must("import", file, "--lengths", "49,51,51,49", "--start", "2026-05-09 09:00");
        Assert.Equal((new DateOnly(2026, 5, 9), new TimeOnly(9, 0)), (Assert.Single(Outings()).Date, Outings()[0].Time!.Value));
    }

    [Theory]
    [InlineData("tcx", "gpx")]
    [InlineData("gpx", "fit")]
    public void The_same_outing_in_another_format_does_not_count_double(string first, string second)
    {
        string File(string format) => Bytes($"morning.{format}", format switch
        {
            "tcx" => XmlWriting.Tcx(Morning.Recorded, []),
            "gpx" => XmlWriting.Gpx(Morning.Recorded, "morning"),
            _ => FitWriter.Activity(Morning.Recorded, [], Morning.Offset),
        });
        _program.Must("import", File(first), "--lengths", "49,51,51,49");
        Assert.Contains("the log has an outing of that time", _program.Run("import", File(second), "--lengths", "49,51,51,49").Error);
        Assert.Single(Outings());
    }

    [Fact]
    public void The_lengths_of_a_blind_card_are_not_told_before_the_pieces_are_saved()
    {
        _program.Clock.Pass(new DateTimeOffset(2026, 5, 9, 8, 0, 0, TimeSpan.Zero) - _program.Clock.GetUtcNow());
        _program.Must("next", "--pieces", "4", "--blind", Path.Combine(_program.Folder, "partner.txt"));
        JsonElement card;
        using (JsonDocument next = JsonDocument.Parse(_program.Must("next", "--json")))
        {
            card = next.RootElement.GetProperty("card").Clone();
            Assert.Equal(JsonValueKind.Array, card.GetProperty("letters").ValueKind);
        }

        string[] letters = [.. card.GetProperty("letters").EnumerateArray().Select(letter => letter.GetString()!)];
        string workout = Path.Combine(_program.Folder, "card.fit");
        string strip = _program.Must("next", "--watch", workout);
        for (int piece = 0; piece < letters.Length; piece++)
            Assert.Contains($"{piece + 1}: {letters[piece]}", strip);
        string name = System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(workout));
        Assert.Contains("1: A", name);
        Assert.DoesNotContain("Set ", name);

        string shown = _program.Must("import", Fit, "--look");
        Assert.DoesNotContain(" in\n", shown.Replace("\r", "", StringComparison.Ordinal));
        using (JsonDocument look = JsonDocument.Parse(_program.Must("import", Fit, "--look", "--json")))
        {
            JsonElement[] pieces = [.. look.RootElement[0].GetProperty("recordings")[0].GetProperty("pieces").EnumerateArray()
                .Where(p => p.GetProperty("left_out_because").ValueKind == JsonValueKind.Null)];
            Assert.All(pieces, p => Assert.Equal(JsonValueKind.Null, p.GetProperty("length_in").ValueKind));
            Assert.Equal(letters, pieces.Select(p => p.GetProperty("letter").GetString()!));
        }

        _program.Must("import", Fit);
        Assert.Equal(letters.Length, Assert.Single(Outings()).Pieces.Count);
    }

    public void Dispose() => _program.Dispose();

    private string[] Numbers(params string[] more)
    {
        using JsonDocument look = JsonDocument.Parse(_program.Must(["import", Fit, "--json", .. more]));
        return [.. look.RootElement[0].GetProperty("recordings")[0].GetProperty("pieces").EnumerateArray()
            .Where(p => p.GetProperty("left_out_because").ValueKind == JsonValueKind.Null)
                .Select(p => p.GetProperty("number").GetInt32().ToString())];
    }

    private IReadOnlyList<Outing> Outings()
    {
        using LogbookFile logbook = LogbookFile.Open(_program.Store);
        return [.. logbook.Paddlers().SelectMany(paddler => logbook.Outings(paddler.Id)).OrderBy(outing => outing.Date)];
    }

    private string Bytes(string name, byte[] contents)
    {
        string path = Path.Combine(_program.Folder, name);
        File.WriteAllBytes(path, contents);
        return path;
    }
}
