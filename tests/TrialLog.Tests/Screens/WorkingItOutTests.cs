using Terminal.Gui.Input;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Base;

namespace TrialLog.Tests.Screens;

/// <summary>Long work runs beside the keys, says so, can be stopped, and is done once for each state of the log.</summary>
[Collection(nameof(ScreensTests))]
public sealed class WorkingItOutTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("triallog-screens-").FullName;

    private string Logbook => Path.Combine(_folder, "logbook.db");

    [Fact]
    public void Keys_are_answered_while_an_analysis_runs_and_Esc_stops_waiting_for_it()
    {
        SampleLog.Write(Logbook);
        using var allowed = new ManualResetEventSlim();
        Analyses slow = SampleLog.Known with
        {
            Analyse = question =>
            {
                allowed.Wait();
                return SampleLog.Known.Analyse(question);
            },
        };
        using var terminal = new AtTheTerminal(Logbook, analyses: slow, waits: false);
        terminal.Shows("Working it out from the log").Type("3").Shows("6 outings").Type("1").Press(Key.Esc)
            .Shows("Stopped before there was an answer").Shows("F5 work it out");
        allowed.Set();
        terminal.Press(Key.F5).WaitFor("Next outing");
    }

    [Fact]
    public void What_was_found_is_kept_until_the_log_changes()
    {
        SampleLog.Write(Logbook);
        int analyses = 0;
        Analyses counted = SampleLog.Known with
        {
            Analyse = question =>
            {
                Interlocked.Increment(ref analyses);
                return SampleLog.Known.Analyse(question);
            },
        };
        using var terminal = new AtTheTerminal(Logbook, analyses: counted);
        terminal.Type("4").Type("1").Type("4").Type("1");
        Assert.Equal(1, analyses);
        terminal.Type("3").Type("d").Type("1");
        Assert.Equal(2, analyses);
        terminal.Type("3").Type("u").Type("1").Type("4");
        Assert.Equal(3, analyses);
    }

    [Fact]
    public void An_analysis_that_fails_is_told_and_the_rest_goes_on()
    {
        SampleLog.Write(Logbook);
        using var terminal = new AtTheTerminal(
            Logbook, analyses: SampleLog.Known with { Analyse = _ => throw new InvalidOperationException("no piece at all") });
        terminal.Shows("This could not be worked out: no piece at all").Type("3").Shows("6 outings").Type("5").Shows("F5 work it out");
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
