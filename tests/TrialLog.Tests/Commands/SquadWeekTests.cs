using System.Text.Json;
using TrialLog.Domain.Values;
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

        program.Must("log", "49in,1km,5:30,6", "51in,1km,5:31,6", "51in,1km,5:32,6", "49in,1km,5:33,6", "--paddler", first, "--paddle",
            "Reed", "--soreness", "6");
        plan = JsonDocument.Parse(program.Must(command)).RootElement;
        Assert.DoesNotContain(plan.GetProperty("outings").EnumerateArray(), outing => outing.GetProperty("paddler").GetString() == first);
        Assert.Contains(plan.GetProperty("paddlers").EnumerateArray(), one => one.GetProperty("paddler").GetString() == first
            && one.GetProperty("why_none").GetString()!.Contains("sore"));
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
        Assert.Contains("can be judged yet", program.Must("history", "--held"));
        program.Must("next", "--paddler", "Ilse Maro", "--paddle", "Reed");
        program.Must("log", "49in,1km,5:30,6", "51in,1km,5:40,6", "51in,1km,5:41,6", "49in,1km,5:31,6", "--paddler", "Ilse Maro",
            "--paddle", "Reed");
        Assert.Contains("This outing", program.Must("history", "--advice", "--paddler", "Ilse Maro"));
        Assert.Contains("Of 1 likely range", program.Must("history", "--held"));
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
