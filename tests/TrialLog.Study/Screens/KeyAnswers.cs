using System.Diagnostics;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using TrialLog.Application.Workspaces;
using TrialLog.Logbook;
using TrialLog.Reports.Coach;
using TrialLog.Screens;
using TrialLog.Screens.Base;
using TrialLog.Screens.Shell;

namespace TrialLog.Study.Screens;

/// <summary>How long the screens take from a key to the drawing that answers it, on a terminal in memory.</summary>
internal static class KeyAnswers
{
    private const int Times = 40;

    /// <summary>Milliseconds for each kind of key, the log being worked out in the background all the while.</summary>
    public static IEnumerable<(string What, IReadOnlyList<double> Milliseconds)> Measure(string path)
    {
        Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
        using LogbookFile logbook = LogbookFile.Open(path);
        using IApplication app = Terminal.Gui.App.Application.Create();
        app.Init(DriverRegistry.Names.ANSI);
        app.Driver!.SetScreenSize(140, 45);
        var environment = new Dictionary<string, string> { ["LANG"] = "C.UTF-8" };
        using ShellWindow window = ScreensProgram.Window(
            app, new Workspace(logbook, TimeProvider.System), Analyses.OfTheTuning, environment.GetValueOrDefault);
        SessionToken session = app.Begin(window)!;
        app.LayoutAndDraw();
        yield return ("first look at the logbook", [Press(new Key('3'))]);
        yield return ("line down", Repeat(Key.CursorDown));
        yield return ("page down", Repeat(Key.PageDown));
        yield return ("open and close an outing", Repeat(Key.Enter));
        yield return ("sort", Repeat(new Key('s'), 8));
        yield return ("first look at entering", [Press(new Key('2'))]);
        yield return ("typing a digit, draft saved", Repeat(new Key('5')));
        yield return ("another screen", [.. Enumerable.Range(0, Times).Select(time => Press(new Key((char)('1' + time % 7)).WithAlt))]);
        app.End(session);

        List<double> Repeat(Key key, int times = Times) => [.. Enumerable.Range(0, times).Select(_ => Press(key))];

        double Press(Key key)
        {
            var since = Stopwatch.StartNew();
            app.InjectKey(key);
            app.LayoutAndDraw();
            return since.Elapsed.TotalMilliseconds;
        }
    }
}
