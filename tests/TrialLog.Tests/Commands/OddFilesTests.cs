using System.Diagnostics;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

/// <summary>What stands where a file should, and what a line break in a note looks like.</summary>
public class OddFilesTests
{
    /// <summary>Only what waits without end takes so long, however much else the machine does.</summary>
    private static readonly TimeSpan Timeout = TimeSpan.FromMinutes(3);

    /// <summary>A pipe that nobody writes to would be waited for without end.</summary>
    [Theory]
    [InlineData("import", "{pipe}")]
    [InlineData("merge", "{pipe}")]
    [InlineData("restore", "{pipe}")]
    [InlineData("next", "--store", "{pipe}")]
    public async Task A_pipe_is_refused_and_not_waited_for(params string[] words)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "No named pipes among the files of this system.");
        using TestProgram program = TestProgram.WithIlse();
        string pipe = Path.Combine(program.Folder, "pipe");
        using (Process made = Process.Start("mkfifo", pipe))
            await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        Task<TestProgram.Outcome> run = Task.Run(
            () => program.Run([.. words.Select(word => word.Replace("{pipe}", pipe, StringComparison.Ordinal))]));
        if (await Task.WhenAny(run, Task.Delay(Timeout, TestContext.Current.CancellationToken)) != run)
        {
            // Somebody writes after all, so that the thread that waits ends with the test.
            await File.WriteAllTextAsync(pipe, "", TestContext.Current.CancellationToken);
            Assert.Fail("It waits for the pipe.");
        }

        Assert.Equal(1, (await run).Code);
    }

    [Theory]
    [InlineData(9999)]
    [InlineData(1)]
    public void A_clock_that_cannot_be_right_is_told(int year)
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Clock.Pass(new DateTimeOffset(year, 12, 30, 12, 0, 0, TimeSpan.Zero) - program.Clock.GetUtcNow());
        foreach (string words in (string[])["next", "plan --paddles Reed", "log 49in,1km,5:32,6", "history"])
            Assert.Contains($"The clock of this computer says {year:0000}-12-30", program.Run(words.Split(' ')).Error);
    }

    [Fact]
    public void A_line_break_in_a_note_is_shown_as_one()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("log", "--notes", "gusty\nlate start\r\nnew grip", "49in,1km,5:32,6");
        string shown = program.Must("history");
        Assert.Contains("gusty / late start / new grip", shown);
        Assert.DoesNotContain('\uFFFD', shown);
    }
}
