using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using TrialLog.Application.Workspaces;
using TrialLog.Logbook;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Screens.Shell;

namespace TrialLog.Screens;

/// <summary>Opens the screens on a terminal and stays until the user quits.</summary>
internal static class ScreensProgram
{
    /// <summary>Loop passes a second: a key is answered within one of them.</summary>
    public const ushort PassesPerSecond = 60;

    /// <summary>Runs the screens over an open logbook.</summary>
    /// <param name="logbook">The open logbook.</param>
    /// <param name="clock">The clock; outings are dated by it.</param>
    /// <param name="environment">Looks up an environment variable.</param>
    public static void Run(LogbookFile logbook, TimeProvider clock, Func<string, string?> environment)
    {
        // The terminal's own sixteen colours: themes, light and dark, know how to show them.
        Driver.Force16Colors = true;
        Terminal.Gui.App.Application.MaximumIterationsPerSecond = PassesPerSecond;
        using IApplication app = Terminal.Gui.App.Application.Create();
        app.Init(DriverRegistry.Names.ANSI);
        using ShellWindow window = Window(app, new Workspace(logbook, clock), Analyses.OfTheTuning, environment);
        // A full disk or a logbook that became read-only must not take the screens, and what is on them, away.
        app.Run(window, window.Says);
    }

    /// <summary>Makes the window for an application that is initialised.</summary>
    public static ShellWindow Window(IApplication app, Workspace workspace, Analyses analyses, Func<string, string?> environment)
    {
        var look = new Look(StrokesOf.Environment(environment), Palette.Of(environment));
        return new ShellWindow(new Session(workspace, look, new BackgroundAnalyses(analyses, app.Invoke), new LogbookQueue(app.Invoke)));
    }
}
