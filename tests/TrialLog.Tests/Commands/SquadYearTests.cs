using System.Text.Json;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Samples;

namespace TrialLog.Tests.Commands;

/// <summary>A squad of twenty over a year, as its coach meets it: each of the hard cases is told what they must be told.</summary>
public class SquadYearTests
{
    [Fact]
    public void Who_is_sore_hopeless_in_a_crew_of_six_or_tangled_is_told_so()
    {
        using var program = new TestProgram();
        program.Must("import", Repository.File("sample-sessions/squad-year.csv"));
        string folder = Path.Combine(program.Folder, "week"), entries = Path.Combine(program.Folder, "week.ics");
        JsonElement[] rows = [.. JsonDocument.Parse(program.Must("next", "--squad", "--json", "--each", folder, "--calendar", entries))
            .RootElement.EnumerateArray()];
        Assert.Equal(20, rows.Length);
        JsonElement Row(string name) => rows.Single(row => row.GetProperty("paddler").GetString() == name);
        string Text(string name, string field) => Row(name).GetProperty(field).GetString()!;
        string Checks(string name) => Row(name).GetProperty("checks").ToString();

        // Hurt at the last outing and silent for 71 days: first, with nothing to paddle and nothing that tempts.
        Assert.Equal(SquadYearSample.Sore, rows[0].GetProperty("paddler").GetString());
        Assert.Equal("hurt-and-silent", Text(SquadYearSample.Sore, "place"));
        Assert.Equal(new DateOnly(2026, 6, 1).DayNumber - SquadYearSample.LastDay.AddDays(-35).DayNumber,
            Row(SquadYearSample.Sore).GetProperty("days_silent").GetInt32());
        Assert.Equal(6, Row(SquadYearSample.Sore).GetProperty("soreness").GetDouble());
        Assert.Contains("Rest first", Text(SquadYearSample.Sore, "verdict"));
        Assert.Empty(Directory.GetFiles(folder, "wren*"));
        Assert.DoesNotContain("Wren", File.ReadAllText(entries));

        // Forty outings of one length each: told that days cannot be told from lengths, and handed a card with several.
        Assert.Contains("one length", Text(SquadYearSample.Hopeless, "verdict") + Checks(SquadYearSample.Hopeless));
        Assert.True(Row(SquadYearSample.Hopeless).GetProperty("card").GetProperty("lengths_in").EnumerateArray().Distinct().Count() > 1);
        Assert.NotEmpty(Directory.GetFiles(folder, "odo-farrant.html"));

        // In a crew of six alone: no card that cannot tell; sent to a solo hull.
        Assert.Equal("cannot-tell", Text(SquadYearSample.SixOnly, "standing"));
        Assert.Equal("cannot tell: try a solo hull", Text(SquadYearSample.SixOnly, "this_week"));
        Assert.Empty(Directory.GetFiles(folder, "joss*"));

        // The longer length always last: told that tiredness may look like length.
        Assert.Contains("tired", Checks(SquadYearSample.Tangled));

        // The rest: most to win first, and whoever is handed a card has one file of each kind.
        double[] toWin = [.. rows.Where(row => row.GetProperty("place").GetString() == "to-win")
            .Select(row => row.GetProperty("to_win_pct").GetDouble())];
        Assert.Equal(toWin.OrderDescending(), toWin);
        Assert.Equal(4 * rows.Count(row => row.GetProperty("tests").GetBoolean()), Directory.GetFiles(folder).Length);
    }
}
