using System.Text.Json;
using TrialLog.Domain.Log;
using TrialLog.Logbook;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

public class CoachCommandTests
{
    private static TestProgram WithOutings(int outings)
    {
        TestProgram program = TestProgram.WithIlse();
        for (int i = 0; i < outings; i++)
        {
            int pieces = JsonDocument.Parse(program.Must("next", "--json")).RootElement.GetProperty("card").GetProperty("lengths_in")
                .GetArrayLength();
            program.Must(["log", .. Enumerable.Range(0, pieces).Select(at => $"5:3{i + Math.Min(at, 2)},6"), "--soreness", "1"]);
            program.Clock.Pass(TimeSpan.FromDays(4));
        }

        return program;
    }

    [Fact]
    public void What_others_logs_teach_can_be_switched_off_for_every_surface()
    {
        using TestProgram program = new();
        program.Must("import", Repository.File("sample-sessions/squad-year.csv"));
        JsonElement Taught() => JsonDocument.Parse(program.Must("next", "--paddler", "Mila Orne", "--json")).RootElement;
        Assert.InRange(Taught().GetProperty("learnt_from_squad").GetProperty("paddlers").GetInt32(), 2, 19);
        const string Helped = "of 4 others helped";
        Assert.Contains(Helped, program.Must("next", "--paddler", "Mila Orne"));
        double with = Taught().GetProperty("gain_left_pct").GetDouble();
        program.Must("squad-lessons", "off");
        Assert.Equal(JsonValueKind.Null, Taught().GetProperty("learnt_from_squad").ValueKind);
        Assert.DoesNotContain(Helped, program.Must("next", "--paddler", "Mila Orne"));
        double without = Taught().GetProperty("gain_left_pct").GetDouble();
        Assert.NotEqual(with, without);
        Assert.Equal(without, JsonDocument.Parse(program.Must("next", "--squad", "--json")).RootElement.EnumerateArray()
            .Single(one => one.GetProperty("paddler").GetString() == "Mila Orne").GetProperty("gain_left_pct").GetDouble());
        program.Must("squad-lessons", "on");
        Assert.Equal(with, Taught().GetProperty("gain_left_pct").GetDouble());
    }

    [Fact]
    public void A_report_is_written_in_each_format_and_the_file_s_name_says_which()
    {
        using TestProgram program = WithOutings(2);
        program.Must("note", "add", "Sits tall now.", "--by", "Tova Lind");
        string file = Path.Combine(program.Folder, "report.html");
        Assert.Contains("report.html", program.Must("report", "--out", file));
        string html = File.ReadAllText(file);
        Assert.StartsWith("<!DOCTYPE html>", html);
        Assert.DoesNotContain("Sits tall now.", html);
        Assert.Contains("2026-06-09", html);
        JsonElement facts = JsonDocument.Parse(program.Must("report", "--out", file, "--notes", "--json")).RootElement;
        Assert.Equal((file, "html", 2, 12, 1), (facts.GetProperty("file").GetString(), facts.GetProperty("format").GetString(),
            facts.GetProperty("outings").GetInt32(), facts.GetProperty("pieces").GetInt32(), facts.GetProperty("notes").GetInt32()));
        Assert.Contains("Sits tall now.", File.ReadAllText(file));
        Assert.StartsWith("# Paddle length of Ilse Maro", program.Must("report", "--out", "-", "--format", "md"));
        string[] rows = program.Must("report", "--out", "-", "--format", "csv").TrimEnd().Split("\r\n");
        Assert.Equal(1 + 12, rows.Length);
        Assert.Empty(Directory.GetFiles(program.Folder, "*.part"));
    }

    [Fact]
    public void A_report_never_goes_over_the_logbook_nor_into_a_folder_that_is_not_there()
    {
        using TestProgram program = WithOutings(1);
        byte[] before = File.ReadAllBytes(program.Store);
        foreach (string file in new[] { program.Store, Path.Combine(program.Folder, "no", "where.html") })
        {
            foreach (
                string[] command in new[] { ["report", "--out", file], new[] { "next", "--squad", "--out", file },
                ["next", "--calendar", file] })
                Assert.Equal(1, program.Run(command).Code);
        }

        Assert.Single(JsonDocument.Parse(program.Must("history", "--json")).RootElement.EnumerateArray());
        Assert.Equal(before[..16], File.ReadAllBytes(program.Store)[..16]);
        Assert.Equal(1, program.Run("report", "--out", "x", "--format", "pdf").Code);
        Assert.Equal(2, program.Run("report").Code);
    }

    [Fact]
    public void Notes_are_kept_on_a_paddler_an_outing_and_a_card_with_who_and_when()
    {
        using TestProgram program = WithOutings(1);
        Assert.Contains("--by NAME", program.Run("note", "add", "Nobody's.").Error);
        program.Must("note", "add", "On the paddler.", "--by", "Tova Lind");
        program.Clock.Pass(TimeSpan.FromMinutes(1));
        program.Must("note", "add", "On the outing.", "--outing", "last");
        program.Clock.Pass(TimeSpan.FromMinutes(1));
        program.Must("note", "add", "On the card.", "--card", "1", "--by", "Jory Pell");
        JsonElement[] notes = [.. JsonDocument.Parse(program.Must("note", "list", "--json")).RootElement.EnumerateArray()];
        Assert.Equal(
            [("paddler", "Ilse Maro", "Tova Lind"), ("outing", "the outing 2026-06-01", "Tova Lind"),
                ("card", "the card of 2026-06-01", "Jory Pell")],
            notes.Select(note =>
                (note.GetProperty("about").GetString()!, note.GetProperty("on").GetString()!, note.GetProperty("author").GetString()!)));
        Assert.Equal("2026-06-05T12:01:00Z", notes[1].GetProperty("written_at").GetString());
        program.Must("note", "remove", "2");
        Assert.DoesNotContain("On the outing.", program.Must("note", "list"));
        program.Must("undo");
        Assert.Contains("On the outing.", program.Must("note", "list"));
        Assert.Equal(1, program.Run("note", "remove", "4").Code);
        Assert.Equal(1, program.Run("note", "add", "Both.", "--outing", "last", "--card", "1").Code);
        Assert.Equal(1, program.Run("note", "add", new string('x', 4001)).Code);
    }

    [Fact]
    public void The_history_of_advice_tells_what_was_suggested_from_how_much_and_what_was_paddled()
    {
        using TestProgram program = WithOutings(2);
        program.Must("next");
        JsonElement[] advice = [.. JsonDocument.Parse(program.Must("history", "--advice", "--json")).RootElement.EnumerateArray()];
        Assert.Equal([(0, 0), (1, 6), (2, 12)],
            advice.Select(one => (one.GetProperty("outings").GetInt32(), one.GetProperty("pieces").GetInt32())));
        Assert.Equal(["as suggested", "as suggested", "not paddled"], advice.Select(one => one.GetProperty("followed").GetString()!));
        Assert.Equal(["2026-06-01", "2026-06-05", null], advice.Select(one => one.GetProperty("paddled_outing").GetString()));
        Assert.Equal(
            advice[1].GetProperty("best_in").GetDouble() - advice[0].GetProperty("best_in").GetDouble(),
            advice[1].GetProperty("best_moved_in").GetDouble(), 6);
        string text = program.Must("history", "--advice");
        Assert.Contains("from 1 outing, 6 pieces", text);
        Assert.Matches(@"\(as\s+suggested\)", text);
    }

    [Fact]
    public void A_suggestion_is_derived_again_from_the_log_as_it_was_then()
    {
        using TestProgram program = WithOutings(3);
        program.Must("paddler", "set", "Ilse Maro", "--reach", "48in");
        program.Must("exclude", "last", "1", "--because", "wash");
        for (int number = 1; number <= 3; number++)
        {
            JsonElement again = JsonDocument.Parse(program.Must("history", "--rederive", $"{number}", "--json")).RootElement;
            Assert.True(again.GetProperty("same").GetBoolean(), again.ToString());
            Assert.Equal(6 * (number - 1), again.GetProperty("again").GetProperty("pieces").GetInt32());
        }

        Assert.Contains("comes out the same", program.Must("history", "--rederive", "2"));
        Assert.Contains("numbered 1 to 3", program.Run("history", "--rederive", "9").Error);
    }

    [Fact]
    public void A_suggestion_that_was_tampered_with_or_given_elsewhere_is_told_apart()
    {
        using TestProgram program = WithOutings(2);
        using (LogbookFile logbook = LogbookFile.Open(program.Store))
        {
            GivenCard[] cards = [.. logbook.Cards()];
            logbook.Change("Tampered", writer =>
            {
                writer.Put(cards[0] with { AsOfChange = 0 });
                writer.Put(cards[1] with { Best = cards[1].Best.PlusInches(1) });
            });
        }

        Assert.Contains("another copy of the log", program.Run("history", "--rederive", "1").Error);
        JsonElement again = JsonDocument.Parse(program.Must("history", "--rederive", "2", "--json")).RootElement;
        Assert.False(again.GetProperty("same").GetBoolean());
        Assert.Equal("best length", again.GetProperty("differences")[0].GetProperty("what").GetString());
        Assert.Contains("comes out different", program.Must("history", "--rederive", "2"));
    }

    [Fact]
    public void The_entry_of_a_sore_paddler_does_not_send_them_afloat()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("log", "49.5in,1km,5:32,6", "50.5in,1km,5:31,6", "--soreness", "5");
        string file = Path.Combine(program.Folder, "week.ics");
        program.Must("next", "--calendar", file);
        Assert.DoesNotContain("BEGIN:VEVENT", File.ReadAllText(file));
        program.Must("edit", "last", "--soreness", "0");
        program.Must("next", "--calendar", file);
        Assert.Contains("SUMMARY:Paddle trial", File.ReadAllText(file));
        Assert.DoesNotContain("STATUS:CANCELLED", File.ReadAllText(file));
        program.Must("edit", "last", "--soreness", "5");
        program.Must("next", "--calendar", file);
        Assert.Contains("STATUS:CANCELLED", File.ReadAllText(file));
    }

    [Fact]
    public void The_week_s_card_goes_into_a_calendar_once()
    {
        using TestProgram program = WithOutings(1);
        string file = Path.Combine(program.Folder, "week.ics");
        Assert.Contains("2026-W23", program.Must("next", "--calendar", file));
        string first = File.ReadAllText(file);
        program.Must("next", "--calendar", file);
        Assert.Equal(first, File.ReadAllText(file));
        program.Must("log", "49in,1km,5:40,6", "52in,1km,5:30,6", "52in,1km,5:31,6", "49in,1km,5:41,6");
        program.Must("next", "--calendar", file, "--json");
        string second = File.ReadAllText(file);
        Assert.NotEqual(first, second);
        Assert.Single(second.Split("\r\n"), line => line == "BEGIN:VEVENT");
        program.Must("next", "--calendar", file, "--on", "2026-06-09");
        Assert.Equal(2, File.ReadAllText(file).Split("\r\n").Count(line => line == "BEGIN:VEVENT"));
        string other = program.File("other.ics", "not a calendar");
        Assert.Contains("is not a calendar", program.Run("next", "--calendar", other).Error);
        Assert.Equal("not a calendar", File.ReadAllText(other));
        Assert.Equal(2, program.Run("next", "--on", "2026-06-09").Code);
    }

    [Fact]
    public void The_squad_is_told_worst_first_with_cards_and_entries_for_who_tests_alone()
    {
        using TestProgram program = WithOutings(1);
        program.Must("paddler", "add", "Bram Okello", "--reach", "52in");
        program.Must("paddle", "set", "Reed", "--club");
        program.Must("log", "51in,1km,5:30,6", "53in,1km,5:30,6", "--paddler", "Bram Okello", "--soreness", "6");
        string text = program.Must("next", "--squad");
        Assert.InRange(text.IndexOf("Bram Okello", StringComparison.Ordinal), 1, text.IndexOf("Ilse Maro", StringComparison.Ordinal));
        JsonElement[] squad = [.. JsonDocument.Parse(program.Must("next", "--squad", "--json")).RootElement.EnumerateArray()];
        Assert.Equal(["Bram Okello", "Ilse Maro"], squad.Select(one => one.GetProperty("paddler").GetString()!));
        string file = Path.Combine(program.Folder, "squad.html");
        Assert.Contains(
            "2 paddlers", program.Must("next", "--squad", "--out", file, "--calendar", Path.Combine(program.Folder, "squad.ics")));
        Assert.Contains("This week's cards", File.ReadAllText(file));
        Assert.Single(File.ReadAllText(Path.Combine(program.Folder, "squad.ics")).Split("\r\n"), line => line == "BEGIN:VEVENT");
        program.Must("paddle", "add", "Willow", "--blade", "20in", "--range", "47in..53in", "--club");
        program.Must("paddler", "add", "Tova Lind", "--reach", "50in");
        Assert.Matches("Tova Lind +no paddle: choose one", program.Must("next", "--squad"));
        program.Must("next", "--paddler", "Tova Lind", "--paddle", "Willow");
        Assert.Contains("3 paddlers", program.Must("next", "--squad"));
        Assert.Equal(2, program.Run("next", "--out", file).Code);
    }

    [Fact]
    public void Nobody_is_shown_or_sold_anothers_paddle()
    {
        using TestProgram program = WithOutings(2);
        program.Must("paddler", "add", "Bram Okello", "--reach", "52in");
        program.Must("paddle", "add", "Bram's own", "--blade", "20in", "--range", "49in..55in");
        program.Must("log", "51in,1km,5:30,6", "53in,1km,5:30,6", "--paddler", "Bram Okello", "--paddle", "Bram's own");
        foreach (string[] command in new[] { ["report", "--out", "-", "--format", "md"], new[] { "order-sheet" }, ["transfer"] })
        {
            Assert.DoesNotContain("Bram", program.Must([.. command, "--paddler", "Ilse Maro"]));
            Assert.Contains("Bram's own", program.Must([.. command, "--paddler", "Bram Okello"]).Replace("\\", ""));
        }
    }

    [Fact]
    public void A_squad_of_a_hundred_with_twenty_outings_each_is_told_the_same_each_time()
    {
        using TestProgram program = TestProgram.WithIlse();
        using (LogbookFile logbook = LogbookFile.Open(program.Store))
            LargeSquad.Fill(logbook, paddlers: 100, outings: 20);

        string first = program.Must("next", "--squad");
        Assert.Contains("101 paddlers", first);
        Assert.Equal(first, program.Must("next", "--squad"));
    }
}
