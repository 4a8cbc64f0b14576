using Terminal.Gui.Input;
using TrialLog.Application.Files;
using TrialLog.Application.Wording;
using TrialLog.Plots;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Pictures;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Imports;

/// <summary>Several recorded outings, of one file or of several, each with its picture: one is taken up after the other.</summary>
internal sealed class RecordingsSheet : Sheet, ISearched
{
    // A speed plot needs so many rows to tell anything; with fewer there is a line of bars.
    private const int LeastPlotRows = 7, MostPlotRows = 12, HeadingRows = 2;

    private readonly Session _session;
    private readonly List<RecordingInHand> _outings;
    private readonly IReadOnlyList<string> _notRead;
    private readonly Action<RecordingInHand> _look;
    private readonly Action _leave;
    private readonly Stack<(int At, RecordingInHand Outing)> _leftOut = new();
    private int _at;
    private int _top;
    private int _rowsEach = 2;

    /// <param name="session">What the screens share.</param>
    /// <param name="outings">The outings that are neither saved nor left out yet; one is taken out of it by <c>x</c>.</param>
    /// <param name="notRead">Why files were not read, a sentence each.</param>
    /// <param name="look">Takes one up.</param>
    /// <param name="leave">Leaves them all.</param>
    public RecordingsSheet(
        Session session, List<RecordingInHand> outings, IReadOnlyList<string> notRead, Action<RecordingInHand> look, Action leave)
        : base(session.Look)
    {
        (_session, _outings, _notRead, _look, _leave) = (session, outings, notRead, look, leave);
    }

    // Digits and q must not take half corrected recordings away.
    public override bool Typing => true;

    public override (string Title, string Text)? Explanation => ("Several recorded outings",
        "Each has its speed from start to end and the pieces that were found in it. Enter takes one up, to be looked at and saved; " +
            "then the " +
        "others are still here. x leaves one out, u brings it back. Nothing is saved by itself.");

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "look at it", () => _look(_outings[_at])),
        new(Key.CursorDown, "↓", "down", () => Point(_at + 1)) { Also = [Key.Tab] },
        new(Key.CursorUp, "↑", "up", () => Point(_at - 1)) { Also = [Key.Tab.WithShift] },
        new('x', "out", LeaveOut),
        .. _leftOut.Count > 0 ? [new KeyHint('u', "undo", BringBack)] : Array.Empty<KeyHint>(),
        new('v', "in words", () => _session.Shell.LayOver(new TextSheet(Look, _session.Shell, "Recorded outings in words",
            string.Join('\n', _outings.SelectMany((outing, index) => (string[])[$"# {Line(index).Trim()}",
                .. RecordingSummary.InWords(outing.Recording, outing.Lengths, _session.Unit), ""]).Concat(_notRead))))),
        new(Key.Esc, "Esc", "leave them all", () =>
        {
            if (_session.Shell.MayLeave(this))
                _leave();
        }),
    ];

    public override string? Unsaved => _outings.Exists(outing => outing.IsTouched) ? "These recordings are not saved." : null;

    public override bool IsTakenUpAgain => true;

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (!mouse.IsSingleDoubleOrTripleClicked || mouse.Position is not { } at || at.Y < HeadingRows
            || _top + (at.Y - HeadingRows) / _rowsEach is var outing && outing >= _outings.Count)
            return false;
        _look(_outings[outing]);
        return true;
    }

    protected override void Paint(Brush brush)
    {
        Heading(brush, $"{Say.Count(_outings.Count, "outing")} to look at");
        int room = Math.Max(2, brush.Rows - HeadingRows - Math.Min(_notRead.Count, 3));
        int plotRows = Math.Clamp(room / _outings.Count - 1, 1, MostPlotRows);
        if (plotRows < LeastPlotRows)
            plotRows = 1;
        _rowsEach = plotRows + 1;
        int shown = Math.Max(1, room / _rowsEach);
        _top = Math.Clamp(_top, Math.Max(0, _at - shown + 1), _at);
        for (int outing = _top; outing < Math.Min(_outings.Count, _top + shown); outing++)
        {
            int row = HeadingRows + (outing - _top) * _rowsEach;
            RecordedOuting recording = _outings[outing].Recording;
            brush.Text(0, row, (outing == _at ? " ▸ " : "   ") + Line(outing), outing == _at ? Tone.Selected : Tone.Plain);
            if (plotRows > 1)
                brush.Picture(0, row + 1, SpeedPlot.Draw(recording, -1, brush.Columns, plotRows, brush.Strokes));
            else
                brush.Text(6, row + 1, SpeedBars.Draw(recording, brush.Columns - 8, brush.Strokes).Line, Tone.Dim);
        }

        for (int line = 0; line < Math.Min(_notRead.Count, 3); line++)
            brush.Text(1, brush.Rows - Math.Min(_notRead.Count, 3) + line, "✗ " + _notRead[line], Tone.Problem);
    }

    /// <inheritdoc/>
    public bool Find(string text, bool next)
    {
        int outing = Searching.Line(_outings.Count, _at, text, next, Line);
        if (outing >= 0)
            Point(outing);
        return outing >= 0;
    }

    private string Line(int outing) => _outings[outing].Recording is var recording
        ? $"{outing + 1}  {recording.Date:yyyy-MM-dd} {recording.Time:HH:mm}  {RecordingTable.Clock(recording.Duration)}  "
            + $"{Say.Count(recording.Kept.Count, "piece")}  {recording.FileName}"
        : "";

    private void Point(int outing)
    {
        _at = Math.Clamp(outing, 0, _outings.Count - 1);
        SetNeedsDraw();
        _session.Shell.Redraw();
    }

    private void LeaveOut()
    {
        if (_outings.Count == 1)
        {
            _session.Shell.Say("It is the only one. Esc leaves it.");
            return;
        }

        _leftOut.Push((_at, _outings[_at]));
        _outings.RemoveAt(_at);
        Point(_at);
        _session.Shell.Say("Left out. u brings it back.", Tone.Now);
    }

    private void BringBack()
    {
        (int at, RecordingInHand outing) = _leftOut.Pop();
        _outings.Insert(Math.Min(at, _outings.Count), outing);
        Point(at);
    }
}
