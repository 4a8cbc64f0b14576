using System.Text.Json;
using Json.Schema;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

/// <summary>Names, owners, habits, decisions and word on soreness: set, cleared, renamed, moved, joined, and undone.</summary>
public class SetUpCommandTests
{
    private static readonly string[] Pieces = ["49.5in,1km,5:32,6", "50.5in,1km,5:31,6", "50.5in,1km,5:33,6", "49.5in,1km,5:35,6"];

    private static JsonElement Json(string text) => JsonDocument.Parse(text).RootElement;

    [Fact]
    public void A_value_is_set_cleared_and_brought_back()
    {
        using TestProgram program = TestProgram.WithIlse();
        string before = program.Must("start-length", "--paddler", "Ilse Maro", "--json");
        program.Must("paddler", "set", "Ilse Maro", "--reach", "none", "--goal", "none");
        JsonElement cleared = Json(program.Must("paddler", "list", "--json"))[0];
        Assert.Equal("nothing", cleared.GetProperty("start_basis").GetString());
        Assert.Equal(JsonValueKind.Null, cleared.GetProperty("goal").ValueKind);
        program.Must("undo");
        Assert.Equal(before, program.Must("start-length", "--paddler", "Ilse Maro", "--json"));
    }

    [Fact]
    public void Paddlers_hulls_and_paddles_are_renamed_and_keep_what_is_theirs()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces]);
        program.Must("paddler", "set", "Ilse Maro", "--name", "Ilse Marowska");
        program.Must("paddle", "set", "Reed", "--name", "Sedge");
        program.Must("hull", "set", "OC1", "--name", "Grey solo");
        JsonElement outing = Json(program.Must("history", "--paddler", "Ilse Marowska", "--json"))[0];
        Assert.Equal("Grey solo", outing.GetProperty("hull").GetString());
        Assert.Equal("Sedge", outing.GetProperty("pieces")[0].GetProperty("paddle").GetString());
        Assert.Equal(1, program.Run("paddler", "set", "Ilse Marowska", "--name", "  ").Code);
        program.Must("undo");
        Assert.Contains("OC1", program.Must("hull", "list"));
    }

    [Fact]
    public void Two_records_of_one_person_become_one_and_part_again()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces]);
        program.Must("paddler", "add", "I. Maro", "--reach", "49in", "--eye-height", "30in");
        program.Must(["log", "--paddler", "I. Maro", "--paddle", "Reed", .. Pieces]);
        TestProgram.Outcome asked = program.Run("paddler", "join", "I. Maro", "Ilse Maro");
        Assert.Equal(1, asked.Code);
        Assert.Contains("seated reach 50 in or 49 in", asked.Error);
        program.Must("paddler", "join", "I. Maro", "Ilse Maro", "--keep");
        JsonElement outings = Json(program.Must("history", "--json"));
        Assert.Equal(["2026-06-01", "2026-06-01:2"],
            outings.EnumerateArray().Select(outing => outing.GetProperty("name").GetString()).Order());
        Assert.Single(Json(program.Must("paddler", "list", "--json")).EnumerateArray());
        program.Must("undo");
        Assert.Equal(2, Json(program.Must("paddler", "list", "--json")).GetArrayLength());
        Assert.Single(Json(program.Must("history", "--paddler", "I. Maro", "--json")).EnumerateArray());
        Assert.Contains("2 outings", program.RunTyping("t\n", "paddler", "join", "I. Maro", "Ilse Maro").Output);
        Assert.Equal(49, Json(program.Must("paddler", "list", "--json"))[0].GetProperty("start_in").GetDouble());
    }

    [Fact]
    public void An_outing_moves_to_another_paddler_and_hull()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("paddler", "add", "Bram Okello", "--reach", "52in");
        program.Must(["log", "--paddler", "Ilse Maro", .. Pieces]);
        program.Must("edit", "last", "--paddler", "Ilse Maro", "--to", "Bram Okello", "--hull", "OC2");
        Assert.Equal("[]", program.Must("history", "--paddler", "Ilse Maro", "--json").Trim());
        Assert.Equal("OC2", Json(program.Must("history", "--paddler", "Bram Okello", "--json"))[0].GetProperty("hull").GetString());
        program.Must("undo");
        Assert.Single(Json(program.Must("history", "--paddler", "Ilse Maro", "--json")).EnumerateArray());
    }

    [Fact]
    public void What_was_logged_is_cleared_with_none()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", "--wind", "3", "--notes", "tide", .. Pieces]);
        program.Must("edit", "last", "--wind", "none", "--notes", "none");
        program.Must("edit", "last", "1", "--effort", "none");
        JsonElement outing = Json(program.Must("history", "--json"))[0];
        Assert.Equal(JsonValueKind.Null, outing.GetProperty("wind_beaufort").ValueKind);
        Assert.Equal(JsonValueKind.Null, outing.GetProperty("notes").ValueKind);
        Assert.Equal(JsonValueKind.Null, outing.GetProperty("pieces")[0].GetProperty("effort").ValueKind);
        Assert.Equal(6, outing.GetProperty("pieces")[1].GetProperty("effort").GetDouble());
    }

    [Theory]
    [InlineData("--pieces", "5")]
    [InlineData("--pieces", "2")]
    [InlineData("--pieces", "18")]
    [InlineData("--minutes", "5")]
    [InlineData("--timed", "ear")]
    [InlineData("--distance", "far")]
    [InlineData("--distance", "50m")]
    [InlineData("--distance", "30km")]
    public void A_card_that_cannot_be_is_refused_with_a_reason(string option, string value)
    {
        using TestProgram program = TestProgram.WithIlse();
        foreach (string[] line in new[] { ["next", option, value], new[] { "paddler", "set", "Ilse Maro", option, value } })
        {
            TestProgram.Outcome refused = program.Run(line);
            Assert.Equal(1, refused.Code);
            Assert.NotEmpty(refused.Error);
        }
    }

    [Fact]
    public void A_coachs_card_takes_the_programs_place_and_both_are_kept()
    {
        using TestProgram program = TestProgram.WithIlse();
        string text = program.Must("next", "--lengths", "49in,50in", "--by", "Tova Lind", "--because", "her new blade", "--pieces", "4");
        Assert.Contains("Tova Lind's card", text);
        Assert.Contains("Tova Lind's card", program.Must("next"));
        JsonElement card = Json(program.Must("history", "--advice", "--json"))[0].GetProperty("card");
        Assert.Equal([49, 50, 50, 49], card.GetProperty("lengths_in").EnumerateArray().Select(length => length.GetDouble()));
        Assert.Equal("Tova Lind", card.GetProperty("by").GetString());
        Assert.Equal("her new blade", card.GetProperty("because").GetString());
        Assert.True(card.GetProperty("own_lengths_in").GetArrayLength() >= 4);
        program.Must("log", "5:32,6", "5:33,6", "5:34,6", "5:35,6");
        Assert.Equal([49, 50, 50, 49], Json(program.Must("history", "--json"))[0].GetProperty("pieces").EnumerateArray()
            .Select(piece => piece.GetProperty("length_in").GetDouble()));
        Assert.Equal(1, program.Run("next", "--lengths", "49in,50in", "--by", "Tova Lind").Code);
        Assert.Equal(1, program.Run("next", "--lengths", "60in,50in", "--by", "Tova Lind", "--because", "long").Code);
        Assert.Equal(2, program.Run("next", "--by", "Tova Lind").Code);
    }

    [Fact]
    public void A_blind_card_keeps_its_lengths_from_the_paddler_until_the_times_are_in()
    {
        using TestProgram program = TestProgram.WithIlse();
        string file = Path.Combine(program.Folder, "partner.txt"), again = Path.Combine(program.Folder, "again.txt");
        string told = program.Must("next", "--blind", file, "--pieces", "4");
        string partner = File.ReadAllText(file);
        string[] lengths = [
            .. partner.Split('\n').Where(line => line.Contains(" = ", StringComparison.Ordinal)).Select(line => line.Split(" = ")[1])];
        Assert.Equal(2, lengths.Length);
        string card = told[told.IndexOf("Blind card", StringComparison.Ordinal)..];
        string plain = program.Must("next"), json = program.Must("next", "--json");
        foreach (string length in lengths)
        {
            Assert.DoesNotContain(length, card);
            Assert.DoesNotContain(length, plain[plain.IndexOf("Blind card", StringComparison.Ordinal)..]);
        }

        Assert.Empty(Json(json).GetProperty("card").GetProperty("lengths_in").EnumerateArray());
        Assert.Equal(["A", "B", "B", "A"],
            Json(json).GetProperty("card").GetProperty("letters").EnumerateArray().Select(letter => letter.GetString()));
        File.Delete(file);
        program.Must("next", "--blind", again);
        Assert.Equal(partner, File.ReadAllText(again));
        Assert.DoesNotContain(lengths[0], program.Run("log", "5:32,6").Error);
        string logged = program.Must("log", "5:32,6", "5:33,6", "5:34,6", "5:35,6");
        Assert.All(lengths, length => Assert.Contains(length, logged));
    }

    [Fact]
    public void Decisions_are_taken_down_shown_and_undone()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces]);
        Assert.Contains("Ordered 49¼ in on 1 June 2026, by Tova Lind: settled.",
            program.Must("decide", "--length", "49.25in", "--ordered", "--by", "Tova Lind", "--because", "settled"));
        Assert.Contains("Ordered 49¼ in", program.Must("next").ReplaceLineEndings(" "));
        JsonElement one = Json(program.Must("decide", "--json"))[0];
        Assert.Equal("ordered", one.GetProperty("kind").GetString());
        Assert.Equal(2, program.Run("decide", "--length", "49in", "--cut", "--kept").Code);
        Assert.Equal(1, program.Run("decide", "--length", "4in").Code);
        program.Must("undo");
        Assert.Equal("[]", program.Must("decide", "--json").Trim());
    }

    [Fact]
    public void Soreness_stands_until_a_later_outing_or_somebodys_word_says_that_it_is_gone()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces, "--soreness", "8"]);
        program.Clock.Pass(TimeSpan.FromDays(60));
        string sore = program.Must("next");
        Assert.Contains("Rest first: you logged soreness of 8 on 1 June 2026", sore.ReplaceLineEndings(" "));
        Assert.DoesNotContain("Outings to go", sore);
        Assert.Equal("sore", Json(program.Must("next", "--json")).GetProperty("standing").GetString());
        Assert.Contains("longer than what did not hurt",
            program.Run("next", "--lengths", "50in,51in", "--by", "Tova", "--because", "now").Error);
        program.Must("soreness", "clear", "--paddler", "Ilse Maro", "--by", "her physio", "--because", "no pain for weeks");
        Assert.NotEqual("sore", Json(program.Must("next", "--json")).GetProperty("standing").GetString());
        Assert.Equal(1, program.Run("soreness", "clear", "--by", "her physio").Code);
        program.Must("undo");
        Assert.Equal("sore", Json(program.Must("next", "--json")).GetProperty("standing").GetString());
    }

    [Fact]
    public void Whose_a_paddle_is_is_asked_once_by_who_used_it()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must(["log", .. Pieces]);
        program.Must("paddler", "add", "Bram Okello", "--reach", "52in");
        Assert.Contains("--owner \"Ilse Maro\"", program.Must("paddle", "owners"));
        Assert.Contains("paddle owners", program.Must("next", "--paddler", "Ilse Maro"));
        Assert.DoesNotContain("paddle owners", program.Must("next", "--paddler", "Ilse Maro"));
        Assert.Equal(0, program.RunTyping("\n", "paddle", "owners").Code);
        Assert.Equal("Ilse Maro", Json(program.Must("paddle", "list", "--json"))[0].GetProperty("owner").GetString());
        program.Must("paddle", "set", "Reed", "--owner", "none");
        Assert.Equal(JsonValueKind.Null, Json(program.Must("paddle", "list", "--json"))[0].GetProperty("owner").ValueKind);
    }

    [Fact]
    public void Next_keeps_to_its_schema_with_a_coachs_and_with_a_blind_card()
    {
        using TestProgram program = TestProgram.WithIlse();
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Repository.File("docs/schemas/next.schema.json")));
        foreach (
            string[] line in new[] { ["next", "--json"],
            ["next", "--lengths", "49in,50in", "--by", "Tova Lind", "--because", "a look", "--json"],
            new[] { "next", "--blind", Path.Combine(program.Folder, "p.txt"), "--json" } })
            Assert.True(schema.Evaluate(Json(program.Must(line))).IsValid, string.Join(' ', line));
    }

    [Fact]
    public void What_another_laptop_logs_for_a_record_that_was_joined_here_finds_its_way()
    {
        using TestProgram mine = TestProgram.WithIlse();
        using var theirs = new TestProgram();
        string file = Path.Combine(mine.Folder, "squad.json");
        mine.Must("paddler", "add", "Nell Arden", "--reach", "50in");
        mine.Must(["log", "--paddler", "Nell Arden", "--paddle", "Reed", .. Pieces]);
        mine.Must("share", "--out", file);
        theirs.Must("merge", file);
        mine.Must("paddler", "join", "Nell Arden", "Ilse Maro", "--keep");
        theirs.Must("log", "49in,1km,5:30", "51in,1km,5:31", "--paddler", "Nell Arden", "--paddle", "Reed");
        theirs.Must("share", "--out", file);
        mine.Must("merge", file);
        JsonElement one = Assert.Single(Json(mine.Must("paddler", "list", "--json")).EnumerateArray());
        Assert.Equal("Ilse Maro", one.GetProperty("name").GetString());
        Assert.Equal(2, Json(mine.Must("history", "--json")).GetArrayLength());
    }
}
