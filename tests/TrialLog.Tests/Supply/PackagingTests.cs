using System.Diagnostics;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Commands;

namespace TrialLog.Tests.Supply;

/// <summary>What goes out beside the program: the manual page and the completion.</summary>
public class PackagingTests
{
    [Fact]
    public void The_manual_page_names_every_command_that_there_is()
    {
        using var program = new TestProgram();
        string help = program.Must("--help"), page = File.ReadAllText(Repository.File("packaging/triallog.1"));
        List<string> commands = [.. help[help.IndexOf("Commands:", StringComparison.Ordinal)..].Split('\n').Skip(1)
            .Where(line => line.StartsWith("  ", StringComparison.Ordinal) && line.Length > 2 && line[2] != ' ')
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[0])];
        Assert.True(commands.Count > 20, help);
        Assert.All(commands, command => Assert.Matches(
            $@"(?m)^\.BR? .*\b{command.Replace("-", @"\\-", StringComparison.Ordinal)}\b", page));
    }

    [Fact]
    public void The_shell_is_offered_what_can_follow()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Needs bash.");
        string dll = Path.Combine(AppContext.BaseDirectory, "triallog.dll");
        using Process bash = Process.Start(new ProcessStartInfo("bash", ["--norc", "-c", $$"""
            triallog() { dotnet '{{dll}}' "$@"; }
            source '{{Repository.File("packaging/triallog.bash")}}'
            COMP_LINE='triallog pad' COMP_POINT=12 COMP_CWORD=1 COMP_WORDS=(triallog pad)
            _triallog
            echo "${COMPREPLY[@]}"
            """]) { RedirectStandardOutput = true })!;
        string offered = bash.StandardOutput.ReadToEnd();
        bash.WaitForExit();
        Assert.Equal(["paddle", "paddler"], offered.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Order());
    }
}
