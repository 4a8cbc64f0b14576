using System.Text.Json;
using Json.Schema;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

public class LoggingTests
{
    private static readonly string[] Pieces = ["49.5in,1km,5:32,6", "50.5in,1km,5:31,6", "50.5in,1km,5:33,6", "49.5in,1km,5:35,6"];

    [Fact]
    public void A_logged_outing_is_in_the_history_as_it_was_typed()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces, "--date", "2026-05-03", "--wind", "2", "--notes", "glassy"]);
        JsonElement outing = JsonDocument.Parse(program.Must("history", "--json")).RootElement[0];
        Assert.Equal("2026-05-03", outing.GetProperty("date").GetString());
        Assert.Equal("OC1", outing.GetProperty("hull").GetString());
        Assert.Equal(2, outing.GetProperty("wind_beaufort").GetInt32());
        Assert.Equal("glassy", outing.GetProperty("notes").GetString());
        JsonElement second = outing.GetProperty("pieces")[1];
        Assert.Equal(50.5, second.GetProperty("length_in").GetDouble());
        Assert.Equal(331, second.GetProperty("time_s").GetDouble());
        Assert.Equal(1000, second.GetProperty("distance_m").GetDouble());
        Assert.Equal(6, second.GetProperty("effort").GetDouble());
    }

    [Fact]
    public void Times_alone_take_lengths_and_distance_from_the_open_card()
    {
        using TestProgram program = TestProgram.WithIlse();
        JsonElement card = JsonDocument.Parse(program.Must("next", "--json")).RootElement.GetProperty("card");
        double[] lengths = [.. card.GetProperty("lengths_in").EnumerateArray().Select(length => length.GetDouble())];
        program.Must(["log", .. lengths.Select((_, index) => $"5:3{index},6.5"), "--soreness", "0"]);
        JsonElement logged = JsonDocument.Parse(program.Must("history", "--json")).RootElement[0].GetProperty("pieces");
        Assert.Equal(lengths, logged.EnumerateArray().Select(piece => piece.GetProperty("length_in").GetDouble()));
        Assert.All(logged.EnumerateArray(),
            piece => Assert.Equal(card.GetProperty("distance_m").GetDouble(), piece.GetProperty("distance_m").GetDouble()));
    }

    [Fact]
    public void A_number_of_times_that_is_not_the_cards_is_asked_about_and_nothing_is_saved()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("next");
        TestProgram.Outcome outcome = program.Run("log", "5:32,6");
        Assert.Equal(1, outcome.Code);
        Assert.Contains("you gave 1.", outcome.Error);
        Assert.Equal("[]", program.Must("history", "--json").Trim());
    }

    [Theory]
    [InlineData("-49in,1km,5:32", "is not a length")]
    [InlineData("0in,1km,5:32", "not believable")]
    [InlineData("130in,1km,5:32", "did you mean")]
    [InlineData("fifty,1km,5:32", "is not a length")]
    [InlineData("54in,1km,5:32", "outside what Reed can be set to")]
    [InlineData("50in,0km,5:32", "not between 1 m and 1,000 km")]
    [InlineData("50in,-1km,5:32", "is not a distance")]
    [InlineData("50in,1km,0:00", "not between 1 second")]
    [InlineData("50in,1km,5:61", "60 or more")]
    [InlineData("50in,1km,532", "“532” may be 5:32 or 532 seconds")]
    [InlineData("50in", "A piece is LENGTH,DISTANCE,TIME,EFFORT")]
    [InlineData("50in,1km,1:23", "faster than any paddled piece")]
    [InlineData("50in,1km,5:32,11", "is not an effort")]
    [InlineData("50in,1km,5:32,6.3", "is not an effort")]
    [InlineData("50in,1km,5:32,6,7", "is not a piece")]
    public void A_wrong_piece_is_refused_in_a_sentence_and_nothing_is_saved(string piece, string says)
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome outcome = program.Run("log", "--", piece);
        Assert.Equal(1, outcome.Code);
        Assert.Contains(says, outcome.Error);
        Assert.Equal("[]", program.Must("history", "--json").Trim());
    }

    [Theory]
    [InlineData("2026-02-30", "is not a date")]
    [InlineData("2026-06-03", "is in the future")]
    [InlineData("03/05/2026", "is not a date")]
    public void A_wrong_date_is_refused(string date, string says)
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome outcome = program.Run(["log", .. Pieces, "--date", date]);
        Assert.Equal(1, outcome.Code);
        Assert.Contains(says, outcome.Error);
    }

    [Fact]
    public void An_outing_can_be_asked_step_by_step_and_a_wrong_answer_is_asked_again()
    {
        using TestProgram program = TestProgram.WithIlse();
        string[] answers =
        [
            "2026-05-30", "2",
            "five", "5:32", "49 3/4", "1km", "6",
            "5:31", "", "", "6½",
            "", "0", "cold hands", "yes",
        ];
        TestProgram.Outcome outcome = program.RunTyping(string.Join('\n', answers) + "\n", "log");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("is not a time", outcome.Output);
        JsonElement outing = JsonDocument.Parse(program.Must("history", "--json")).RootElement[0];
        Assert.Equal("2026-05-30", outing.GetProperty("date").GetString());
        Assert.Equal(
            [49.75, 49.75], outing.GetProperty("pieces").EnumerateArray().Select(piece => piece.GetProperty("length_in").GetDouble()));
        Assert.Equal(6.5, outing.GetProperty("pieces")[1].GetProperty("effort").GetDouble());
    }

    [Fact]
    public void An_input_that_ends_half_way_saves_nothing()
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome outcome = program.RunTyping("2026-05-30\n2\n5:32\n49 3/4\n", "log");
        Assert.Equal(1, outcome.Code);
        Assert.Equal("[]", program.Must("history", "--json").Trim());
    }

    [Fact]
    public void Questions_left_half_way_go_on_where_they_were_left()
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome left = program.RunTyping("2026-05-30\n2\n5:32\n49 3/4\n1km\n6\n5:31\n", "log");
        Assert.Contains("What you typed is kept", left.Error);
        TestProgram.Outcome kept = program.RunTyping("\n\n\n\n\n\n5:30\n\n\n\n\n0\n\nno\nyes\n", "log");
        Assert.Contains("Time [5:32]", kept.Output);
        Assert.Equal((1, "[]"), (kept.Code, program.Must("history", "--json").Trim()));
        TestProgram.Outcome saved = program.RunTyping("\n\n\n\n\n\n\n\n\n\n\n\n\n\n", "log");
        Assert.Equal(0, saved.Code);
        JsonElement outing = JsonDocument.Parse(program.Must("history", "--json")).RootElement[0];
        Assert.Equal(("2026-05-30", 2), (outing.GetProperty("date").GetString(), outing.GetProperty("wind_beaufort").GetInt32()));
        Assert.Equal(
            [332.0, 330.0], outing.GetProperty("pieces").EnumerateArray().Select(piece => piece.GetProperty("time_s").GetDouble()));
        Assert.DoesNotContain("half typed", program.RunTyping("", "log").Output);
    }

    [Fact]
    public void A_half_typed_outing_is_thrown_away_if_that_is_answered()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.RunTyping("\n\n5:32\n50\n1km\n\n\n0\n\nno\nno\n", "log");
        Assert.DoesNotContain("half typed", program.RunTyping("", "log").Output);
    }

    [Fact]
    public void Edit_exclude_delete_and_undo_of_each_leave_what_they_promise()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces, "--date", "2026-05-03"]);
        string before = program.Must("history", "--json");

        program.Must("edit", "2026-05-03", "2", "--time", "5:30");
        Assert.Contains("330", program.Must("history", "--json"));
        program.Must("undo");
        Assert.Equal(before, program.Must("history", "--json"));

        program.Must("exclude", "last", "3", "--because", "rudder caught weed");
        Assert.Contains("rudder caught weed", program.Must("history"));
        program.Must("include", "last", "3");
        Assert.Equal(before, program.Must("history", "--json"));

        program.Must("delete", "2026-05-03", "1");
        program.Must("delete", "2026-05-03");
        Assert.Equal("[]", program.Must("history", "--json").Trim());
        program.Must("undo");
        program.Must("undo");
        Assert.Equal(before, program.Must("history", "--json"));
        program.Must("redo");
        program.Must("redo");
        Assert.Equal("[]", program.Must("history", "--json").Trim());
        Assert.Equal(1, program.Run("redo").Code);
    }

    [Theory]
    [InlineData("50in,1km,55:30", "10 times slower")]
    [InlineData("50in,1mi,5:31", "1.7 times faster")]
    [InlineData("50in,5km,29:00", "")]
    [InlineData("50in,1km,6:40", "")]
    public void A_piece_far_off_the_others_is_asked_about_and_kept(string piece, string says)
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome outcome = program.Run(["log", .. Pieces, piece, "--date", "2026-05-03"]);
        Assert.Equal((0, says.Length == 0), (outcome.Code, outcome.Error.Length == 0));
        Assert.Contains(says, outcome.Error);
        Assert.Equal(5, JsonDocument.Parse(program.Must("history", "--json")).RootElement[0].GetProperty("pieces").GetArrayLength());
        Assert.Empty(program.Run("edit", "last", "--notes", "glassy").Error);
    }

    [Fact]
    public void An_import_counts_the_pieces_far_off_the_others()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces, "--date", "2026-05-03"]);
        string rows = "2026-05-10,OC1,50,1000,5:30\n2026-05-10,OC1,50.5,1000,15:31\n2026-05-10,OC1,50,1000,15:30\n";
        string says = program.Must("import", program.File("may.csv", "date,hull,length_in,distance_m,time\n" + rows));
        Assert.Contains("2 pieces are far off their paddler's others, the first 2026-05-10, piece 2, 1 km in 15:31, 2.8 times slower",
            says.ReplaceLineEndings(" ").Replace("   ", " "));
    }

    [Fact]
    public void An_outing_logged_twice_is_asked_about_and_a_second_of_the_day_is_not()
    {
        using TestProgram program = TestProgram.WithIlse();
        string[] log = ["log", .. Pieces, "--date", "2026-05-03"];
        Assert.Empty(program.Run(log).Error);
        Assert.Contains("All pieces are the same as those of 2026-05-03; is it logged twice?", program.Run(log).Error);
        Assert.Empty(program.Run([.. log, "49in,1km,5:40,6"]).Error);
        Assert.Empty(program.Run(["log", .. Pieces, "--date", "2026-05-04"]).Error);
    }

    [Fact]
    public void Soreness_told_late_goes_to_every_piece_of_the_outing_and_one_undo_takes_it_back()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces, "--date", "2026-05-03"]);
        string before = program.Must("history", "--json");
        program.Must("edit", "last", "--soreness", "4");
        Assert.All(JsonDocument.Parse(program.Must("history", "--json")).RootElement[0].GetProperty("pieces").EnumerateArray(),
            piece => Assert.Equal(4, piece.GetProperty("soreness").GetDouble()));
        program.Must("undo");
        Assert.Equal(before, program.Must("history", "--json"));
    }

    [Fact]
    public void While_sore_the_caution_comes_first_and_the_card_waits()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces, "--soreness", "5"]);
        string sore = program.Must("next");
        Assert.InRange(sore.IndexOf("Caution: You were sore", StringComparison.Ordinal), 0,
            sore.IndexOf("\nWhen it no longer hurts", StringComparison.Ordinal));
        Assert.DoesNotContain("Next outing", sore);
        program.Clock.Pass(TimeSpan.FromDays(290));
        Assert.DoesNotContain("Next outing", program.Must("next"));
        program.Must(["log", .. Pieces, "--soreness", "0"]);
        Assert.Contains("\nNext outing\n", program.Must("next").ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Next_keeps_to_its_schema_with_and_without_outings()
    {
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Repository.File("docs/schemas/next.schema.json")));
        using TestProgram program = TestProgram.WithIlse();
        Valid(program.Must("next", "--json"));
        program.Must(["log", .. Pieces]);
        Valid(program.Must("next", "--json"));

        void Valid(string json)
        {
            EvaluationResults results = schema.Evaluate(
                JsonDocument.Parse(json).RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
            Assert.True(
                results.IsValid,
                string.Join("; ", results.Details!.Where(detail => detail.Errors is not null)
                .Select(detail => $"{detail.InstanceLocation}: {string.Join(", ", detail.Errors!.Values)}")));
        }
    }

    [Fact]
    public void Asking_twice_gives_one_card_and_undo_does_not_take_cards_back()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces]);
        program.Must("next");
        program.Must("next");
        Assert.Contains("Logged", program.Must("undo"));
    }

    [Theory]
    [InlineData("Ben \"Quick\" O'Hara")]
    [InlineData("=cmd()")]
    [InlineData("Zoë 🛶")]
    [InlineData("Robert'); DROP TABLE paddler;--")]
    public void A_name_may_be_almost_anything_a_person_types(string name)
    {
        using var program = new TestProgram();
        program.Must("paddler", "add", name, "--stature", "68in");
        Assert.Equal(name, JsonDocument.Parse(program.Must("paddler", "list", "--json")).RootElement[0].GetProperty("name").GetString());
        Assert.Equal(1, program.Run("paddler", "add", name.ToUpperInvariant()).Code);
    }

    [Theory]
    [InlineData("Ilse Mro")]
    [InlineData("IlseMaro")]
    [InlineData("Ilsé Maro")]
    public void A_slip_in_a_name_is_asked_about_before_it_starts_another(string name)
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome outcome = program.Run("paddler", "add", name, "--reach", "51in");
        Assert.Equal(1, outcome.Code);
        Assert.Contains("Did you mean the paddler “Ilse Maro”", outcome.Error);
        Assert.Contains("did you mean “Ilse Maro”", program.Run("next", "--paddler", name).Error);
        program.Must("paddler", "add", name, "--reach", "51in", "--new-name");
        program.Must("next", "--paddler", name);
    }

    [Fact]
    public void A_hull_or_paddle_much_like_a_known_one_needs_to_be_meant()
    {
        using TestProgram program = TestProgram.WithIlse();
        Assert.Contains("“OC1”", program.Run("hull", "add", "oc-1", "--crew", "1").Error);
        Assert.Contains("“Reed”", program.Run("paddle", "add", "Reeed", "--blade", "18in", "--fixed", "50in").Error);
        program.Must("hull", "add", "OC3", "--crew", "3");
        program.Must("paddle", "add", "Reed 2", "--blade", "18in", "--fixed", "50in");
    }

    [Fact]
    public void A_name_with_control_characters_is_refused()
    {
        using var program = new TestProgram();
        TestProgram.Outcome outcome = program.Run("paddler", "add", "Ilse\u001b[31m");
        Assert.Equal(1, outcome.Code);
        Assert.DoesNotContain('\u001b', outcome.Error);
    }
}
