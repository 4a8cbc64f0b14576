using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Imports;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Log;

/// <summary>What did I do? Every outing, opened to its pieces; filtered, sorted, mended.</summary>
internal sealed class LogbookScreen : Screen, ISearched
{
    private static readonly string[] OrderNames = ["latest first", "oldest first", "longest paddle first", "fastest piece first"];

    private readonly ListView _list;
    private readonly HashSet<Guid> _opened = [];
    private readonly Importing _importing;
    private OutingSelection _selection = OutingSelection.All;
    private LogbookRows? _rows;
    private int _outings;

    public LogbookScreen(Session session)
        : base(session)
    {
        _importing = new Importing(session);
        // Letters are keys of this screen; the list must not take them for the beginning of a line.
        _list = new ListView
        {
            // Where it is empty it leaves room for the sentence that says so.
            Y = Pos.Func(_ => _rows is { Count: 0 } ? 5 : 2), Width = Dim.Fill(), Height = Dim.Fill(), KeystrokeNavigator = null,
        };
        _list.VerticalScrollBar.VisibilityMode = ScrollBarVisibilityMode.None;
        // The screen answers these itself; the list's own answer would come on top of it.
        _list.KeyBindings.Remove(Key.Enter);
        _list.KeyBindings.Remove(Key.Space);
        _list.ValueChanged += (_, _) => SetNeedsDraw();
        _list.Accepted += (_, _) => OpenOrClose();
        Add(_list);
    }

    public override (string Wide, string Narrow) Names => ("Logbook", "Logbook");

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "open", OpenOrClose) { Also = [Key.Space] },
        new('e', "edit", Edit),
        new('x', Here is { Piece.ExcludedBecause: not null } ? "count" : "out", LeaveOut),
        new('d', "delete", Delete) { Also = [Key.Delete] },
        new('u', "undo", Undo) { Also = [Key.Z.WithCtrl] },
        new('i', "import", _importing.Begin),
        new('f', "filter", Filter),
        new('s', "sort", Sort),
        new('n', "new", Session.Shell.TypeOuting),
        new(Key.Y.WithCtrl, "Ctrl+Y", "redo", Redo),
        InWords(() =>
        [
            .. PictureWords.Season(Session.State.Outings, Session.Unit), "", "# Latest outings",
            .. Session.State.Outings.OrderByDescending(outing => outing.Date).Take(12).Select(OutingWords),
        ]),
        .. Choosing.Keys(Session).Where(hint => hint.What == "whose log"),
    ];

    public override string Explanation =>
        "Every outing in the log, with the lengths that were paddled and the pace of its fastest piece. Enter opens an " +
            "outing to its pieces.\n\n" +
        "# Leaving a piece out\n" +
        "A piece that went wrong, weed on the rudder or a stop for traffic, can be left out with a reason. It stays in the log " +
            "and can count again; " +
        "the analyses do not see it. Do not leave pieces out because they were slow: that is how wrong answers are made.\n\n" +
        "# Undo\n" +
        "Whatever was done to the log can be taken back, step by step, the newest first; Ctrl+Y does it again.\n\n" +
        "# Import\n" +
        "i takes a recording of a watch (GPX, TCX or FIT, also gzipped) or a CSV. Of a recording you see the pieces that were found " +
            "before anything is saved.\n\n" +
        "# Filter and sort\n" +
        "A filter shows the outings in a hull, with a paddle, or between two days. It does not change what the analyses use.";

    private LogbookRow? Here => _rows is { Count: > 0 } rows && _list.SelectedItem is { } at && at < rows.Count ? rows[at] : null;

    public override void Refresh()
    {
        LogbookRow? here = Here;
        IReadOnlyList<Outing> outings = _selection.Of(Session.State.Outings);
        _outings = outings.Count;
        var rows = new List<LogbookRow>(outings.Count);
        foreach (Outing outing in outings)
        {
            rows.Add(new LogbookRow(outing, null));
            if (_opened.Contains(outing.Id))
                rows.AddRange(outing.Pieces.Select(piece => new LogbookRow(outing, piece)));
        }

        int top = _list.Viewport.Y;
        int before = _list.SelectedItem ?? 0;
        _rows = new LogbookRows(Look, Session.Unit, rows, _opened, Session.State.Hulls.ToDictionary(hull => hull.Id, hull => hull.Name));
        _list.Source = _rows;
        if (rows.Count > 0)
        {
            int same = here is { } was ? rows.FindIndex(row => row.Outing.Id == was.Outing.Id && row.Piece?.Id == was.Piece?.Id) : 0;
            _list.SelectedItem = Math.Clamp(same >= 0 ? same : before, 0, rows.Count - 1);
            _list.Viewport = _list.Viewport with { Y = Math.Clamp(top, 0, Math.Max(0, rows.Count - _list.Viewport.Height)) };
            _list.EnsureSelectedItemVisible();
        }

        SetNeedsDraw();
    }

    protected override bool OnKeyDown(Key key)
    {
        if (base.OnKeyDown(key))
            return true;
        if (key == Key.CursorRight && Here is { Piece: null } closed && !_opened.Contains(closed.Outing.Id))
            OpenOrClose();
        else if (key == Key.CursorLeft && Here is { } opened && _opened.Contains(opened.Outing.Id))
            OpenOrClose();
        else
            return false;
        return true;
    }

    protected override void OnHasFocusChanged(bool newHasFocus, View? previousFocusedView, View? focusedView)
    {
        base.OnHasFocusChanged(newHasFocus, previousFocusedView, focusedView);
        if (newHasFocus)
            _list.SetFocus();
    }

    protected override void Paint(Brush brush)
    {
        string shown = _selection.IsNarrowed ? $"{_outings} of {Session.State.Outings.Count} outings: " +
            $"{SelectionText.Of(_selection, Session.State)}" : _outings == 1 ? "1 outing" : $"{_outings} outings";
        brush.Runs(1, 0, (shown, _selection.IsNarrowed ? Tone.Now : Tone.Strong), ($"   {OrderNames[(int)_selection.Order]}", Tone.Dim));
        if (_rows is { Count: > 0 } && _list.SelectedItem is { } at)
            brush.TextTo(brush.Columns - 1, 0, $"line {at + 1} of {_rows.Count}", Tone.Dim);
        brush.Text(0, 1, LogbookRows.Headings(brush.Columns >= 100), Tone.Dim);
        if (_outings == 0)
            brush.Text(2, 3, _selection.IsNarrowed ? "No outing is like that. f changes the filter."
                : "No outing yet. n types the first one.", Tone.Strong);
    }

    /// <inheritdoc/>
    public bool Find(string text, bool next)
    {
        if (_rows is not { Count: > 0 } rows)
            return false;
        int line = Searching.Line(rows.Count, _list.SelectedItem ?? 0, text, next, rows.WordsOf);
        if (line < 0)
            return false;
        _list.SelectedItem = line;
        _list.EnsureSelectedItemVisible();
        SetNeedsDraw();
        return true;
    }

    private string OutingWords(Outing outing) =>
        $"{Say.DayInWords(outing.Date)}, {Session.State.Hulls.First(hull => hull.Id == outing.HullId).Name}: "
        + string.Join(", ", outing.Pieces.Select(piece => $"{Say.Length(piece.Length, Session.Unit)} {Say.Distance(piece.Distance)} in "
            + $"{piece.Time}{(piece.ExcludedBecause is { } why ? $" (left out: {PlainText.Line(why)})" : "")}")) + ".";

    private void OpenOrClose()
    {
        if (Here is not { } here)
            return;
        if (!_opened.Remove(here.Outing.Id))
            _opened.Add(here.Outing.Id);
        else if (here.Piece is not null)
            _list.SelectedItem = Enumerable.Range(0, _rows!.Count).First(index => _rows[index].Outing.Id == here.Outing.Id);
        Refresh();
    }

    private void Edit()
    {
        if (Here is { } here)
            Session.Shell.Edit(here.Outing);
    }

    private void LeaveOut()
    {
        if (Here is not { } here)
            return;
        if (here.Piece is not { } piece)
        {
            if (!_opened.Contains(here.Outing.Id))
                OpenOrClose();
            Session.Shell.Say("Go down to the piece that went wrong, then press x.");
        }
        else if (piece.ExcludedBecause is not null)
        {
            Do(here.Outing, (workspace, outing) => CorrectOuting.Include(workspace, outing, piece.Order),
                $"Piece {piece.Order} counts again.");
        }
        else
        {
            Session.Shell.Lay(new QuestionSheet(
                Look, Session.Shell, $"Why does piece {piece.Order} of {here.Outing.Date:yyyy-MM-dd} not count?",
                "What went wrong, such as: weed on the rudder. Being slow is no reason. The piece stays in the log " +
                    "and can count again.", "",
                text => string.IsNullOrWhiteSpace(text) ? "Say why, so that your coach and you know later." : text.Length > 400
                    ? "A reason has up to 400 characters." : null,
                reason =>
                    Do(here.Outing, (workspace, outing) => CorrectOuting.Exclude(workspace, outing, piece.Order, reason),
                    $"Piece {piece.Order} is left out.")));
        }
    }

    private void Delete()
    {
        if (Here is not { } here)
            return;
        if (here.Piece is { } piece)
            Do(here.Outing, (workspace, outing) => CorrectOuting.DeletePiece(workspace, outing, piece.Order),
                $"Deleted piece {piece.Order} of {here.Outing.Date:yyyy-MM-dd}.");
        else
            Do(here.Outing, CorrectOuting.Delete, $"Deleted the outing of {here.Outing.Date:yyyy-MM-dd}.");
    }

    private void Undo() => Session.Change(
        CorrectOuting.Undo,
        undone => Session.Shell.Say($"Undone: {undone.What}. Ctrl+Y does it again.", Tone.Now));

    private void Redo() => Session.Change(
        CorrectOuting.Redo,
        again => Session.Shell.Say($"Done again: {again.What}.", Tone.Now));

    private void Do(Outing outing, Action<Workspace, Outing> change, string done) =>
        Session.ChangeOuting(outing, change, () => Session.Shell.Say($"{done} u brings it back.", Tone.Now));

    private void Sort()
    {
        _selection = _selection with { Order = (OutingOrder)(((int)_selection.Order + 1) % OrderNames.Length) };
        _list.SelectedItem = null;
        Refresh();
    }

    private void Filter() => Session.Shell.Lay(FilterSheet.Of(Session, _selection, chosen =>
    {
        _selection = chosen;
        _list.SelectedItem = null;
        Session.Shell.Lift();
        Refresh();
    }));
}
