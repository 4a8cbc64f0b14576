using System.Text;
using System.Text.RegularExpressions;
using TrialLog.Tests.Commands;

namespace TrialLog.Tests.Docs;

/// <summary>
/// The console blocks in the documents show what the program prints: every <c>$ triallog …</c> line of a console block is run,
/// in order, on a logbook of its own, and what stands below it is compared with the output.
/// </summary>
public partial class ConsoleBlockTests
{
    [GeneratedRegex("(?<=^```console\n).*?(?=^```)", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex ConsoleBlock();

    [GeneratedRegex("\"(?<word>[^\"]*)\"|(?<word>[^\\s\"]+)")]
    private static partial Regex Word();

    [GeneratedRegex(@" \| head -(?<lines>\d+)$")]
    private static partial Regex FirstLines();

    [Theory]
    [InlineData("README.md")]
    [InlineData("docs/coach.md")]
    [InlineData("docs/effort.md")]
    public void The_program_prints_what_the_document_shows(string document)
    {
        string text = File.ReadAllText(Repository.File(document));
        Assert.Matches(ConsoleBlock(), text);
        using var program = new TestProgram();
        string played = ConsoleBlock().Replace(text, block => Played(program, block.Value));
        // To take over what the program prints now: set the variable, run, and read the difference before committing it.
        if (Environment.GetEnvironmentVariable("TRIALLOG_REWRITE_CONSOLE_BLOCKS") == "1")
            File.WriteAllText(Repository.File(document), played);
        Assert.Equal(text, played);
    }

    // The block with each command's real output in place of what stands there.
    private static string Played(TestProgram program, string block)
    {
        var played = new StringBuilder();
        foreach (string line in block.Split('\n').Where(line => line.StartsWith("$ ", StringComparison.Ordinal)))
        {
            // What comes after the first lines may be left out, as anybody would at a prompt.
            Match first = FirstLines().Match(line);
            string[] words = [
                .. Word().Matches(first.Success ? line[2..first.Index] : line[2..]).Select(match => match.Groups["word"].Value)];
            Assert.Equal("triallog", words[0]);
            string[] arguments = [
                .. words[1..].Select(word => word.StartsWith("sample-sessions/", StringComparison.Ordinal) ? Repository.File(word) : word)];
            TestProgram.Outcome outcome = program.Run(arguments);
            string shown = outcome.Output + outcome.Error;
            if (first.Success)
                shown = string.Concat(shown.Split('\n').Take(int.Parse(first.Groups["lines"].Value)).Select(text => text + "\n"));
            played.Append(line).Append('\n').Append(shown);
        }

        return played.ToString();
    }
}
