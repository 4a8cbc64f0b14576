using System.Text.Json;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

public class SharingCommandTests
{
    private static TestProgram WithOuting(string day = "2026-05-03")
    {
        TestProgram program = TestProgram.WithIlse();
        program.Must("log", "49.5in,1km,5:32,6", "50.5in,1km,5:31,6", "--date", day, "--notes", "glassy");
        return program;
    }

    private static string Share(TestProgram from, params string[] more)
    {
        string file = Path.Combine(from.Folder, $"{Guid.NewGuid():N}.json");
        from.Must(["share", "--out", file, .. more]);
        return file;
    }

    private static JsonElement Json(string text) => JsonDocument.Parse(text).RootElement;

    [Fact]
    public void A_record_goes_to_a_file_and_into_another_logbook_once()
    {
        using TestProgram mine = WithOuting();
        mine.Must("note", "add", "Sits tall.", "--by", "Tova Lind", "--outing", "last");
        using var theirs = new TestProgram();
        string file = Share(mine);
        JsonElement first = Json(theirs.Must("merge", file, "--json"));
        Assert.True(first.GetProperty("merged").GetBoolean());
        Assert.Equal(1, first.GetProperty("added").GetProperty("outing").GetInt32());
        Assert.Equal(mine.Must("history", "--json"), theirs.Must("history", "--json"));
        Assert.Equal(mine.Must("note", "list", "--json"), theirs.Must("note", "list", "--json"));
        Assert.Contains("Nothing to do", theirs.Must("merge", file));
        theirs.Must("undo");
        Assert.Equal("[]", theirs.Must("paddler", "list", "--json").Trim());
    }

    [Fact]
    public void Two_laptops_meet_in_a_folder()
    {
        using TestProgram mine = WithOuting();
        using var theirs = new TestProgram();
        string folder = Directory.CreateDirectory(Path.Combine(mine.Folder, "between")).FullName;
        Assert.Equal(0, Json(mine.Must("sync", folder, "--json")).GetProperty("files_taken_in").GetInt32());
        Assert.Equal(1, Json(theirs.Must("sync", folder, "--json")).GetProperty("added").GetProperty("outing").GetInt32());
        Assert.Equal(mine.Must("history", "--json"), theirs.Must("history", "--json"));
    }

    [Fact]
    public void Of_two_with_one_name_it_is_said_that_both_are_kept_where_nobody_is_there_to_be_asked()
    {
        using TestProgram mine = WithOuting(), theirs = WithOuting();
        string folder = Directory.CreateDirectory(Path.Combine(mine.Folder, "between")).FullName;
        mine.Must("sync", folder);
        Assert.Contains("“Ilse Maro” is in the file. Both are kept", theirs.Must("sync", folder).ReplaceLineEndings(" ").Replace("  ", ""));
        Assert.DoesNotContain("Both are kept", theirs.Must("sync", folder));
    }

    [Fact]
    public void Parts_are_left_out_on_request()
    {
        using TestProgram mine = WithOuting();
        string file = Path.Combine(mine.Folder, "part.json");
        Assert.Equal(["notes", "body_measures"], Json(mine.Must("share", "--out", file, "--without", "notes,body-measures", "--json"))
            .GetProperty("left_out").EnumerateArray().Select(part => part.GetString()!));
        Assert.DoesNotContain("glassy", File.ReadAllText(file));
        Assert.Contains("cannot be left out", mine.Run("share", "--out", file, "--without", "times").Error);
        Assert.Equal(1, mine.Run("share", "--out", mine.Store).Code);
        Assert.Equal(2, mine.Run("share", "--out", file, "--squad", "--paddler", "Ilse Maro").Code);
    }

    [Fact]
    public void Two_diverged_copies_keep_both_sides_and_ask_about_what_both_edited()
    {
        using TestProgram mine = WithOuting();
        using var theirs = new TestProgram();
        theirs.Must("merge", Share(mine));
        mine.Must("edit", "2026-05-03", "1", "--time", "5:30");
        theirs.Must("edit", "2026-05-03", "1", "--time", "5:29");
        mine.Must("log", "50in,1km,5:33,6", "--date", "2026-05-10");
        theirs.Must("log", "51in,1km,5:34,6", "--date", "2026-05-11");
        string file = Share(theirs);
        string before = mine.Must("history", "--json");

        TestProgram.Outcome undecided = mine.Run("merge", file);
        Assert.Equal(1, undecided.Code);
        Assert.Contains("1 question to decide", undecided.Error);
        Assert.Contains("5:30", undecided.Output);
        Assert.Contains("5:29", undecided.Output);
        JsonElement refused = Json(mine.Run("merge", file, "--json").Output);
        Assert.False(refused.GetProperty("merged").GetBoolean());
        Assert.Equal("edited-on-both", refused.GetProperty("questions")[0].GetProperty("question").GetString());
        mine.Must("merge", file, "--dry-run");
        Assert.Equal(1, mine.RunTyping("nonsense\nq\n", "merge", file).Code);
        Assert.Equal(before, mine.Must("history", "--json"));

        Assert.Equal(0, mine.RunTyping("t\n", "merge", file).Code);
        JsonElement[] outings = [.. Json(mine.Must("history", "--json")).EnumerateArray()];
        Assert.Equal(["2026-05-03", "2026-05-10", "2026-05-11"], outings.Select(outing => outing.GetProperty("date").GetString()!));
        Assert.Equal(329, outings[0].GetProperty("pieces")[0].GetProperty("time_s").GetDouble());
        mine.Must("undo");
        Assert.Equal(before, mine.Must("history", "--json"));
        mine.Must("merge", file, "--keep-here");
        Assert.Equal(330, Json(mine.Must("history", "--json"))[0].GetProperty("pieces")[0].GetProperty("time_s").GetDouble());
        Assert.Equal(2, mine.Run("merge", file, "--keep-here", "--theirs").Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("hello")]
    [InlineData("{}")]
    [InlineData("[1,2,3]")]
    [InlineData("{\"format\":\"triallog-record\",\"version\":999}")]
    public void A_file_that_is_no_record_changes_nothing(string contents)
    {
        using TestProgram mine = WithOuting();
        string before = mine.Must("history", "--json");
        TestProgram.Outcome outcome = mine.Run("merge", mine.File("stranger.json", contents), "--theirs");
        Assert.Equal(1, outcome.Code);
        Assert.Single(outcome.Error.TrimEnd().Split('\n'));
        Assert.Equal(1, mine.Run("merge", Path.Combine(mine.Folder, "absent.json")).Code);
        Assert.Equal(before, mine.Must("history", "--json"));
    }
}
