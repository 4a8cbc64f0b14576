using System.Text.Json;
using Json.Schema;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

public class SizingCommandTests
{
    [Fact]
    public void A_body_gives_a_start_length_and_hears_what_would_improve_it_most()
    {
        using var program = new TestProgram();
        string said = program.Must("start-length", "--stature", "68in");
        Assert.StartsWith("Start length: 49¾ in", said);
        Assert.Contains("Measure your seated reach: it cuts the uncertainty from 1.8 to 0.8 in.", said);
    }

    [Fact]
    public void Measures_are_kept_only_when_asked()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("start-length", "--paddler", "Ilse Maro", "--reach", "51in");
        Assert.Equal(50, Json(program, "start-length", "--json").GetProperty("length_in").GetDouble());
        program.Must("start-length", "--reach", "51in", "--save");
        Assert.Equal(51, Json(program, "start-length", "--json").GetProperty("length_in").GetDouble());
    }

    [Theory]
    [InlineData("did you mean 130 cm?", "start-length", "--reach", "130")]
    [InlineData("not below the stature", "start-length", "--reach", "69in", "--stature", "68in")]
    [InlineData("is not a length", "start-length", "--reach", "long")]
    [InlineData("did you mean 126 cm?", "transfer", "--length", "126", "--hull", "OC1")]
    [InlineData("There is no hull", "transfer", "--hull", "Kayak nine")]
    [InlineData("Say in which hull", "transfer", "--length", "50in")]
    [InlineData("not believable (up to 30 in)", "technique", "--hand", "40in", "--length", "50in")]
    [InlineData("is not a hand height", "technique", "--hand", "high", "--length", "50in")]
    [InlineData("0 to 60 degrees", "technique", "--hand", "2in", "--length", "50in", "--lean", "75")]
    [InlineData("say it with --length", "technique", "--hand", "2in")]
    [InlineData("No technique check of Ilse Maro is kept", "technique", "--remove", "1")]
    [InlineData("its folder is not there", "order-sheet", "--out", "no-such-folder/sheet.md")]
    [InlineData("did you mean 54 cm?", "steering", "--blade", "54in")]
    [InlineData("Say which steering paddle", "steering")]
    public void A_request_that_cannot_be_met_is_said_in_one_sentence(string says, params string[] arguments)
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome outcome = program.Run(arguments);
        Assert.Equal(1, outcome.Code);
        Assert.Contains(says, outcome.Error);
        Assert.Single(outcome.Error.TrimEnd().Split('\n'));
        Assert.Empty(outcome.Output);
    }

    [Fact]
    public void Every_hull_gets_its_length_and_a_paddle_that_cannot_be_set_so_is_told()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("paddle", "add", "Short one", "--blade", "18.5in", "--fixed", "49in");
        Dictionary<string, JsonElement> lengths = Json(program, "transfer", "--json").GetProperty("lengths").EnumerateArray()
            .ToDictionary(row => $"{row.GetProperty("hull").GetString()}, {row.GetProperty("paddle").GetString()}");
        Assert.Equal(50, lengths["OC1, Reed"].GetProperty("length_in").GetDouble());
        Assert.Equal(49, lengths["OC2, Reed"].GetProperty("length_in").GetDouble());
        Assert.Equal(51, lengths["OC6, Reed"].GetProperty("length_in").GetDouble());
        Assert.True(lengths["OC2, Short one"].GetProperty("in_range").GetBoolean());
        Assert.False(lengths["OC1, Short one"].GetProperty("in_range").GetBoolean());
        Assert.Contains("1 in too short", program.Must("transfer", "--hull", "OC1", "--paddle", "Short one"));
    }

    [Fact]
    public void Pieces_in_one_hull_are_told_apart_from_the_rule_in_the_others()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("paddle", "add", "Willow", "--blade", "20in", "--range", "47in..55in");
        program.Must("log", "--hull", "OC1", "--paddle", "Reed", "49in,1km,5:30", "51in,1km,5:31", "51in,1km,5:33", "49in,1km,5:34");
        JsonElement lengths = Json(program, "transfer", "--json").GetProperty("lengths");
        string Evidence(string hull, string paddle) => lengths.EnumerateArray()
            .Single(row => row.GetProperty("hull").GetString() == hull && row.GetProperty("paddle").GetString() == paddle)
                .GetProperty("evidence").GetString()!;
        Assert.Equal("tuned", Evidence("OC1", "Reed"));
        Assert.Equal("other-blades", Evidence("OC1", "Willow"));
        Assert.Equal("other-hulls", Evidence("OC6", "Reed"));
    }

    [Fact]
    public void A_length_carried_by_the_rules_alone_has_a_range_but_where_it_came_from()
    {
        using TestProgram program = TestProgram.WithIlse();
        JsonElement lengths = Json(program, "transfer", "--length", "50in", "--hull", "OC1", "--paddle", "Reed", "--json")
            .GetProperty("lengths");
        JsonElement Row(string hull) => lengths.EnumerateArray().Single(row => row.GetProperty("hull").GetString() == hull);
        Assert.Equal(JsonValueKind.Null, Row("OC1").GetProperty("likely_low_in").ValueKind);
        // One inch longer, up to two (common practice, no source).
        Assert.Equal(51, Row("OC6").GetProperty("length_in").GetDouble());
        Assert.Equal(50.2, Row("OC6").GetProperty("likely_low_in").GetDouble(), 0.05);
        Assert.Equal(51.8, Row("OC6").GetProperty("likely_high_in").GetDouble(), 0.05);
        Assert.Contains("likely 50 to 52 in", program.Must("transfer", "--length", "50in", "--hull", "OC1", "--paddle", "Reed"));
    }

    [Fact]
    public void A_start_length_is_told_for_a_hull()
    {
        using TestProgram program = TestProgram.WithIlse();
        JsonElement six = Json(program, "start-length", "--hull", "OC6", "--json");
        Assert.Equal("OC6", six.GetProperty("hull").GetString());
        Assert.Equal(51, six.GetProperty("length_in").GetDouble());
        Assert.Contains("near the knuckles", program.Must("start-length", "--hull", "OC6").ReplaceLineEndings(" ").Replace("      ", ""));
        Assert.DoesNotContain("knuckles", program.Must("start-length"));
    }

    [Fact]
    public void A_steering_paddle_is_put_on_the_order_sheet_by_rule_and_has_no_technique_check()
    {
        using TestProgram program = WithRudder();
        string sheet = program.Must("order-sheet", "--paddle", "Harbour rudder");
        Assert.Contains("Steering (not tuned for speed; borrow before you buy)", sheet);
        Assert.DoesNotContain("Cut to", sheet);
        Assert.Contains("The technique check is for forward paddling; for a steering paddle see: triallog steering",
            program.Run("technique", "--paddle", "Harbour rudder", "--hand", "2in", "--length", "50in").Error.ReplaceLineEndings(" "));
    }

    [Fact]
    public void The_order_sheet_has_the_hulls_that_were_paddled_and_the_race_s_else_every_hull()
    {
        using TestProgram program = TestProgram.WithIlse();
        string[] Hulls(params string[] more) => [.. Json(program, ["order-sheet", "--json", .. more]).GetProperty("lines").EnumerateArray()
            .Select(line => line.GetProperty("hull").GetString()!).Order()];
        string[] every = ["OC1", "OC2", "OC6", "V1", "V6"];
        Assert.Equal(["OC1"], Hulls());
        Assert.Equal(every, Hulls("--all"));
        Assert.Equal(["OC6"], Hulls("--hull", "OC6"));
        program.Must("log", "--hull", "OC2", "49in,1km,5:30", "51in,1km,5:31");
        Assert.Equal(["OC1", "OC2"], Hulls());
        program.Must("undo");
        program.Must("paddler", "set", "Ilse Maro", "--goal", "none");
        Assert.Equal(every, Hulls());
    }

    private static TestProgram WithRudder()
    {
        TestProgram program = TestProgram.WithIlse();
        program.Must("paddle", "add", "Harbour rudder", "--blade", "22in", "--range", "50in..56in", "--steering", "yes");
        return program;
    }

    [Fact]
    public void With_a_large_steering_blade_nothing_argues_for_a_high_hand()
    {
        using TestProgram program = TestProgram.WithIlse();
        Assert.DoesNotContain("Leave it long", program.Must("steering", "--blade", "22in"));
        Assert.Contains("Leave it long", program.Must("steering", "--blade", "19in"));
    }

    [Fact]
    public void A_technique_check_counts_once_it_is_kept_and_can_be_taken_back()
    {
        using TestProgram program = TestProgram.WithIlse();
        string before = program.Must("transfer", "--hull", "OC1", "--json");
        program.Must("technique", "--hand", "4in", "--length", "50in", "--photo");
        Assert.Equal(before, program.Must("transfer", "--hull", "OC1", "--json"));
        JsonElement kept = Json(program, "technique", "--hand", "4in", "--length", "50in", "--photo", "--save", "--json");
        JsonElement after = Json(program, "transfer", "--hull", "OC1", "--json").GetProperty("lengths")[0];
        Assert.Equal(kept.GetProperty("best_with_in").GetDouble(), after.GetProperty("length_in").GetDouble());
        Assert.True(after.GetProperty("length_in").GetDouble() < 50);
        Assert.Single(Json(program, "technique", "--json").EnumerateArray());
        program.Must("technique", "--remove", "1");
        Assert.Equal(before, program.Must("transfer", "--hull", "OC1", "--json"));
    }

    [Fact]
    public void A_technique_check_in_one_hull_says_something_of_the_others_too_but_less()
    {
        using TestProgram program = TestProgram.WithIlse();
        double Likely(string hull) => Json(program, "transfer", "--hull", hull, "--json").GetProperty("lengths")[0]
            .GetProperty("likely_low_in").GetDouble();
        (double own, double other) = (Likely("OC1"), Likely("OC6"));
        program.Must("technique", "--hull", "OC1", "--hand", "4in", "--length", "50in", "--photo", "--save");
        Assert.True(Likely("OC6") < other);
        Assert.True(Likely("OC1") - own <= Likely("OC6") - other);
    }

    [Fact]
    public void Who_has_no_paddle_is_shown_and_sold_nobody_elses()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("paddle", "set", "Reed", "--owner", "Ilse Maro");
        program.Must("paddler", "add", "Bram Okello", "--reach", "50in");
        // Borrowed for a morning, it is still hers.
        program.Must("log", "--paddler", "Bram Okello", "--paddle", "Reed", "49in,1km,5:30", "50in,1km,5:31");
        foreach (string command in new[] { "transfer", "order-sheet" })
        {
            TestProgram.Outcome refused = program.Run(command, "--paddler", "Bram Okello");
            Assert.Equal(1, refused.Code);
            Assert.Contains("No paddle here is Bram Okello's or the club's", refused.Error);
            Assert.DoesNotContain("Reed", refused.Output + refused.Error);
        }
    }

    [Fact]
    public void While_sore_nothing_longer_than_what_did_not_hurt_is_proposed()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("log", "--date", "2026-05-28", "--soreness", "1", "48.5in,1km,5:30", "48.5in,1km,5:31");
        program.Must("log", "--date", "2026-05-30", "--soreness", "7", "50.5in,1km,5:30", "50.5in,1km,5:31");
        string carried = program.Must("transfer", "--hull", "OC1");
        Assert.Contains("  48½ in    OC1, Reed", carried);
        Assert.DoesNotContain("likely", carried);
        Assert.Contains("Do not order", program.Must("order-sheet"));
        JsonElement sheet = Json(program, "order-sheet", "--json");
        Assert.StartsWith("Rest first", sheet.GetProperty("rest_first").GetString());
        Assert.Equal(JsonValueKind.Null, sheet.GetProperty("lines")[0].GetProperty("cut_to_in").ValueKind);
    }

    [Fact]
    public void One_who_chose_centimetres_reads_and_types_centimetres_throughout()
    {
        using var program = new TestProgram();
        program.Must("paddler", "add", "Jory Pell", "--unit", "cm", "--reach", "128");
        Assert.Equal("Reed: blade 47 cm, 118 cm to 134 cm by 0.5 cm\n",
            program.Must("paddle", "add", "Reed", "--blade", "47", "--range", "118..134", "--step", "0.5").ReplaceLineEndings("\n"));
        Assert.Contains("OC6: crew 6, seat height 30 cm", program.Must("hull", "set", "OC6", "--seat-height", "30"));
        foreach (
            string[] command in new string[][] { ["start-length"], ["transfer"], ["technique", "--hand", "5", "--length", "127"],
            ["order-sheet"], ["steering", "--blade", "56"] })
            Assert.DoesNotMatch("[0-9¼½¾] in\\b", program.Must(command));
    }

    [Fact]
    public void A_seat_far_above_what_the_crew_suggests_is_asked_about()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("hull", "set", "OC1", "--seat-height", "8in");
        Assert.Contains("Please check:", program.Must("hull", "set", "OC6", "--seat-height", "15in"));
        Assert.Contains("did you mean 30 cm?", program.Run("hull", "set", "OC6", "--seat-height", "30in").Error);
        Assert.Contains("not believable", program.Run("hull", "set", "OC6", "--seat-height", "3m").Error);
    }

    [Fact]
    public void A_hand_far_overhead_gets_the_shoulder_caution()
    {
        using TestProgram program = TestProgram.WithIlse();
        Assert.Contains("loads the shoulder",
            program.Must("technique", "--hand", "6in", "--length", "50in").ReplaceLineEndings(" ").Replace("         ", ""));
        Assert.DoesNotContain("Caution", program.Must("technique", "--hand", "-6in", "--length", "50in"));
    }

    [Fact]
    public void The_order_sheet_is_written_whole_as_the_file_name_says()
    {
        using TestProgram program = TestProgram.WithIlse();
        string markdown = Path.Combine(program.Folder, "sheet.md");
        program.Must("order-sheet", "--out", markdown);
        Assert.Equal(program.Must("order-sheet", "--markdown"), System.IO.File.ReadAllText(markdown));
        Assert.StartsWith("# Order sheet: Ilse Maro, 1 June 2026", System.IO.File.ReadAllText(markdown));
        Assert.Contains("Better test first.", program.Must("order-sheet"));
        program.Must("paddler", "set", "Ilse Maro", "--goal", "OC1, 2:00:00");
        Assert.Contains(" s over your 2 h, on average", program.Must("order-sheet").ReplaceLineEndings(" ").Replace("     ", " "));
        Assert.Equal(["log.db", "sheet.md"], Directory.GetFiles(program.Folder).Select(Path.GetFileName)
            .Where(name => !name!.StartsWith("log.db-", StringComparison.Ordinal)).Order());
    }

    [Theory]
    [InlineData("start-length", "start-length")]
    [InlineData("start-length", "start-length", "--stature", "68in", "--shoulder-breadth", "15in", "--steps")]
    [InlineData("transfer", "transfer")]
    [InlineData("transfer", "transfer", "--length", "50in", "--hull", "OC1", "--paddle", "Reed")]
    [InlineData("technique", "technique", "--hand", "6in", "--length", "50in", "--save")]
    [InlineData("technique", "technique")]
    [InlineData("order-sheet", "order-sheet", "--all")]
    [InlineData("steering", "steering", "--blade", "22in")]
    public void What_is_printed_for_programs_follows_its_schema(string schema, params string[] arguments)
    {
        using TestProgram program = WithRudder();
        JsonSchema expected = JsonSchema.FromText(File.ReadAllText(Repository.File($"docs/schemas/{schema}.schema.json")));
        EvaluationResults results = expected.Evaluate(
            Json(program, [.. arguments, "--json"]), new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(
            results.IsValid,
            string.Join("\n", (results.Details ?? []).Where(detail => detail.Errors is not null)
            .Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}")));
    }

    private static JsonElement Json(TestProgram program, params string[] arguments) =>
        JsonDocument.Parse(program.Must(arguments)).RootElement;
}
