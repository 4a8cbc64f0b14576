using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using TrialLog.Application.Logging;
using TrialLog.Application.Next;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Forms;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Entry;

/// <summary>Types an outing: the card's pieces are there already; times, effort and soreness are missing.</summary>
internal sealed class EntryScreen : Screen
{
    private const int FirstPieceRow = 4, RowsBelow = 5;

    private readonly List<PieceRow> _rows = [];
    private OutingFields _fields;
    private UsualSpeed? _usual;
    private Guid _usualIn;
    private Guid _filledFor;
    private Guid? _editing;
    private bool _edited;
    private bool _filling;
    private bool _demanding;
    private int _top;

    public EntryScreen(Session session)
        : base(session)
    {
        _fields = new OutingFields(session.Workspace, Look);
        SubViewsLaidOut += (_, _) => PlaceRows();
    }

    public override (string Wide, string Narrow) Names => ("Enter the outing", "Enter");

    public override bool Typing => true;

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.F9, "F9", _editing is null ? "save" : "save change", Save),
        new(Key.Enter, "Enter", "next", () => { }),
        new(Key.F7, "F7", "more", AddPiece),
        new(Key.F8, "F8", "less", DropPiece),
        new(Key.F5, "F5", "restart", StartOver),
        new(Key.Esc, "Esc", "back", () => Session.Shell.Open(_editing is null ? Place.NextOuting : Place.Logbook)),
    ];

    public override string Explanation =>
        "Here you type what you paddled. The lengths and distances are those of your card; change them where you did otherwise. " +
        "Enter goes from time to effort to the next piece, then to soreness, and from there it saves. Tab visits every field, the arrows move up and down.\n\n" +
        "# Time and effort\n" +
        "A time is written 5:32, 5:32.4 or 332s. Effort is how hard it felt, 0 to 10, halves allowed (Borg's CR10 scale): 3 moderate, 5 hard, 7 very hard. It may stay empty, " +
        "but with it the log can tell a fast length from a hard push.\n\n" +
        "# Soreness\n" +
        "Shoulder, elbow or back, 0 for none to 10 for the worst you can imagine. While it is high, nothing longer than what did not hurt is proposed. " +
        "Pain is a reason to stop and see somebody who knows, not a data point.\n\n" +
        "# Wind, label, notes\n" +
        "Wind is a Beaufort number, 0 to 12. A label tells two outings of one day apart. All may stay empty.\n\n" +
        "What you type is kept at once. Leave, quit, or lose the terminal: it is here when you come back. F5 throws it away.";

    private Paddler Paddler => Session.Chosen!.Paddler;

    /// <summary>Puts an outing of the log here to be changed.</summary>
    public void Edit(Outing outing)
    {
        Fill(OutingFields.Logged(outing, Session.Unit));
        _edited = true;
        SaveDraft();
    }

    public override void Refresh()
    {
        if (Session.Chosen is null)
            return;
        if (HalfTypedOuting.Of(Session.Workspace, Paddler) is { } draft)
        {
            if (!_edited || _filledFor != Paddler.Id)
                TakeDraft(draft);
        }
        else
        {
            Fill(Planned());
        }

        BeginTyping();
    }

    protected override void OnHasFocusChanged(bool newHasFocus, View? previousFocusedView, View? focusedView)
    {
        base.OnHasFocusChanged(newHasFocus, previousFocusedView, focusedView);
        SetNeedsDraw();
    }

    protected override void Paint(Brush brush)
    {
        brush.Text(1, 0, "date", Tone.Dim);
        brush.Text(21, 0, "hull", Tone.Dim);
        brush.Text(47, 0, "paddle", Tone.Dim);
        brush.Text(1, 1, "wind", Tone.Dim);
        brush.Text(13, 1, "Beaufort", Tone.Dim);
        brush.Text(23, 1, "label", Tone.Dim);
        if (_editing is not null)
            brush.Text(47, 1, "changing a logged outing", Tone.Now);
        foreach ((string heading, int column, _) in PieceRow.Columns)
            brush.Text(column, FirstPieceRow - 1, heading == "length" ? $"{heading}, {(Session.Unit == LengthUnit.Centimetres ? "cm" : "in")}" : heading, Tone.Dim);
        int shown = ShownRows(brush.Rows);
        for (int index = _top; index < Math.Min(_rows.Count, _top + shown); index++)
            PaintPiece(brush, index, FirstPieceRow + index - _top);
        int below = FirstPieceRow + Math.Min(shown, _rows.Count);
        if (_top + shown < _rows.Count)
            brush.Text(1, below, $"… {_rows.Count - _top - shown} more below", Tone.Dim);
        brush.Text(1, below + 1, "soreness", Tone.Dim);
        brush.Text(19, below + 1, "shoulder, elbow, back: 0 none to 10 worst", Tone.Dim);
        brush.Text(1, below + 2, "notes", Tone.Dim);
        PaintProblem(brush, below + 3);
    }

    private void PaintPiece(Brush brush, int index, int line)
    {
        PieceRow row = _rows[index];
        brush.Text(1, line, (row.HasFocus ? "▸" : " ") + $"{index + 1,3}", row.HasFocus ? Tone.Strong : Tone.Plain);
        if (row.Typo(_fields.Paddle) is { } problem)
            brush.Text(PieceRow.WordsColumn, line, "✗ " + Shortened(problem), Tone.Problem);
        else if (_demanding && row.FirstWrong(_fields.Paddle) is { } missing)
            brush.Text(PieceRow.WordsColumn, line, "✗ " + missing.Problem, Tone.Problem);
        else if (row.Read(_fields.Paddle) is { } entry)
            PaintSpeed(brush, line, entry);
    }

    private void PaintSpeed(Brush brush, int line, PieceEntry entry)
    {
        if (_usual is null || _usualIn != _fields.Hull.Id)
        {
            _usualIn = _fields.Hull.Id;
            _usual = UsualSpeed.Of(Session.Outings().Where(outing => outing.Id != _editing), _usualIn);
        }

        if (_usual.Doubt(entry.Distance, entry.Time) is { } doubt)
            brush.Text(PieceRow.WordsColumn, line, $"? {Say.Pace(entry.Distance, entry.Time)}, {doubt}", Tone.Caution);
        else
            brush.Text(PieceRow.WordsColumn, line, Say.Pace(entry.Distance, entry.Time), Tone.Dim);
    }

    // What was typed stands beside the words, so the words need not quote it; the whole sentence is below.
    private static string Shortened(string problem)
    {
        int quoted = problem.StartsWith('“') ? problem.IndexOf('”', StringComparison.Ordinal) : -1;
        return quoted > 0 ? problem[(quoted + 1)..].Trim() : problem;
    }

    private void PaintProblem(Brush brush, int line)
    {
        PieceRow? here = _rows.Find(row => row.HasFocus && row.Typo(_fields.Paddle) is not null);
        string? problem = here?.Typo(_fields.Paddle) ?? _fields.Texts.Select(field => field.Typo).FirstOrDefault(typo => typo is not null)
            ?? _rows.Select(row => row.Typo(_fields.Paddle)).FirstOrDefault(typo => typo is not null);
        if (problem is not null)
            brush.Words(1, line, brush.Columns - 2, "✗ " + problem, Tone.Problem, most: 2);
    }

    private void Fill(OutingDraft draft)
    {
        _filling = true;
        RemoveAll();
        _rows.Clear();
        _fields = new OutingFields(Session.Workspace, Look);
        _fields.Take(draft);
        _rows.AddRange(draft.Pieces.Select(NewRow));
        (_editing, _filledFor, _edited, _demanding, _top, _usual) = (draft.Editing, draft.Paddler, false, false, 0, null);
        foreach (View view in new View[] { _fields.Date, _fields.HullChoice, _fields.PaddleChoice, _fields.Wind, _fields.Label })
            AddInput(view);
        foreach (PieceRow row in _rows)
            AddRow(row);
        AddInput(_fields.Soreness);
        AddInput(_fields.Notes);
        _filling = false;
        SetNeedsLayout();
        PlaceRows();
        SetNeedsDraw();
    }

    private PieceRow NewRow(PieceDraft draft) => new(() => Session.Unit, draft);

    private void AddRow(PieceRow row)
    {
        foreach (Field field in row.Fields)
            AddInput(field);
    }

    private void AddInput(View view)
    {
        var input = (IInput)view;
        input.Edited += WasEdited;
        input.KeyFirst = key => Steer(view, key);
        view.HasFocusChanged += (_, focus) =>
        {
            if (focus.NewValue)
                ScrollTo(view);
            SetNeedsDraw();
        };
        Add(view);
    }

    private void WasEdited()
    {
        if (_filling)
            return;
        _edited = true;
        SaveDraft();
        SetNeedsDraw();
    }

    private void SaveDraft() => Session.Shell.Try(() => HalfTypedOuting.Keep(Session.Workspace, _fields.ToDraft(Paddler.Id, _editing, _rows)));

    private void TakeDraft(OutingDraft draft)
    {
        Fill(draft);
        _edited = true;
        Session.Shell.Say("This outing is as you left it. F5 starts over.", Tone.Now);
    }

    private OutingDraft Planned()
    {
        Chosen chosen = Session.Chosen!;
        TrialCard? card = Session.BackgroundAnalyses.Analysis(chosen)?.Card ?? OpenCard.Of(Session.Workspace, chosen)?.Card;
        IReadOnlyList<PieceDraft> pieces = card is null
            ? [new PieceDraft(null, "", "1 km", "", "")]
            : [.. card.Lengths.Select(length => PieceRow.Planned(length, card.Distance, Session.Unit))];
        return new(chosen.Paddler.Id, null, $"{Session.Workspace.Today:yyyy-MM-dd}", chosen.Hull.Id.ToString(), chosen.Paddle.Id.ToString(), "", "", "", "", pieces);
    }

    private void BeginTyping() => (_rows.Find(row => row.Time.IsEmpty)?.Time ?? _fields.Soreness).SetFocus();

    private static int ShownRows(int height) => Math.Max(1, height - FirstPieceRow - RowsBelow);

    private void PlaceRows()
    {
        int shown = ShownRows(Viewport.Height);
        _top = Math.Clamp(_top, 0, Math.Max(0, _rows.Count - shown));
        for (int index = 0; index < _rows.Count; index++)
            _rows[index].Place(FirstPieceRow + index - _top, visible: index >= _top && index < _top + shown);
        int below = FirstPieceRow + Math.Min(shown, _rows.Count);
        _fields.Soreness.Y = below + 1;
        _fields.Notes.Y = below + 2;
    }

    private void ScrollTo(View view)
    {
        int index = _rows.FindIndex(row => row.Fields.Contains(view));
        int shown = ShownRows(Viewport.Height);
        if (index < 0 || (index >= _top && index < _top + shown))
            return;
        _top = index < _top ? index : index - shown + 1;
        PlaceRows();
    }

    // Enter goes the short way, from time to effort to the next time; Tab visits everything; arrows keep the column.
    private bool Steer(View from, Key key)
    {
        int index = _rows.FindIndex(row => row.Fields.Contains(from));
        if (key == Key.Enter)
        {
            if (from == _fields.Soreness || from == _fields.Notes)
                Save();
            else if (index < 0)
                BeginTyping();
            else if (from != _rows[index].Effort)
                (from == _rows[index].Time ? _rows[index].Effort : _rows[index].Time).SetFocus();
            else
                GoTo(index + 1, _rows[Math.Min(index + 1, _rows.Count - 1)].Time);
            return true;
        }

        if (key == Key.CursorDown || key == Key.CursorUp)
        {
            Vertically(from, index, key == Key.CursorDown ? 1 : -1);
            return true;
        }

        if (key == Key.Tab || key == Key.Tab.WithShift)
        {
            List<View> all = [_fields.Date, _fields.HullChoice, _fields.PaddleChoice, _fields.Wind, _fields.Label,
                .. _rows.SelectMany(row => row.Fields), _fields.Soreness, _fields.Notes];
            int next = (all.IndexOf(from) + (key == Key.Tab ? 1 : all.Count - 1)) % all.Count;
            Show(all[next]);
            return true;
        }

        return false;
    }

    private void Vertically(View from, int index, int by)
    {
        if (index >= 0 && index + by >= 0)
            GoTo(index + by, _rows[Math.Clamp(index + by, 0, _rows.Count - 1)].Fields[_rows[index].Fields.ToList().IndexOf((Field)from)]);
        else if (index == 0)
            _fields.Wind.SetFocus();
        else if (from == _fields.Soreness)
            Show(by > 0 ? _fields.Notes : _rows[^1].Time);
        else if (from == _fields.Notes)
            Show(by > 0 ? _fields.Notes : _fields.Soreness);
        else
            Show(by < 0 ? _fields.Date : from == _fields.Wind || from == _fields.Label ? _rows[0].Time : _fields.Wind);
    }

    private void GoTo(int index, View view) => Show(index < _rows.Count ? view : _fields.Soreness);

    private void Show(View view)
    {
        ScrollTo(view);
        view.SetFocus();
    }

    private void AddPiece()
    {
        PieceDraft last = _rows.Count > 0 ? _rows[^1].ToDraft() : new PieceDraft(null, "", "1 km", "", "");
        PieceRow row = NewRow(last with { Piece = null, Time = "", Effort = "" });
        _rows.Add(row);
        AddRow(row);
        PlaceRows();
        WasEdited();
        Show(row.Time);
    }

    private void DropPiece()
    {
        int index = _rows.FindIndex(row => row.HasFocus);
        if (index < 0 || _rows.Count == 1)
        {
            Session.Shell.Say(index < 0 ? "Go to a piece first." : "An outing has at least one piece.", Tone.Problem);
            return;
        }

        foreach (Field field in _rows[index].Fields)
        {
            Remove(field);
            field.Dispose();
        }

        _rows.RemoveAt(index);
        PlaceRows();
        WasEdited();
        Show(_rows[Math.Min(index, _rows.Count - 1)].Time);
    }

    private void StartOver()
    {
        HalfTypedOuting.Drop(Session.Workspace, Paddler);
        Fill(Planned());
        BeginTyping();
    }

    private void Save()
    {
        _demanding = true;
        SetNeedsDraw();
        if (_fields.Texts.FirstOrDefault(field => field.Problem is not null) is { } wrong)
        {
            Show(wrong);
            Session.Shell.Say(wrong.Problem!, Tone.Problem);
            return;
        }

        if (_rows.Find(row => row.FirstWrong(_fields.Paddle) is not null) is { } row)
        {
            Field field = row.FirstWrong(_fields.Paddle)!;
            Show(field);
            Session.Shell.Say($"Piece {_rows.IndexOf(row) + 1}: {field.Problem ?? row.Typo(_fields.Paddle)}", Tone.Problem);
            return;
        }

        OutingEntry entry = _fields.Read(Paddler, _rows.Select(piece => piece.Read(_fields.Paddle)!));
        Outing? saved = null, before = Session.Outings().FirstOrDefault(outing => outing.Id == _editing);
        bool changed = _editing is not null;
        if (!Session.Shell.Try(() => saved = _editing is { } id ? EditedOuting.Save(Session.Workspace, id, entry, [.. _rows.Select(piece => piece.PieceId)]) : LogOuting.Save(Session.Workspace, entry)))
            return;
        HalfTypedOuting.Drop(Session.Workspace, Paddler);
        (_edited, _editing) = (false, null);
        Session.LogChanged();
        Session.Shell.Open(changed ? Place.Logbook : Place.NextOuting);
        IReadOnlyList<string> doubts = OutingDoubts.Of(Session.Workspace, saved!, before);
        if (doubts.Count > 0)
            Session.Shell.Say($"Saved. {doubts[0]}", Tone.Caution);
        else
            Session.Shell.Say($"Saved the outing of {saved!.Date:yyyy-MM-dd}. In the logbook, u takes it back.", Tone.Best);
    }
}
