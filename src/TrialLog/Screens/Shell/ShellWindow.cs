using Terminal.Gui.App;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Entry;
using TrialLog.Screens.FirstRun;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Shell;

/// <summary>The one window: the screens by number on top, the screen that is up, a line for messages, a line of keys.</summary>
internal sealed class ShellWindow : Runnable, IShell
{
    /// <summary>How often it is looked whether a command or another screen changed the log.</summary>
    public static readonly TimeSpan LookAgainAfter = TimeSpan.FromSeconds(1);

    private readonly Session _session;
    private readonly IReadOnlyList<Screen> _screens;
    private readonly Screen _firstRun;
    private readonly Header _header;
    private readonly MessageLine _messageLine;
    private readonly KeyLine _keyLine;
    private readonly Finder _finder;
    private readonly Stack<Sheet> _covered = new();

    // Where the cursor was on what each sheet lies over.
    private readonly Stack<(View? Input, int At)> _cursors = new();
    private Screen? _up;
    private Sheet? _sheet;
    private (string Text, Tone Tone) _message = ("", Tone.Plain);

    // What was asked about with the key before this one, and what with this one.
    private Sheet? _askedBefore, _asked;

    public ShellWindow(Session session)
    {
        _session = session;
        session.Shell = this;
        SetScheme(session.Look.Palette.Scheme());
        _screens = ScreenList.Of(session);
        _firstRun = new FirstRun.FirstRunScreen(session);
        _header = new Header(session.Look, () => Welcoming ? [] : _screens, () => _up, session.Whose,
            index => Open((Place)index))
        { Y = 0 };
        _messageLine = new MessageLine(
            session.Look, () => _message.Text.Length > 0 ? _message : (Waiting(), Tone.Dim));
        _keyLine = new KeyLine(session.Look, ScreenKeys, LastKeys) { Y = Pos.AnchorEnd(1) };
        _finder = new Finder(session.Look) { Y = Pos.AnchorEnd(2) };
        _finder.Closed += () =>
        {
            ((View?)_sheet ?? _up)?.SetFocus();
            Redraw();
        };
        Add(_header, _messageLine, _keyLine, _finder);
        foreach (Screen screen in _screens.Append(_firstRun))
        {
            screen.Y = 2;
            // A long message takes no caution away; a form it lies over, since a form that shrank would move under the cursor.
            screen.Height = Dim.Func(_ => Math.Max(0, Viewport.Height - 3 - (screen.Typing ? 1 : _messageLine.Rows)));
            screen.Visible = false;
            Add(screen);
        }

        session.Changed += Changed;
        Show(Welcoming ? _firstRun : _screens[0]);
    }

    private bool Welcoming => _session.Chosen is null;

    /// <summary>The screen that is up.</summary>
    public Screen Up => _up!;

    /// <summary>Whether something is being worked out from the log.</summary>
    public bool IsWorkingItOut => _session.Found.IsWorking || !_session.Queue.IsIdle;

    /// <inheritdoc/>
    public void Open(Place place)
    {
        if (Welcoming || !MayLeave(Sheets.Where(sheet => !sheet.IsTakenUpAgain)))
            return;
        LiftAll();
        Show(_screens[(int)place]);
    }

    /// <inheritdoc/>
    public void Edit(Outing outing)
    {
        var entry = (Entry.EntryScreen)_screens[(int)Place.EnterOuting];
        entry.Edit(outing);
        Open(Place.EnterOuting);
    }

    /// <inheritdoc/>
    public void TypeOuting()
    {
        ((Entry.EntryScreen)_screens[(int)Place.EnterOuting]).TypeNew();
        Open(Place.EnterOuting);
    }

    /// <inheritdoc/>
    public void Say(string sentence, Tone tone = Tone.Plain)
    {
        _message = (sentence, tone);
        MessageChanged();
    }

    /// <inheritdoc/>
    public void Lay(Sheet sheet)
    {
        LiftAll();
        _cursors.Clear();
        RememberCursor();
        Put(sheet);
    }

    /// <inheritdoc/>
    public void LayOver(Sheet sheet)
    {
        RememberCursor();
        if (_sheet is { } covered)
        {
            _covered.Push(covered);
            covered.Visible = false;
        }

        Put(sheet);
    }

    private void RememberCursor() => _cursors.Push((MostFocused, (MostFocused as TextField)?.InsertionPoint ?? 0));

    // The library would go to the first field, or select all that a field holds, and the next letter would take its place.
    private void RecallCursor()
    {
        if (!_cursors.TryPop(out (View? Input, int At) was) || was.Input is not { SuperView: not null, Visible: true } input)
            return;
        input.SetFocus();
        if (input is not TextField field)
            return;
        field.ClearAllSelection();
        field.InsertionPoint = Math.Min(was.At, field.Text.Length);
    }

    private void Put(Sheet sheet)
    {
        _sheet = sheet;
        sheet.Y = 2;
        sheet.Height = Dim.Fill(2);
        _up!.Visible = false;
        Add(sheet);
        sheet.SetFocus();
        Redraw();
    }

    /// <inheritdoc/>
    public void Lift()
    {
        if (_sheet is not { } sheet)
            return;
        _sheet = null;
        Remove(sheet);
        sheet.Dispose();
        if (_covered.TryPop(out Sheet? covered))
        {
            _sheet = covered;
            covered.Visible = true;
            covered.SetFocus();
        }
        else
        {
            _up!.Visible = true;
            _up.SetFocus();
        }

        RecallCursor();
        Redraw();
    }

    private IEnumerable<Sheet> Sheets => _sheet is { } sheet ? _covered.Prepend(sheet) : [];

    private void LiftAll()
    {
        while (_sheet is not null)
            Lift();
    }

    /// <inheritdoc/>
    public bool MayLeave(Sheet sheet) => MayLeave([sheet]);

    private bool MayLeave(IEnumerable<Sheet> sheets)
    {
        if (sheets.FirstOrDefault(sheet => sheet.Unsaved is not null) is not { } holds || holds == _askedBefore)
            return true;
        _asked = holds;
        Say($"{holds.Unsaved} Press the key again to leave it, Ctrl+S to save.", Tone.Caution);
        return false;
    }

    /// <inheritdoc/>
    public bool Try(Action action)
    {
        try
        {
            action();
            return true;
        }
        catch (Exception failure) when (Says(failure))
        {
            return false;
        }
    }

    /// <summary>Says what went wrong, if it is of a kind that the user can do something about.</summary>
    public bool Says(Exception failure)
    {
        if (failure is not (RequestException or InvalidValueException or LogbookException or IOException or UnauthorizedAccessException))
            return false;
        Say(failure.Message.ReplaceLineEndings(" "), Tone.Problem);
        return true;
    }

    /// <inheritdoc/>
    public void Redraw() => SetNeedsDraw();

    /// <inheritdoc/>
    public void Quit()
    {
        if (MayLeave(Sheets))
            RequestStop();
    }

    protected override bool OnKeyDown(Key key)
    {
        if (key == Key.Q.WithCtrl || key == Key.C.WithCtrl || (key == new Key('q') && !TypingNow))
        {
            Quit();
            return true;
        }

        if (key == Key.F1 || (key == new Key('?') && !TypingNow))
        {
            Explain();
            return true;
        }

        if (key == Key.F2)
        {
            ListActions();
            return true;
        }

        // A sheet may keep letters and digits from leaving it without having a field.
        if (key == new Key('/') && (!TypingNow || (_sheet is ISearched && !_finder.Visible)))
        {
            Find();
            return true;
        }

        if (PlaceOf(key) is { } place && (key.IsAlt || !TypingNow))
        {
            Open(place);
            return true;
        }

        // The library would end the program on Esc.
        return key == Key.Esc;
    }

    private bool TypingNow => _finder.Visible || (_sheet?.Typing ?? _up?.Typing ?? false);

    private string Waiting() => _session.Queue.IsAwaited ? "The logbook is busy: another program is writing. Your change waits its turn …"
        : _session.Found.Working;

    private static Place? PlaceOf(Key key)
    {
        int digit = key.NoAlt.AsRune.Value - '1';
        return digit >= 0 && digit < ScreenList.Count ? (Place)digit : null;
    }

    /// <summary>The keys that work now, as the last line names them.</summary>
    public IReadOnlyList<KeyHint> KeysNow => [.. ScreenKeys(), .. LastKeys()];

    /// <summary>What lies over the screen; null if nothing does.</summary>
    public Sheet? Sheet => _sheet;

    private List<KeyHint> ScreenKeys()
    {
        if (_finder.Visible)
            return [.. _finder.Keys];
        List<KeyHint> hints = [.. _sheet?.Keys ?? _up!.Keys];
        if (_sheet is null && !Welcoming)
            hints.Add(new KeyHint(Key.Empty, TypingNow ? "Alt+1…7" : "1…7", "screens", () => { }));
        return hints;
    }

    private List<KeyHint> LastKeys()
    {
        List<KeyHint> hints = [];
        if (_sheet is null or { Explanation: not null })
            hints.Add(new KeyHint(Key.F2, "F2", "all keys", ListActions));
        if (_sheet is not TextSheet)
            hints.Add(new KeyHint(Key.F1, "F1", "help", Explain));
        if (_sheet is null)
            hints.Add(new KeyHint(Key.Q.WithCtrl, TypingNow ? "Ctrl+Q" : "q", "quit", Quit));
        return hints;
    }

    private void Explain()
    {
        (string title, string text) = _sheet?.Explanation ?? (_up!.Names.Wide, _up.Explanation);
        IReadOnlyList<KeyHint> hints = _sheet is { Explanation: not null } ? _sheet.Keys : _up!.Keys;
        string keys = string.Join('\n', hints.Select(hint => $"  {hint.Label,-8} {hint.What}"));
        LayOver(new TextSheet(_session.Look, this, title, $"{text}\n\n# Keys on this screen\n{keys}\n{HelpWords.KeysEverywhere}"));
    }

    private void Find()
    {
        if ((_sheet as ISearched ?? _up as ISearched) is { } searched)
        {
            // A message lies over what it needs; what is typed to find lies over a message.
            MoveSubViewToEnd(_finder);
            _finder.Open(searched);
        }
        else
            Say("There is no list to search here.");
    }

    // Every action by name, with its key; letters narrow the list.
    private void ListActions()
    {
        if (_sheet is { Explanation: null })
            return;
        List<KeyHint> actions =
        [
            .. (_sheet?.Keys ?? _up!.Keys).Where(hint => hint.What.Length > 0),
            .. _sheet is not null || Welcoming ? [] : _screens.Select(
                (screen, index) => new KeyHint(Key.Empty, $"{index + 1}", "go to " + screen.Names.Wide, () => Open((Place)index))),
            .. _sheet is null && _up is ISearched ? [new KeyHint(Key.Empty, "/", "find on this screen", Find)] : Array.Empty<KeyHint>(),
            new(Key.F1, "F1", "help on this screen", Explain),
            new(Key.Empty, TypingNow ? "Ctrl+Q" : "q", "quit", Quit),
        ];
        LayOver(
            new ChoiceSheet(_session.Look, this, "What do you want to do?", [.. actions.Select(hint => $"{hint.What,-34} {hint.Label}")], 0,
            index => actions[index].Do()));
    }

    private void Show(Screen screen)
    {
        if (_up != screen)
        {
            if (_up is not null)
                _up.Visible = false;
            _up = screen;
            screen.Visible = true;
        }

        screen.Refresh();
        screen.Begin();
        Redraw();
    }

    private void Changed()
    {
        if (_up == _firstRun && !Welcoming)
            Show(_screens[0]);
        else if (Welcoming && _up != _firstRun)
            Show(_firstRun);
        else
            _up?.Refresh();
        Redraw();
    }

    protected override void OnIsRunningChanged(bool newIsRunning)
    {
        base.OnIsRunningChanged(newIsRunning);
        if (App is not { } app)
            return;
        if (app.Driver is { } driver)
        {
            driver.DefaultAttributeChanged -= BackgroundTold;
            if (newIsRunning)
            {
                SuitBackground(driver.DefaultAttribute);
                driver.DefaultAttributeChanged += BackgroundTold;
            }
        }

        app.Keyboard.KeyDown -= ForgetMessage;
        app.Mouse.MouseEvent -= ForgetMessage;
        if (!newIsRunning)
            return;
        app.Keyboard.KeyDown += ForgetMessage;
        app.Mouse.MouseEvent += ForgetMessage;
        app.AddTimeout(TimeSpan.FromMilliseconds(200), () =>
        {
            if (_session.Found.IsWorking || _session.Queue.IsAwaited)
                _messageLine.SetNeedsDraw();
            return IsRunning;
        });
        app.AddTimeout(LookAgainAfter, () =>
        {
            _session.LookForChanges();
            return IsRunning;
        });
    }

    /// <summary>Takes the colours that can be read on a light or on a dark background.</summary>
    public void SuitBackground(bool light)
    {
        _session.Look.Palette.OnLight = light;
        SetScheme(_session.Look.Palette.Scheme());
        Redraw();
    }

    private void BackgroundTold(object? sender, ValueChangedEventArgs<Terminal.Gui.Drawing.Attribute?> told) =>
        SuitBackground(told.NewValue);

    // A terminal that does not say is taken as it was.
    private void SuitBackground(Terminal.Gui.Drawing.Attribute? own)
    {
        if (own is { Background: var background } && background != Terminal.Gui.Drawing.Color.None
            && background.IsDarkColor() == _session.Look.Palette.OnLight)
            SuitBackground(!background.IsDarkColor());
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            _session.Dispose();
        base.Dispose(disposing);
    }

    // A message stays until the key or the click after it.
    private void ForgetMessage(object? sender, Key key) => ForgetMessage();

    private void ForgetMessage(object? sender, Mouse mouse)
    {
        if (mouse.Flags.HasFlag(MouseFlags.LeftButtonPressed))
            ForgetMessage();
    }

    private void ForgetMessage()
    {
        (_askedBefore, _asked) = (_asked, null);
        if (_message.Text.Length == 0)
            return;
        _message = ("", Tone.Plain);
        MessageChanged();
    }

    // The rows that a long message took come back with the next key.
    private void MessageChanged()
    {
        MoveSubViewToEnd(_messageLine);
        int rows = _messageLine.Frame.Height;
        SetNeedsLayout();
        if (rows > 1)
            Redraw();
        _messageLine.SetNeedsDraw();
    }
}
