using System.Diagnostics;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

/// <summary>Which file is the logbook, and what a slip in its name does.</summary>
public class StoreNameTests
{
    [Theory]
    [InlineData("next")]
    [InlineData("history")]
    [InlineData("export")]
    [InlineData("log", "50in,1km,5:32,6")]
    [InlineData("paddler", "list")]
    [InlineData("--plain")]
    public void What_needs_a_log_begins_none_at_a_named_place(params string[] words)
    {
        using var program = new TestProgram();
        TestProgram.Outcome outcome = program.Run(words);
        Assert.Equal(1, outcome.Code);
        Assert.Contains($"There is no logbook at {program.Store}", outcome.Error);
        Assert.Contains("triallog paddler add", outcome.Error);
        Assert.Empty(Directory.GetFiles(program.Folder));
    }

    [Fact]
    public void A_slip_in_the_name_is_asked_about_and_begins_no_other_logbook()
    {
        using TestProgram program = TestProgram.WithIlse();
        string season = Path.Combine(program.Folder, "season.db"), slip = Path.Combine(program.Folder, "sesaon.db");
        File.Copy(program.Store, season);
        foreach (string words in (string[])["next", "paddler add Bram --reach 50in", "hull add Dory --crew 1", "history"])
            Assert.Contains("did you mean season.db?", program.Run([.. words.Split(' '), "--store", slip]).Error);
        Assert.False(File.Exists(slip));

        TestProgram.Outcome meant = program.Run("paddler", "add", "Bram", "--reach", "50in", "--store", slip, "--new-logbook");
        Assert.Equal(0, meant.Code);
        Assert.Contains($"A new logbook is begun: {slip}", meant.Error);
        Assert.Empty(program.Run("next", "--store", season).Error);
    }

    [Fact]
    public void Numbered_logbooks_and_other_files_are_no_slips()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.File("years.csv", "");
        foreach (string name in (string[])["log2.db", "years.db", "a-club.db"])
            program.Must("paddler", "add", "Bram", "--reach", "50in", "--store", Path.Combine(program.Folder, name));
    }

    /// <summary>Nothing that is named or mistyped drives the terminal.</summary>
    [Theory]
    [InlineData("next", "--no\u001b[2Jsuch")]
    [InlineData("ne\u001b]0;x\u0007xt")]
    [InlineData("next", "--store", "/no\u001b[2J/where")]
    [InlineData("next", "--store", "no\u001b[2Jthing.db")]
    public void Errors_hold_no_escape(params string[] words)
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome outcome = program.Run(words);
        Assert.NotEqual(0, outcome.Code);
        Assert.NotEmpty(outcome.Error);
        Assert.DoesNotContain('\u001b', outcome.Error + outcome.Output);
        Assert.DoesNotContain('\u0007', outcome.Error + outcome.Output);
    }

    /// <summary>Found by odd inputs: a check of several options asked for one that was itself wrong.</summary>
    [Theory]
    [InlineData("next", "--by")]
    [InlineData("next", "--json", "--because")]
    [InlineData("plan", "--weeks", "many")]
    public void A_value_that_is_missing_is_wrong_usage(params string[] words)
    {
        using TestProgram program = TestProgram.WithIlse();
        TestProgram.Outcome outcome = program.Run(words);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("--help", outcome.Error);
    }

    [Fact]
    public void A_note_that_begins_with_an_at_sign_is_a_note()
    {
        using TestProgram program = TestProgram.WithIlse();
        string file = program.File("words.txt", "--blade\n");
        program.Must("log", "--notes", "@" + file, "49in,1km,5:32,6");
        Assert.Contains("@" + file, program.Must("history"));
    }

    [Fact]
    public void The_usual_place_is_its_owners_alone()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Needs Unix file permissions.");
        if (OperatingSystem.IsWindows())
            return;
        string home = Directory.CreateTempSubdirectory("triallog-home-").FullName;
        try
        {
            string program = Path.Combine(AppContext.BaseDirectory, "triallog.dll");
            var start = new ProcessStartInfo("dotnet", [program, "next"]) { RedirectStandardError = true, RedirectStandardOutput = true };
            start.Environment["HOME"] = home;
            foreach (string set in (string[])["XDG_DATA_HOME", "TRIALLOG_STORE"])
                start.Environment.Remove(set);
            using Process run = Process.Start(start)!;
            Assert.Contains("no paddler yet", run.StandardError.ReadToEnd());
            run.WaitForExit();
            string folder = Path.Combine(home, ".local", "share", "triallog");
            const UnixFileMode readWrite = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            Assert.Equal(readWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
            Assert.Equal(readWrite, File.GetUnixFileMode(Path.Combine(folder, "logbook.db")));
        }
        finally
        {
            Directory.Delete(home, recursive: true);
        }
    }
}
