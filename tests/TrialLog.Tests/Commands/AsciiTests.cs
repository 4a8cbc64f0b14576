using System.Text.Json;
using TrialLog.Commands;
using TrialLog.Plots;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

/// <summary>A terminal that knows no UTF-8 is sent none, and loses nothing by it.</summary>
public class AsciiTests
{
    [Theory]
    [InlineData("C", true, false)]
    [InlineData("C", false, false)]
    [InlineData("de_DE.ISO-8859-1", false, false)]
    [InlineData("de_DE.utf8", true, true)]
    [InlineData(null, true, false)]
    [InlineData(null, false, true)]
    public void The_locale_says_what_sentences_may_hold(string? locale, bool isTerminal, bool fine)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such variables.");
        Assert.Equal(fine ? Strokes.Fine : Strokes.Ascii, StrokesOf.Sentences(name => name == "LANG" ? locale : null, isTerminal));
    }

    [Fact]
    public void Sentences_are_spelt_in_ascii_and_json_is_escaped()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("paddler", "set", "Ilse Maro", "--name", "Zoë Łuk");
        program.Must("log", "49.75in,1km,5:32,6", "51in,1km,5:31,6", "--notes", "“gusty” – שלום");
        foreach (string words in (string[])["next", "history", "curve", "check", "progress", "start-length", "transfer", "verify", "--help",
            "next --help", "paddler list", "--plain"])
        {
            (string sentences, string error) = Ascii(program, words.Split(' '));
            Assert.NotEmpty(sentences);
            Assert.DoesNotContain(sentences + error, c => !char.IsAscii(c));
        }

        Assert.Contains("49 3/4 in", Ascii(program, "history").Output);
        (string json, _) = Ascii(program, "history", "--json");
        Assert.DoesNotContain(json, c => !char.IsAscii(c));
        Assert.Equal("“gusty” – שלום", JsonDocument.Parse(json).RootElement[0].GetProperty("notes").GetString());
    }

    private static (string Output, string Error) Ascii(TestProgram program, params string[] words)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        CommandLineProgram.Run(words, new ConsoleHost
        {
            In = new StringReader(""), Out = output, Error = error, Interactive = false, Sentences = Strokes.Ascii, Clock = program.Clock,
            Environment = name => name switch { "TRIALLOG_STORE" => program.Store, "LANG" => "C", _ => null },
        });
        return (output.ToString(), error.ToString());
    }
}
