using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using TrialLog.Application.Workspaces;
using TrialLog.Logbook;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Screens.Shell;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens;

/// <summary>Opens the screens on a terminal and stays until the user quits.</summary>
internal static class ScreensProgram
{
    /// <summary>Loop passes a second: a key is answered within one of them.</summary>
    public const ushort PassesPerSecond = 60;

    /// <summary>Runs the screens over a logbook.</summary>
    /// <param name="open">Opens the logbook.</param>
    /// <param name="clock">The clock; outings are dated by it.</param>
    /// <param name="environment">Looks up an environment variable.</param>
    public static void Run(Func<LogbookFile> open, TimeProvider clock, Func<string, string?> environment)
    {
        // The terminal's own sixteen colours: themes, light and dark, know how to show them.
        Driver.Force16Colors = true;
        Terminal.Gui.App.Application.MaximumIterationsPerSecond = PassesPerSecond;
        // The first card waits for the library, the logbook and the analysis; the library makes itself ready beside the other two.
        Task<IApplication> made = Task.Run(() => Terminal.Gui.App.Application.Create());
        using LogbookFile logbook = open();
        using IApplication app = made.GetAwaiter().GetResult();
        var ready = new TaskCompletionSource();
        Task<Session> read = Task.Run(() =>
        {
            Session session = Begun(new Workspace(logbook, clock), Analyses.OfTheTuning, environment, action =>
            {
                ready.Task.Wait();
                app.Invoke(action);
            });
            session.Want(FindingKind.Analysis);
            return session;
        });
        app.Init(DriverRegistry.Names.ANSI);
        ready.SetResult();
        using var window = new ShellWindow(read.GetAwaiter().GetResult());
        // A full disk or a logbook that became read-only must not take the screens, and what is on them, away.
        app.Run(window, window.Says);
    }

    /// <summary>Makes the window for an application that is initialised.</summary>
    public static ShellWindow Window(IApplication app, Workspace workspace, Analyses analyses, Func<string, string?> environment) =>
        new(Begun(workspace, analyses, environment, app.Invoke));

    private static Session Begun(Workspace workspace, Analyses analyses,
        Func<string, string?> environment, Action<Action> onScreenThread) =>
        new(workspace, new Look(StrokesOf.Environment(environment), Palette.Of(environment)),
            new BackgroundAnalyses(analyses, onScreenThread), new LogbookQueue(onScreenThread));
}
