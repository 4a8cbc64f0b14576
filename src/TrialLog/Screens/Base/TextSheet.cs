using Terminal.Gui.Input;
using TrialLog.Application.Wording;
using TrialLog.Logbook.Shared;
using TrialLog.Plots;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Base;

/// <summary>Paragraphs to read, scrolled where they do not fit.</summary>
internal sealed class TextSheet : Sheet, ISearched
{
    /// <summary>Longer lines are hard to read.</summary>
    private const int Widest = 84;

    private readonly string _title;
    private readonly string _text;
    private readonly IShell _shell;
    private readonly bool _asWritten;
    private int _top;
    private int _lines;

    /// <param name="look">The terminal's glyphs and looks.</param>
    /// <param name="shell">The window.</param>
    /// <param name="title">The heading.</param>
    /// <param name="text">The paragraphs. A line that begins with <c>#</c> is a heading of its own.</param>
    /// <param name="asWritten">Whether its lines are kept as they are.</param>
    public TextSheet(Look look, IShell shell, string title, string text, bool asWritten = false)
        : base(look)
    {
        (_shell, _title, _text, _asWritten) = (shell, title, text, asWritten);
    }

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Esc, "Esc", "back", _shell.Lift) { Also = [Key.Enter, Key.F1, new Key('q')] },
        new(Key.CursorDown, "↓", "on", () => Scroll(1)),
        new(Key.CursorUp, "↑", "up", () => Scroll(-1)),
        new(Key.PageDown, "PgDn", "page on", () => Scroll(Viewport.Height - 3)) { Also = [Key.Space] },
        new(Key.PageUp, "PgUp", "page up", () => Scroll(3 - Viewport.Height)),
    ];

    protected override void Paint(Brush brush)
    {
        int row = Heading(brush, _title);
        IReadOnlyList<string> lines = Written(brush.Columns);
        _lines = lines.Count;
        _top = Math.Clamp(_top, 0, Math.Max(0, _lines - (brush.Rows - row)));
        for (int line = _top; line < lines.Count && row < brush.Rows; line++, row++)
        {
            bool heading = lines[line].StartsWith("# ", StringComparison.Ordinal);
            brush.Text(_asWritten ? 0 : 2, row, heading ? lines[line][2..] : lines[line], heading ? Tone.Strong : Tone.Plain);
        }

        if (_top + brush.Rows - 2 < _lines)
            brush.TextTo(brush.Columns - 2, 0, "more ↓", Tone.Key);
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (mouse.Flags.HasFlag(MouseFlags.WheeledDown))
            Scroll(3);
        else if (mouse.Flags.HasFlag(MouseFlags.WheeledUp))
            Scroll(-3);
        else
            return false;
        return true;
    }

    /// <inheritdoc/>
    public bool Find(string text, bool next)
    {
        IReadOnlyList<string> lines = Written(Viewport.Width);
        int line = Searching.Line(lines.Count, _top, text, next, at => lines[at]);
        if (line < 0)
            return false;
        _top = line;
        SetNeedsDraw();
        return true;
    }

    private IReadOnlyList<string> Written(int columns)
    {
        string text = Look.Strokes.Write(_text);
        return _asWritten ? text.Split('\n') : WordWrap.Lines(text, Math.Min(Widest, columns - 4));
    }

    private void Scroll(int lines)
    {
        _top = Math.Max(0, _top + lines);
        SetNeedsDraw();
    }
}
