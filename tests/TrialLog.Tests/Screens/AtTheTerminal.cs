using System.Diagnostics;
using System.Drawing;
using System.Runtime.CompilerServices;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;
using TrialLog.Application.Workspaces;
using TrialLog.Logbook;
using TrialLog.Screens;
using TrialLog.Screens.Base;
using TrialLog.Screens.Shell;

namespace TrialLog.Tests.Screens;

/// <summary>
/// The real application on a terminal of a given size that only exists in memory: keys and clicks go in where those of a
/// person would, and what it shows is read back as lines of text.
/// </summary>
internal sealed class AtTheTerminal : IDisposable
{
    private readonly IApplication _app;
    private readonly ShellWindow _window;
    private readonly LogbookFile _logbook;
    private readonly SessionToken _session;
    private readonly bool _waits;
    private readonly VirtualTimeProvider _time = new();

    public AtTheTerminal(string logbook, int columns = 80, int rows = 24, string environment = "LANG=C.UTF-8", Analyses? analyses = null,
        bool waits = true)
    {
        _waits = waits;
        Dictionary<string, string> variables = environment.Split(' ').Select(pair => pair.Split('='))
            .ToDictionary(pair => pair[0], pair => pair[1]);
        _logbook = LogbookFile.Open(logbook);
        Workspace = new Workspace(_logbook, new FixedClock(new DateOnly(2026, 11, 25)));
        _app = Terminal.Gui.App.Application.Create(_time);
        _app.Init(DriverRegistry.Names.ANSI);
        _app.Driver!.SetScreenSize(columns, rows);
        _window = ScreensProgram.Window(_app, Workspace, analyses ?? Analyses.OfTheTuning, variables.GetValueOrDefault);
        _session = _app.Begin(_window)!;
        Settle();
    }

    public Workspace Workspace { get; }

    public Screen Up => _window.Up;

    public Sheet? Sheet => _window.Sheet;

    /// <summary>The keys that work now, each with what it does.</summary>
    public IReadOnlyList<KeyHint> Keys => _window.KeysNow;

    /// <summary>Everything on the terminal.</summary>
    public string Shown => string.Join('\n', Lines);

    public IReadOnlyList<string> Lines => [.. _app.Driver!.ToString()!.Split('\n').Select(line => line.TrimEnd())];

    /// <summary>The last line: the keys that work now.</summary>
    public string KeyLine => Lines[_app.Driver!.Rows - 1];

    public AtTheTerminal Press(params Key[] keys)
    {
        foreach (Key key in keys)
        {
            _app.InjectKey(key);
            Settle();
        }

        return this;
    }

    /// <summary>Types text letter by letter.</summary>
    public AtTheTerminal Type(string text)
    {
        foreach (char letter in text)
            Press(new Key(letter));
        return this;
    }

    /// <summary>Clicks the first place where that text stands.</summary>
    public AtTheTerminal Click(string text)
    {
        int row = Lines.ToList().FindIndex(line => line.Contains(text, StringComparison.Ordinal));
        Assert.True(row >= 0, $"“{text}” is not on the screen:\n{Shown}");
        _app.InjectSequence(InputInjectionExtensions.LeftButtonClick(new Point(Lines[row].IndexOf(text, StringComparison.Ordinal), row)));
        Settle();
        return this;
    }

    /// <summary>Lets time go by on the terminal's clock.</summary>
    public AtTheTerminal Wait(TimeSpan time)
    {
        _time.Advance(time);
        Settle();
        return this;
    }

    public AtTheTerminal Resize(int columns, int rows)
    {
        _app.Driver!.SetScreenSize(columns, rows);
        Settle();
        return this;
    }

    public AtTheTerminal Shows(string text)
    {
        Assert.True(Shown.Contains(text, StringComparison.Ordinal), $"“{text}” is not on the screen:\n{Shown}");
        return this;
    }

    /// <summary>Waits until that text stands somewhere.</summary>
    public AtTheTerminal WaitFor(string text)
    {
        for (int look = 0; look < 2000 && !Shown.Contains(text, StringComparison.Ordinal); look++)
        {
            Thread.Sleep(5);
            Settle();
        }

        return Shows(text);
    }

    public AtTheTerminal ShowsNot(string text)
    {
        Assert.False(Shown.Contains(text, StringComparison.Ordinal), $"“{text}” is on the screen:\n{Shown}");
        return this;
    }

    /// <summary>Lets the application draw, and waits until nothing is being worked out any more.</summary>
    public void Settle()
    {
        var since = Stopwatch.StartNew();
        do
        {
            _app.TimedEvents!.RunTimers();
            _app.LayoutAndDraw();
            if (!_waits || !_window.IsWorkingItOut)
                break;
            Thread.Sleep(2);
        }
        while (since.Elapsed < TimeSpan.FromSeconds(60));
        _app.TimedEvents!.RunTimers();
        _app.LayoutAndDraw();
    }

    public void Dispose()
    {
        _app.End(_session);
        _window.Dispose();
        _app.Dispose();
        _logbook.Dispose();
    }

    /// <summary>The library must not look for a terminal while tests run.</summary>
    [ModuleInitializer]
    internal static void WithoutTerminal() => Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");

    private sealed class FixedClock(DateOnly today) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(today.ToDateTime(new TimeOnly(9, 30)), TimeSpan.Zero);
    }
}
