using Terminal.Gui.App;
using Terminal.Gui.Input;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Entry;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Imports;

/// <summary>Lies over the screen while a file is read away from the keyboard; Esc stops the reading.</summary>
internal sealed class ReadingSheet : Sheet, IProgress<int>
{
    private readonly IShell _shell;
    private readonly string _name;
    private readonly Func<IProgress<int>, CancellationToken, Action> _read;
    private readonly CancellationTokenSource _stop = new();
    private int _rows;
    private bool _gone;
    private bool _quits;

    /// <param name="look">The terminal's glyphs and looks.</param>
    /// <param name="shell">The window.</param>
    /// <param name="name">The file's name.</param>
    /// <param name="read">Reads the file; gives what is then to be done on the thread of the screens.</param>
    public ReadingSheet(Look look, IShell shell, string name, Func<IProgress<int>, CancellationToken, Action> read)
        : base(look)
    {
        (_shell, _name, _read) = (shell, Quoted.Brief(name, 60), read);
    }

    public override bool Typing => true;

    public override IReadOnlyList<KeyHint> Keys => [new(Key.Esc, "Esc", "stop", Stop)];

    /// <summary>Begins to read, once it lies over the screen.</summary>
    public void Begin()
    {
        IApplication app = App!;
        CancellationToken stop = _stop.Token;
        app.AddTimeout(TimeSpan.FromMilliseconds(200), () =>
        {
            SetNeedsDraw();
            return !_gone;
        });
        Task.Run(
            () =>
            {
                Action then = Outcome(stop);
                app.Invoke(() =>
                {
                    // An explanation may lie over it.
                    while (!_gone)
                        _shell.Lift();
                    then();
                    if (_quits)
                        _shell.Quit();
                });
            },
            CancellationToken.None);
    }

    public void Report(int value) => Volatile.Write(ref _rows, value);

    // Quitting waits until the reading has stopped, since the logbook may just be written.
    protected override bool OnKeyDown(Key key)
    {
        _quits |= key == Key.Q.WithCtrl || key == Key.C.WithCtrl;
        if (_quits)
            Stop();
        else
            base.OnKeyDown(key);
        return true;
    }

    protected override void Paint(Brush brush)
    {
        Heading(brush, $"Reading {_name} …");
        int rows = Volatile.Read(ref _rows);
        brush.Text(2, 3, _stop.IsCancellationRequested ? "Stopping …" : rows > 0 ? $"{rows:N0} rows so far"
            : "Nothing is added until all of it was read.", Tone.Dim);
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing && !_gone)
        {
            _gone = true;
            _stop.Cancel();
        }

        base.Dispose(disposing);
    }

    private void Stop()
    {
        _stop.Cancel();
        SetNeedsDraw();
    }

    // What goes wrong with a file must not take the screens, and what was typed, with it.
    private Action Outcome(CancellationToken stop)
    {
        try
        {
            return _read(this, stop);
        }
        catch (OperationCanceledException)
        {
            return () => _shell.Say($"Stopped; nothing of {_name} was added.");
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            string[] lines = failure.Message.Split('\n', StringSplitOptions.TrimEntries);
            if (lines.Length == 1)
                return () => _shell.Say(lines[0], Tone.Problem);
            return () => _shell.Lay(new TextSheet(Look, _shell, "Nothing was imported", string.Join('\n', lines)));
        }
    }
}
