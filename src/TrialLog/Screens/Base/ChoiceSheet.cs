using Terminal.Gui.Input;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Base;

/// <summary>One of several things to pick, by arrows or mouse; letters narrow the list to what holds them.</summary>
internal sealed class ChoiceSheet : Sheet
{
    private readonly string _title;
    private readonly IReadOnlyList<string> _choices;
    private readonly IShell _shell;
    private readonly Action<int> _picked;
    private List<int> _shown;
    private string _typed = "";
    private int _at;
    private int _top;

    public ChoiceSheet(Look look, IShell shell, string title, IReadOnlyList<string> choices, int at, Action<int> picked)
        : base(look)
    {
        (_shell, _title, _choices, _picked) = (shell, title, choices, picked);
        _shown = [.. Enumerable.Range(0, choices.Count)];
        _at = Math.Clamp(at, 0, Math.Max(0, choices.Count - 1));
    }

    /// <summary>Letters narrow the list, so they are no keys.</summary>
    public override bool Typing => true;

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "choose", () => Pick(_at)),
        new(Key.CursorDown, "↓", "down", () => Move(1)) { Also = [Key.Tab] },
        new(Key.CursorUp, "↑", "up", () => Move(-1)) { Also = [Key.Tab.WithShift] },
        new(Key.Esc, "Esc", "cancel", _shell.Lift),
        new(Key.Empty, "a…z", "narrow", () => { }),
    ];

    protected override bool OnKeyDown(Key key)
    {
        if (base.OnKeyDown(key))
            return true;
        string typed = key.IsAlt || key.IsCtrl ? "" : key.AsRune.ToString();
        // A list of choices needs no key to be searched; whoever presses the one of other lists finds the same.
        if (typed == "/" && _typed.Length == 0)
            return true;
        if (key == Key.Backspace && _typed.Length > 0)
            Narrow(_typed[..^1]);
        else if (typed.Length > 0 && !char.IsControl(typed[0]))
            Narrow(_typed + typed);
        else
            return false;
        return true;
    }

    protected override void Paint(Brush brush)
    {
        int first = Heading(brush, _typed.Length == 0 ? _title : $"{_title}   “{_typed}”"), room = Math.Max(1, brush.Rows - first);
        _top = Math.Clamp(_top, Math.Max(0, _at - room + 1), _at);
        if (_top + room < _shown.Count)
            brush.TextTo(brush.Columns - 2, 0, "more ↓", Tone.Key);
        for (int index = _top; index < Math.Min(_shown.Count, _top + room); index++)
        {
            bool here = index == _at;
            brush.Text(2, first + index - _top, (here ? "▸ " : "  ") + _choices[_shown[index]], here ? Tone.Selected : Tone.Plain);
        }
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (!mouse.IsSingleDoubleOrTripleClicked || mouse.Position is not { } at || at.Y < 2 || _top + at.Y - 2 >= _shown.Count)
            return false;
        Pick(_top + at.Y - 2);
        return true;
    }

    // What begins with the letters stands before what only holds them; letters that nothing holds are not taken.
    private void Narrow(string typed)
    {
        List<int> holding = [.. Enumerable.Range(0, _choices.Count)
            .Where(index => _choices[index].Contains(typed, StringComparison.CurrentCultureIgnoreCase))];
        if (holding.Count == 0)
            return;
        (_typed, _at, _top) = (typed, 0, 0);
        _shown = typed.Length == 0 ? holding
            : [.. holding.OrderByDescending(index => _choices[index].StartsWith(typed, StringComparison.CurrentCultureIgnoreCase))];
        SetNeedsDraw();
    }

    private void Move(int by)
    {
        _at = Math.Clamp(_at + by, 0, Math.Max(0, _shown.Count - 1));
        SetNeedsDraw();
    }

    private void Pick(int at)
    {
        if (at >= _shown.Count)
            return;
        int index = _shown[at];
        _shell.Lift();
        _picked(index);
    }
}
