using System.Text.Json;
using Json.Schema;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

/// <summary>The coach's week on a squad of three who share one paddle: what is planned, handed out and called off.</summary>
public class SquadWeekTests
{
    [Fact]
    public void A_folder_has_a_card_an_entry_and_a_line_for_each_who_tests_and_nothing_for_who_is_sore()
    {
        using TestProgram program = Squad();
        string folder = Path.Combine(program.Folder, "week");
        Assert.Contains("3 cards", program.Must("next", "--squad", "--each", folder));
        Assert.Equal(12, Directory.GetFiles(folder).Length);
        string card = File.ReadAllText(Path.Combine(folder, "ilse-maro.html"));
        Assert.Contains("<ol class=\"large\">", card);
        Assert.DoesNotContain("http", card.Replace("http://www.w3.org", "").Replace("http-equiv", ""));
        Assert.Single(File.ReadAllLines(Path.Combine(folder, "ilse-maro.txt")));

        program.Must("log", "49in,1km,5:30,6", "51in,1km,5:31,6", "51in,1km,5:32,6", "49in,1km,5:33,6", "--paddler", "Ilse Maro",
            "--paddle", "Reed", "--soreness", "6");
        Assert.Contains("2 cards", program.Must("next", "--squad", "--each", folder));
        Assert.Empty(Directory.GetFiles(folder, "ilse-maro*"));
    }

    [Fact]
    public void The_coachs_card_that_stands_is_the_one_that_every_page_hands_out()
    {
        using TestProgram program = Squad();
        string folder = Path.Combine(program.Folder, "week"), sheet = Path.Combine(program.Folder, "squad.txt"),
            entries = Path.Combine(program.Folder, "week.ics"), report = Path.Combine(program.Folder, "report.txt");
        program.Must("next", "--paddler", "Ilse Maro", "--paddle", "Reed", "--lengths", "48in,52in", "--by", "Tova Lind", "--because",
            "The ends first");
        program.Must("next", "--squad", "--each", folder, "--out", sheet, "--calendar", entries);
        program.Must("report", "--paddler", "Ilse Maro", "--paddle", "Reed", "--out", report);
        string[] pages = [sheet, entries, report, Path.Combine(folder, "ilse-maro.html"), Path.Combine(folder, "ilse-maro.ics")];
        foreach (string page in pages)
        {
            // A calendar folds its lines, plain text wraps them.
            string text = string.Join(' ', File.ReadAllText(page).Replace("\r\n ", "").Split((char[])[' ', '\u00a0', '\r', '\n'],
                StringSplitOptions.RemoveEmptyEntries));
            Assert.Contains("52 in", text);
            Assert.Contains("The ends first. The log itself would ask for", text);
        }

        Assert.Contains("Ilse Maro, 48, 52 in", program.Must("plan", "--weeks", "3", "--paddles", "Reed"));
        Assert.Contains("48, 52, 52, 48 in", File.ReadAllText(Path.Combine(folder, "ilse-maro.txt")));
        JsonElement ilse = JsonDocument.Parse(program.Must("next", "--squad", "--json")).RootElement.EnumerateArray()
            .Single(one => one.GetProperty("paddler").GetString() == "Ilse Maro");
        Assert.Equal("test 48, 52 (Tova Lind)", ilse.GetProperty("this_week").GetString());
        Assert.Equal("Tova Lind", ilse.GetProperty("card").GetProperty("by").GetString());
    }

    [Fact]
    public void A_blind_card_that_stands_is_handed_out_in_letters()
    {
        using TestProgram program = Squad();
        string folder = Path.Combine(program.Folder, "week");
        program.Must("next", "--paddler", "Ilse Maro", "--paddle", "Reed", "--lengths", "48in,52in", "--by", "Tova Lind", "--because",
            "The ends first", "--blind", Path.Combine(program.Folder, "partner.txt"));
        string squad = program.Must("next", "--squad", "--each", folder) + program.Must("next", "--squad")
            + program.Must("next", "--squad", "--json")
            + string.Join("\n", Directory.GetFiles(folder, "ilse-maro*").Select(File.ReadAllText));
        string ofIlse = string.Join("\n", Directory.GetFiles(folder, "ilse-maro*").Select(File.ReadAllText));
        Assert.Contains("test blind", squad);
        Assert.Contains("A B B A, the partner knows the lengths", ofIlse);
        Assert.DoesNotContain("48 in", ofIlse);
        Assert.DoesNotContain("52 in", ofIlse);
    }

    [Fact]
    public void Json_has_everybody_with_place_soreness_and_silence()
    {
        using TestProgram program = Squad();
        program.Must("paddle", "add", "Pike", "--blade", "18.5in", "--range", "47in..53in", "--owner", "Bram Okello");
        program.Must("paddle", "set", "Reed", "--owner", "Ilse Maro");
        program.Must("paddler", "add", "Nell Arden", "--reach", "49in");
        program.Must("log", "49in,1km,5:30,6", "51in,1km,5:31,6", "51in,1km,5:32,6", "49in,1km,5:33,6", "--paddler", "Ilse Maro",
            "--paddle", "Reed", "--soreness", "6");
        JsonElement squad = JsonDocument.Parse(program.Must("next", "--squad", "--json")).RootElement;
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Repository.File("docs/schemas/next.schema.json")));
        Assert.True(schema.Evaluate(squad).IsValid);
        JsonElement[] rows = [.. squad.EnumerateArray()];
        Assert.Equal(4, rows.Length);
        JsonElement ilse = rows.Single(row => row.GetProperty("paddler").GetString() == "Ilse Maro");
        Assert.Equal(6, ilse.GetProperty("soreness").GetDouble());
        Assert.Equal("2026-06-01", ilse.GetProperty("last_outing").GetString());
        JsonElement nell = rows.Single(row => row.GetProperty("paddler").GetString() == "Nell Arden");
        Assert.Equal("no-paddle", nell.GetProperty("place").GetString());
        Assert.Equal(JsonValueKind.Null, nell.GetProperty("paddle").ValueKind);
        program.Clock.Pass(TimeSpan.FromDays(3));
        JsonElement first = JsonDocument.Parse(program.Must("next", "--squad", "--json")).RootElement[0];
        Assert.Equal("hurt-and-silent", first.GetProperty("place").GetString());
        Assert.True(first.GetProperty("days_silent").GetInt32() >= 3);
    }

    [Fact]
    public void The_plan_lends_each_paddle_once_a_week_and_calls_off_who_has_become_sore()
    {
        using TestProgram program = Squad();
        string entries = Path.Combine(program.Folder, "plan.ics");
        string[] command = ["plan", "--weeks", "3", "--paddles", "Reed", "--calendar", entries, "--json"];
        JsonElement plan = JsonDocument.Parse(program.Must(command)).RootElement;
        JsonElement[] outings = [.. plan.GetProperty("outings").EnumerateArray()];
        Assert.Equal(3, outings.Length);
        Assert.Equal(3, outings.Select(outing => outing.GetProperty("day").GetString()).Distinct().Count());
        Assert.Equal(3, plan.GetProperty("paddlers").GetArrayLength());
        string first = outings[0].GetProperty("paddler").GetString()!;
        Assert.All(plan.GetProperty("paddlers").EnumerateArray(), one => Assert.Equal(
            outings.Count(outing => outing.GetProperty("paddler").GetString() == one.GetProperty("paddler").GetString()),
            one.GetProperty("outings").GetInt32()));

        program.Must("log", "49in,1km,5:30,6", "51in,1km,5:31,6", "51in,1km,5:32,6", "49in,1km,5:33,6", "--paddler", first, "--paddle",
            "Reed", "--soreness", "6");
        plan = JsonDocument.Parse(program.Must(command)).RootElement;
        Assert.DoesNotContain(plan.GetProperty("outings").EnumerateArray(), outing => outing.GetProperty("paddler").GetString() == first);
        Assert.Contains(plan.GetProperty("paddlers").EnumerateArray(), one => one.GetProperty("paddler").GetString() == first
            && one.GetProperty("why_none").GetString() == "sore: rest first");
        string text = File.ReadAllText(entries);
        Assert.Contains("STATUS:CANCELLED", text);
        Assert.Contains("STATUS:CONFIRMED", text);
    }

    [Fact]
    public void A_race_near_by_ends_the_outings_of_whoever_races()
    {
        using TestProgram program = Squad();
        string today = JsonDocument.Parse(program.Must("plan", "--weeks", "3", "--paddles", "Reed", "--json")).RootElement.GetProperty(
            "from").GetString()!;
        DateOnly race = DateOnly.Parse(today, System.Globalization.CultureInfo.InvariantCulture).AddDays(1);
        JsonElement plan = JsonDocument.Parse(
            program.Must("plan", "--weeks", "3", "--paddles", "Reed", "--json", "--race", $"Bram Okello: {race:yyyy-MM-dd}")).RootElement;
        Assert.Equal("Bram Okello", plan.GetProperty("outings")[0].GetProperty("paddler").GetString());
        Assert.Single(plan.GetProperty("outings").EnumerateArray(), outing => outing.GetProperty("paddler").GetString() == "Bram Okello");
        Assert.Equal(1, program.Run("plan", "--paddles", "Reed", "--race", "next week").Code);
        Assert.Equal(2, program.Run("plan", "--paddles", "Reed", "--weeks", "0").Code);
    }

    [Fact]
    public void The_history_says_what_each_outing_taught_and_how_often_the_tool_was_right()
    {
        using TestProgram program = Squad();
        Assert.Contains("Of 3 likely ranges", program.Must("history", "--held"));
        program.Must("next", "--paddler", "Ilse Maro", "--paddle", "Reed");
        program.Must("log", "49in,1km,5:30,6", "51in,1km,5:40,6", "51in,1km,5:41,6", "49in,1km,5:31,6", "--paddler", "Ilse Maro",
            "--paddle", "Reed");
        Assert.Contains("This outing", program.Must("history", "--advice", "--paddler", "Ilse Maro"));
        Assert.Contains("Of 4 likely ranges", program.Must("history", "--held"));
    }

    private static TestProgram Squad()
    {
        TestProgram program = TestProgram.WithIlse();
        program.Must("paddle", "set", "Reed", "--club");
        foreach (string name in new[] { "Bram Okello", "Tova Lind" })
            program.Must("paddler", "add", name, "--reach", "50in");
        foreach (string name in new[] { "Ilse Maro", "Bram Okello", "Tova Lind" })
            program.Must("log", "49in,1km,5:30,6", "51in,1km,5:31,6", "51in,1km,5:32,6", "49in,1km,5:32,6", "--paddler", name,
                "--paddle", "Reed");
        return program;
    }
}
