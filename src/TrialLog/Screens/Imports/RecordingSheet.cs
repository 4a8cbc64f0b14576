using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using TrialLog.Application.Files;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Plots;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Pictures;
using TrialLog.Screens.Base;
using TrialLog.Screens.Bodies;
using TrialLog.Screens.Forms;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Imports;

/// <summary>The pieces found in a recording under its speed: corrected, given lengths, then saved.</summary>
internal sealed class RecordingSheet : Sheet
{
    private const int HeadingRows = 2, BottomRows = 4;

    private readonly Session _session;
    private readonly RecordingInHand _hand;
    private readonly Action _done;
    private readonly Action _leave;
    private readonly bool _isOneOfSeveral;
    private Field? _field;
    private (string Label, string Hint) _asked;
    private int _top;
    private int _tableRow;

    /// <param name="session">What the screens share.</param>
    /// <param name="hand">The recording; it keeps what was corrected when the sheet is lifted.</param>
    /// <param name="done">The recording was saved; lifts the sheet.</param>
    /// <param name="leave">It is left without saving; lifts the sheet.</param>
    /// <param name="isOneOfSeveral">Whether it is still in hand, among others, when it is left.</param>
    public RecordingSheet(Session session, RecordingInHand hand, Action done, Action leave, bool isOneOfSeveral)
        : base(session.Look)
    {
        (_session, _hand, _done, _leave, _isOneOfSeveral) = (session, hand, done, leave, isOneOfSeveral);
        LookInLog();
    }

    // Digits and q must not take a half corrected recording away.
    public override bool Typing => true;

    public override (string Title, string Text)? Explanation => ("Pieces found in a recording", ImportExplanation.Explanation);

    public override IReadOnlyList<KeyHint> Keys => _field is not null
        ? [new(Key.Enter, "Enter", "do it", () => { }), new(Key.Esc, "Esc", "leave it", EndAsking)]
        :
        [
            new(Key.S.WithCtrl, "Ctrl+S", "save", Save) { Also = [Key.F9] },
            new(Key.Enter, "Enter", "lengths …", TypeAnswers),
            new(Key.Esc, "Esc", "leave", Leave),
            .. _hand.Asks ? [new KeyHint('y', "yes", Confirm)] : Array.Empty<KeyHint>(),
            new('x', _hand.Here is { Kept: false } ? "count" : "out", DropOrKeep),
            new('e', "edit", Edit),
            new('+', "join", () => OnPiece(() => _hand.Correct(recording => recording.Merge(_hand.At)))),
            new('-', "split", AskSplit),
            new('u', "undo", Undo),
            new('v', "in words", InWords),
            new(Key.CursorLeft, "← →", "start", () => Nudge(LegEdge.Start, -1)),
            new('[', "end", () => Nudge(LegEdge.End, -1)) { Label = "[ ]" },
            new('a', "add piece", AskAdd),
        ];

    public override string? Unsaved => _hand.IsTouched ? "This recording is not saved." : null;

    public override bool IsTakenUpAgain => true;

    protected override bool OnKeyDown(Key key)
    {
        if (_field is not null)
            return false;
        if (key == Key.CursorDown || key == Key.Tab)
            Point(_hand.At + 1);
        else if (key == Key.CursorUp || key == Key.Tab.WithShift)
            Point(_hand.At - 1);
        else if (key == Key.CursorRight)
            Nudge(LegEdge.Start, 1);
        else if (key == new Key(']'))
            Nudge(LegEdge.End, 1);
        else
            return base.OnKeyDown(key);
        return true;
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (_field is not null || !mouse.IsSingleDoubleOrTripleClicked || mouse.Position is not { } at || at.Y < _tableRow
            || at.Y >= Viewport.Height - BottomRows)
            return false;
        Point(_top + at.Y - _tableRow);
        return true;
    }

    protected override void Paint(Brush brush)
    {
        RecordedOuting recording = _hand.Recording;
        Heading(brush, $"{recording.FileName} · {recording.Date:yyyy-MM-dd} {recording.Time:HH:mm} · " +
            $"{RecordingTable.Clock(recording.Duration)}");
        int plotRows = Math.Clamp(brush.Rows - HeadingRows - BottomRows - 1 - Math.Max(1, recording.Proposals.Count), 0,
            Math.Max(7, brush.Rows / 2));
        if (plotRows is >= 3 and < 7)
            plotRows = 7;
        if (plotRows > brush.Rows - HeadingRows - BottomRows - 3)
            plotRows = 0;
        if (plotRows > 0)
            brush.Picture(0, HeadingRows, SpeedPlot.Draw(recording, _hand.At, brush.Columns, plotRows, brush.Strokes));
        int row = HeadingRows + plotRows;
        brush.Text(0, row, RecordingTable.Headings, Tone.Dim);
        _tableRow = row + 1;
        int room = Math.Max(1, brush.Rows - BottomRows - _tableRow);
        _top = Math.Clamp(_top, Math.Max(0, _hand.At - room + 1), _hand.At);
        for (int piece = _top; piece < Math.Min(recording.Proposals.Count, _top + room); piece++)
            RecordingTable.Row(brush, _tableRow + piece - _top, _hand, piece);
        Bottom(brush, brush.Rows - BottomRows);
    }

    private void Bottom(Brush brush, int row)
    {
        RecordedOuting recording = _hand.Recording;
        if (_hand.Here?.Remarks is [var remark, ..])
            brush.Text(1, row, "! " + remark, Tone.Caution);
        else if (RecordingSummary.TideWarning(recording.Currents) is { } tide)
            brush.Text(1, row, "! " + tide, Tone.Caution);
        else
            brush.Text(1, row, recording.Mended.IsNothing ? recording.ClockNote : recording.Mended.ToString(), Tone.Dim);
        brush.Text(1, row + 1, RecordingTable.Answers(_hand), Tone.Plain);
        if (_field is { } field)
        {
            brush.Text(1, row + 2, _asked.Label, Tone.Strong);
            brush.Text(1, row + 3, field.Typo is { } typo ? "✗ " + typo : _asked.Hint, field.Typo is null ? Tone.Dim : Tone.Problem);
        }
        else if (_hand.Question is { } question)
        {
            brush.Words(1, row + 2, brush.Columns - 2, question, Tone.Caution, most: 2);
        }
    }

    private void Point(int piece)
    {
        _hand.At = Math.Clamp(piece, 0, Math.Max(0, _hand.Recording.Proposals.Count - 1));
        Changed();
    }

    private void InWords() => _session.Shell.LayOver(new TextSheet(_session.Look, _session.Shell, $"{_hand.Recording.FileName} in words",
        string.Join('\n', RecordingSummary.InWords(_hand.Recording, _hand.Lengths, _session.Unit))));

    // The card that was open then, and outings of that time, which another day has others of.
    private void LookInLog() => _session.Ask(_hand.InLog, known =>
    {
        _hand.Take(known);
        Changed();
    });

    private void OnPiece(Action action)
    {
        if (_hand.Here is null)
            _session.Shell.Say("No piece was found. a adds one.", Tone.Problem);
        else
            _session.Shell.Try(action);
        Point(_hand.At);
    }

    private void Confirm()
    {
        _hand.Confirm();
        Changed();
    }

    private void Undo()
    {
        _session.Shell.Try(_hand.Undo);
        LookInLog();
    }

    // What is changed seldom needs no key of its own.
    private void Edit()
    {
        (string What, Action Do)[] things =
        [
            ("lengths, effort, soreness, wind, place", TypeAnswers),
            .. _hand.Here is null ? [] : new (string, Action)[]
            {
                ($"start and end of piece {_hand.At + 1}, typed", AskEdges),
                ("how the stretches are read: out and back, one way", () => OnPiece(_hand.ReadOtherwise)),
            },
            ("when it began, where the watch's clock was wrong", AskStart),
            ("the outing of that time in the log: lay this recording over it", LayOver),
        ];
        _session.Shell.LayOver(new ChoiceSheet(Look, _session.Shell, "Change what?", [.. things.Select(thing => thing.What)], 0,
            index => things[index].Do()));
    }

    private void TypeAnswers()
    {
        var form = new Form(Look, inputColumn: 14, inputWidth: Math.Max(24, Math.Min(44, Viewport.Width - 34)));
        string card = string.Join(", ", _hand.Lengths.All.Select(
            length => _hand.Lengths.Blind ? _hand.Lengths.Shown(length, _session.Unit) : length.Typed(_session.Unit)));
        Field lengths = Row("Lengths", card, text => _hand.LengthsIn(text), "in order; empty: the card's"),
            effort = Row("Effort", string.Join(", ", _hand.Efforts), text => RecordingAnswers.EffortsIn(text), "0 to 10: one, or each"),
            sore = Row("Soreness", $"{_hand.Soreness}", text => Soreness.Parse(text), "0 none to 10 worst"),
            wind = Row("Wind", $"{_hand.Wind}", text => TextForms.Wind.Read(text), "Beaufort"),
            place = Row("Place", _hand.Place ?? "", text => NameRule.Checked(text, "place"), "as you call it");
        string about = string.Join("   ", _hand.Recording.Kept.Select((piece, index) =>
                $"{index + 1}: {Say.Clock(piece.Time.Seconds)}, {Say.Pace(piece.MetresPerSecond)}"))
            + "\nThe positions are never kept; a place is, if you name one.";
        _session.Shell.LayOver(new FormSheet(Look, _session.Shell, $"Of the {Say.Count(_hand.Recording.Kept.Count, "piece")} that count",
            form, () => about, () =>
            {
                if (lengths.Text.Trim() != card)
                    _hand.TypeLengths(_hand.LengthsIn(lengths.Text.Trim()));
                _hand.Efforts = effort.IsEmpty ? [] : RecordingAnswers.EffortsIn(effort.Text.Trim());
                _hand.Soreness = sore.IsEmpty ? null : Soreness.Parse(sore.Text.Trim());
                _hand.Wind = wind.IsEmpty ? null : TextForms.Wind.Read(wind.Text.Trim());
                _hand.Place = place.IsEmpty ? null : place.Text.Trim();
                _session.Shell.Lift();
                Changed();
            }));

        Field Row(string label, string text, Action<string> read, string hint) =>
            form.Row(label, new Field(text, typed => ProblemOf(typed, read)), hint);
    }

    private void DropOrKeep() =>
        OnPiece(() => _hand.Correct(
            recording => recording.Proposals[_hand.At].Kept ? recording.Drop(_hand.At) : recording.Keep(_hand.At)));

    private void Nudge(LegEdge edge, int seconds) => OnPiece(() =>
        _hand.MoveEdge(edge, (edge == LegEdge.Start ? _hand.Here!.Start : _hand.Here!.End) + TimeSpan.FromSeconds(seconds)));

    private void AskSplit() => OnPiece(() => Ask(
        "split at", $"Time since the start, between {RecordingTable.Clock(_hand.Here!.Start)} and " +
            $"{RecordingTable.Clock(_hand.Here.End)}" + (_hand.Recording.CutOf(_hand.At) is null ? "." : "; it turns or slows down there."),
        _hand.Recording.CutOf(_hand.At) is { } turn ? RecordingTable.Clock(turn) : "",
        text => TimesTyped.One(text),
        text => OnPiece(() => _hand.Correct(recording => recording.Split(_hand.At, TimesTyped.One(text))))));

    private void AskEdges() => OnPiece(() => Ask(
        "from, to", "Times since the start.", $"{RecordingTable.Clock(_hand.Here!.Start)} {RecordingTable.Clock(_hand.Here.End)}",
        text => TimesTyped.Two(text), text =>
        {
            (TimeSpan start, TimeSpan end) = TimesTyped.Two(text);
            OnPiece(() => _hand.MoveTo(start, end));
        }));

    private void AskAdd() => Ask(
        "from, to", "Times since the start, such as 5:32 11:04.", "", text => TimesTyped.Two(text), text =>
        {
            (TimeSpan start, TimeSpan end) = TimesTyped.Two(text);
            _session.Shell.Try(() => _hand.Correct(recording => recording.Add(start, end)));
        });

    private void AskStart() => Ask("began at", "Local day and time, such as 2026-05-09 10:00.",
        $"{_hand.Recording.Date:yyyy-MM-dd} {_hand.Recording.Time:HH:mm}", text => RecordingWords.Start(text), text =>
        {
            _hand.Correct(recording => recording.StartingAt(RecordingWords.Start(text)));
            LookInLog();
        });

    private void Ask(string label, string hint, string text, Action<string> read, Action<string> answered)
    {
        _asked = (label, hint);
        _field = new Field(text, Problem) { X = label.Length + 3, Y = Pos.AnchorEnd(2), Width = Dim.Fill(2) };
        _field.Edited += SetNeedsDraw;
        _field.KeyFirst = key =>
        {
            if (key == Key.Esc)
            {
                EndAsking();
            }
            else if (key == Key.Enter)
            {
                string typed = _field!.Text.Trim();
                if (typed.Length > 0 && Problem(typed) is { } problem)
                {
                    _session.Shell.Say(problem, Tone.Problem);
                    return true;
                }

                EndAsking();
                if (typed.Length > 0)
                    answered(typed);
                Changed();
            }

            return key == Key.Esc || key == Key.Enter;
        };
        Add(_field);
        _field.SetFocus();
        Changed();

        string? Problem(string typed) => ProblemOf(typed, read);
    }

    private static string? ProblemOf(string typed, Action<string> read)
    {
        try
        {
            read(typed);
            return null;
        }
        catch (InvalidValueException wrong)
        {
            return wrong.Message;
        }
    }

    private void EndAsking()
    {
        if (_field is not { } field)
            return;
        _field = null;
        Remove(field);
        field.Dispose();
        SetFocus();
        Changed();
    }

    private void Changed()
    {
        SetNeedsDraw();
        _session.Shell.Redraw();
    }

    private void Leave()
    {
        if (!_isOneOfSeveral && !_session.Shell.MayLeave(this))
            return;
        _leave();
        _session.Shell.Say($"Left {_hand.Recording.FileName}; nothing was saved.");
    }

    private void LayOver() => _session.Change(
        _ => _hand.LayOver(),
        over =>
        {
            _done();
            _session.Shell.Say($"Laid over the outing of {over.Date:yyyy-MM-dd}; its times stay. u undoes it.", Tone.Best);
        });

    private void Save() => _session.Change(
        _ => _hand.Save(),
        saved =>
        {
            _done();
            _session.Shell.Say(
                $"Saved the outing of {saved.Date:yyyy-MM-dd} with {Say.Count(saved.Pieces.Count, "piece")}. u undoes it.", Tone.Best);
        });
}
