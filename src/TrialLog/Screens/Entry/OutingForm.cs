using System.Drawing;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Forms;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Entry;

/// <summary>
/// The fields of an outing being typed, and beside them, in words, what is wrong. The texts are the model's; here is only where
/// they stand, which field is next and what is in sight.
/// </summary>
internal sealed class OutingForm : Canvas
{
    /// <summary>From so many rows on there is a blank one between the parts.</summary>
    private const int RoomyFrom = 12;

    private readonly Dictionary<Spot, View> _inputs = [];
    private readonly PiecesView _pieces;
    private readonly View _below;
    private TypedOuting _typed = null!;
    private TypingContext _context = null!;
    private bool _filling;

    public OutingForm(Look look)
        : base(look)
    {
        CanFocus = true;
        _pieces = new PiecesView(look, PaintPiece)
        {
            Y = Pos.Func(_ => Roomy ? 4 : 3),
            Height = Dim.Func(_ => Math.Clamp(_typed?.Draft.Pieces.Count ?? 1, 1, Math.Max(1, Viewport.Height - (Roomy ? 9 : 6)))),
        };
        _below = new BelowView(look) { X = 0, Y = Pos.Bottom(_pieces) + Pos.Func(_ => Roomy ? 1 : 0), Width = Dim.Fill(), Height = 2 };
        // Before the fields are placed, since what is in sight depends on how many rows there now are.
        _pieces.SubViewLayout += (_, _) =>
        {
            if (_typed is not null && _pieces.IsResized(_typed.Draft.Pieces.Count))
                KeepInSight();
        };
    }

    /// <summary>Something was typed.</summary>
    public event Action? Edited;

    /// <summary>Enter was pressed behind the last field of the short way.</summary>
    public event Action? Done;

    /// <summary>Sees each key before a field does; true where it took it.</summary>
    public Func<Key, bool>? KeyFirst { get; set; }

    /// <summary>Whether what is missing is marked, too.</summary>
    public bool Demanding { get; set; }

    /// <summary>Where the cursor is; the whole outing's date where it is nowhere.</summary>
    public Spot Here =>
        _inputs.FirstOrDefault(input => input.Value.HasFocus, new KeyValuePair<Spot, View>(new Spot(OutingPart.Date), this)).Key;

    private bool Roomy => Viewport.Height >= RoomyFrom;

    /// <summary>Shows an outing; the cursor stays where it is if that place is still there.</summary>
    public void Show(TypedOuting typed, TypingContext context)
    {
        bool rebuild = _typed is null || _context.Hulls != context.Hulls || _context.Paddles != context.Paddles
            || _inputs.Keys.Count(spot => spot.Part == OutingPart.Time) != typed.Draft.Pieces.Count;
        (_typed, _context) = (typed, context);
        Spot here = Here;
        bool hadFocus = HasFocus;
        _filling = true;
        if (rebuild)
            Build();
        foreach ((Spot spot, View input) in _inputs)
        {
            if (input is Field field)
            {
                if (field.Text != typed[spot])
                    field.Text = typed[spot];
            }
            else
            {
                ((ChoiceField)input).At = Math.Max(0, IndexOf(spot));
            }
        }

        _filling = false;
        if (rebuild && hadFocus)
            GoTo(here);
        SetNeedsLayout();
        SetNeedsDraw();
    }

    /// <summary>Puts the cursor where typing begins: the first time that is missing.</summary>
    public void Begin() =>
        GoTo(_typed.Spots.FirstOrDefault(spot => spot.Part == OutingPart.Time && _typed[spot].Length == 0, new Spot(OutingPart.Soreness)));

    /// <summary>Puts the cursor somewhere.</summary>
    public void GoTo(Spot spot)
    {
        if (spot.Piece >= _typed.Draft.Pieces.Count)
            spot = new Spot(OutingPart.Soreness);
        _inputs[spot].SetFocus();
        KeepInSight();
        SetNeedsDraw();
    }

    protected override void Paint(Brush brush)
    {
        if (_typed is null)
            return;
        brush.Text(1, 0, "date", Tone.Dim);
        brush.Text(21, 0, "hull", Tone.Dim);
        brush.Text(47, 0, "paddle", Tone.Dim);
        brush.Text(1, 1, "wind", Tone.Dim);
        brush.Text(13, 1, "Beaufort", Tone.Dim);
        brush.Text(23, 1, "label", Tone.Dim);
        if (_typed.Logged is { } logged)
            brush.Text(47, 1, $"changing {FindOuting.NameOf(logged)}", Tone.Now);
        else if (_typed.DayMeant(_context) is { } day)
            brush.Text(47, 1, "on " + Say.WeekdayInWords(day), Tone.Now);
        foreach ((string heading, int column, _, _) in PiecesView.Columns)
            brush.Text(column, _pieces.Frame.Y - 1,
                heading == "length" ? $"length, {(_context.Unit == LengthUnit.Centimetres ? "cm" : "in")}" : heading, Tone.Dim);
        int shown = _pieces.Frame.Height, count = _typed.Draft.Pieces.Count;
        if (count > shown)
            brush.TextTo(brush.Columns - 1, _pieces.Frame.Y - 1,
                $"{(brush.Columns < 66 ? "" : "pieces ")}{_pieces.Top + 1} to {Math.Min(count, _pieces.Top + shown)} of {count}", Tone.Dim);
        int below = _below.Frame.Y;
        if (WorstProblem() is { } problem)
            brush.Words(1, below + 2, brush.Columns - 2, "✗ " + problem, Tone.Problem,
                most: Math.Max(1, Math.Min(2, brush.Rows - below - 2)));
    }

    protected override void OnHasFocusChanged(bool newHasFocus, View? previousFocusedView, View? focusedView)
    {
        base.OnHasFocusChanged(newHasFocus, previousFocusedView, focusedView);
        SetNeedsDraw();
    }

    private void Build()
    {
        foreach (View input in _inputs.Values)
        {
            input.SuperView?.Remove(input);
            input.Dispose();
        }

        _inputs.Clear();
        RemoveAll();
        AddTo(this, OutingPart.Date, new Field { X = 8, Y = 0, Width = 11 });
        AddTo(this, OutingPart.Hull,
            new ChoiceField(Look, [.. _context.Hulls.Select(hull => Quoted.Visible(hull.Name))]) { X = 27, Y = 0, Width = 18 });
        AddTo(this, OutingPart.Paddle,
            new ChoiceField(Look, [.. _context.Paddles.Select(paddle => Quoted.Visible(paddle.Name))])
            {
                X = 55, Y = 0,
                Width = RestAfter(56)
            });
        AddTo(this, OutingPart.Wind, new Field { X = 8, Y = 1, Width = 4 });
        AddTo(this, OutingPart.Label, new Field { X = 29, Y = 1, Width = 16 });
        Add(_pieces, _below);
        for (int piece = 0; piece < _typed.Draft.Pieces.Count; piece++)
        {
            foreach ((_, int column, int width, OutingPart part) in PiecesView.Columns)
                AddTo(_pieces, part, new Field { X = column, Y = _pieces.RowOf(piece), Width = width }, piece);
        }

        AddTo(_below, OutingPart.Soreness, new Field { X = 12, Y = 0, Width = 5 });
        AddTo(_below, OutingPart.Notes, new Field { X = 12, Y = 1, Width = RestAfter(14) });
    }

    // Even where it is out of sight a field keeps a width, or the cursor could not go there.
    private Dim RestAfter(int columns) => Dim.Func(_ => Math.Max(8, Viewport.Width - columns));

    private void AddTo(View where, OutingPart part, View input, int piece = -1)
    {
        var spot = new Spot(part, piece);
        _inputs[spot] = input;
        ((IInput)input).Edited += () => WasTyped(spot, input);
        ((IInput)input).KeyFirst = key => Steer(spot, key);
        input.HasFocusChanged += (_, focus) =>
        {
            if (focus.NewValue)
                KeepInSight();
            SetNeedsDraw();
        };
        where.Add(input);
    }

    private void WasTyped(Spot spot, View input)
    {
        if (_filling)
            return;
        _typed.Type(spot, input is Field field ? field.Text : spot.Part == OutingPart.Hull ? $"{_context.Hulls[((ChoiceField)input).At].Id}"
            : $"{_context.Paddles[((ChoiceField)input).At].Id}");
        SetNeedsDraw();
        Edited?.Invoke();
    }

    private int IndexOf(Spot spot) => spot.Part == OutingPart.Hull
        ? _context.Hulls.ToList().FindIndex(hull => hull.Id.ToString() == _typed[spot])
        : _context.Paddles.ToList().FindIndex(paddle => paddle.Id.ToString() == _typed[spot]);

    // Enter goes the short way, from time to effort to the next time; arrows keep the column; Tab visits every field, around the end.
    // The library's own Tab leaves out what lies outside a narrow terminal.
    private bool Steer(Spot from, Key key)
    {
        if (KeyFirst?.Invoke(key) == true)
            return true;
        if (key == Key.Enter)
        {
            if (from.Part is OutingPart.Soreness or OutingPart.Notes)
                Done?.Invoke();
            else if (from.Piece < 0)
                Begin();
            else
                GoTo(from.Part == OutingPart.Effort ? new Spot(OutingPart.Time, from.Piece + 1)
                    : new Spot(from.Part == OutingPart.Time ? OutingPart.Effort : OutingPart.Time, from.Piece));
            return true;
        }

        if (key == Key.Tab || key == Key.Tab.WithShift)
        {
            List<Spot> spots = [.. _typed.Spots];
            GoTo(spots[(spots.IndexOf(from) + (key == Key.Tab ? 1 : spots.Count - 1)) % spots.Count]);
            return true;
        }

        if (key != Key.CursorDown && key != Key.CursorUp)
            return false;
        GoTo(Beside(from, key == Key.CursorDown ? 1 : -1));
        return true;
    }

    private Spot Beside(Spot from, int by) => from.Part switch
    {
        _ when from.Piece >= 0 => from.Piece + by < 0 ? new Spot(OutingPart.Wind) : new Spot(from.Part, from.Piece + by),
        OutingPart.Soreness => by > 0 ? new Spot(OutingPart.Notes) : new Spot(OutingPart.Time, _typed.Draft.Pieces.Count - 1),
        OutingPart.Notes => by > 0 ? from : new Spot(OutingPart.Soreness),
        OutingPart.Wind or OutingPart.Label => by > 0 ? new Spot(OutingPart.Time, 0) : new Spot(OutingPart.Date),
        _ => by > 0 ? new Spot(OutingPart.Wind) : from,
    };

    private void KeepInSight()
    {
        if (_typed is not null)
            _pieces.KeepInSight(Here.Piece, _typed.Draft.Pieces.Count);
    }

    private void PaintPiece(Brush brush, int piece, int row)
    {
        bool here = _inputs.Any(input => input.Key.Piece == piece && input.Value.HasFocus);
        brush.Text(1, row, (here ? "▸" : " ") + $"{piece + 1,3}", here ? Tone.Strong : Tone.Plain);
        Spot[] spots = [.. _typed.Spots.Where(spot => spot.Piece == piece)];
        if (spots.Select(spot => Demanding ? _typed.Problem(spot, _context) : _typed.Typo(spot, _context))
            .FirstOrDefault(problem => problem is not null) is { } problem)
            brush.Text(PiecesView.WordsColumn, row, "✗ " + Shortened(problem), Tone.Problem);
        else if (_typed.Piece(piece, _context) is { } entry)
            brush.Text(PiecesView.WordsColumn, row, PaceAndDoubt(entry), _typed.Doubt(entry, _context) is null ? Tone.Dim : Tone.Caution);
    }

    private string PaceAndDoubt(PieceEntry entry) =>
        _typed.Doubt(entry, _context) is { } doubt ? $"? {Say.Pace(entry.Distance.Metres / entry.Time.Seconds)}, {doubt}"
            : Say.Pace(entry.Distance.Metres / entry.Time.Seconds);

    // What was typed stands beside the words, so the words need not quote it; the whole sentence is below.
    private static string Shortened(string problem)
    {
        int quoted = problem.StartsWith('“') ? problem.IndexOf('”', StringComparison.Ordinal) : -1;
        return quoted > 0 ? problem[(quoted + 1)..].Trim() : problem;
    }

    private string? WorstProblem() => _typed.Spots.OrderByDescending(spot => spot == Here)
        .Select(spot => _typed.Typo(spot, _context)).FirstOrDefault(typo => typo is not null);

    /// <summary>What is asked once, below the pieces.</summary>
    private sealed class BelowView : Canvas
    {
        public BelowView(Look look)
            : base(look)
        {
            CanFocus = true;
        }

        protected override void Paint(Brush brush)
        {
            brush.Text(1, 0, "soreness", Tone.Dim);
            brush.Text(19, 0, "shoulder, elbow, back: 0 none to 10 worst", Tone.Dim);
            brush.Text(1, 1, "notes", Tone.Dim);
        }
    }

    /// <summary>The rows of the pieces, of which some may be out of sight.</summary>
    private sealed class PiecesView : Canvas
    {
        public static readonly IReadOnlyList<(string Heading, int Column, int Width, OutingPart Part)> Columns =
            [("length", 6, 9, OutingPart.Length), ("distance", 17, 9, OutingPart.Distance), ("time", 28, 9, OutingPart.Time),
                ("effort", 39, 5, OutingPart.Effort)];

        /// <summary>Where words on the piece begin.</summary>
        public const int WordsColumn = 46;

        private readonly PaintRow _paintRow;
        private int _count;
        private (int Rows, int Pieces) _seen;

        public PiecesView(Look look, PaintRow paintRow)
            : base(look)
        {
            _paintRow = paintRow;
            CanFocus = true;
        }

        public delegate void PaintRow(Brush brush, int piece, int row);

        /// <summary>The first piece in sight.</summary>
        public int Top { get; private set; }

        /// <summary>Whether there are other rows or other pieces than when it was last looked; the wheel's place stays if not.</summary>
        public bool IsResized(int count)
        {
            (int, int) was = _seen;
            return was != (_seen = (Viewport.Height, count));
        }

        public Pos RowOf(int piece) => Pos.Func(_ => piece - Top);

        public void KeepInSight(int piece, int count)
        {
            _count = count;
            int height = Math.Max(1, Viewport.Height);
            int top = Math.Clamp(piece < 0 ? Top : Math.Clamp(Top, piece - height + 1, piece), 0, Math.Max(0, count - height));
            if (top == Top)
                return;
            Top = top;
            SetNeedsLayout();
            SuperView?.SetNeedsDraw();
        }

        protected override void Paint(Brush brush)
        {
            for (int row = 0; row < brush.Rows && Top + row < _count; row++)
                _paintRow(brush, Top + row, row);
        }

        protected override bool OnMouseEvent(Mouse mouse)
        {
            int by = mouse.Flags.HasFlag(MouseFlags.WheeledDown) ? 1 : mouse.Flags.HasFlag(MouseFlags.WheeledUp) ? -1 : 0;
            if (by == 0)
                return false;
            Top = Math.Clamp(Top + by, 0, Math.Max(0, _count - Viewport.Height));
            SetNeedsLayout();
            SuperView?.SetNeedsDraw();
            return true;
        }
    }
}
