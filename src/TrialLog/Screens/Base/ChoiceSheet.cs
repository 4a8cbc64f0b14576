using Terminal.Gui.Input;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Base;

/// <summary>One of a few things to pick, by arrows, first letter or mouse.</summary>
internal sealed class ChoiceSheet : Sheet
{
    private readonly string _title;
    private readonly IReadOnlyList<string> _choices;
    private readonly IShell _shell;
    private readonly Action<int> _picked;
    private int _at;
    private int _top;

    public ChoiceSheet(Look look, IShell shell, string title, IReadOnlyList<string> choices, int at, Action<int> picked)
        : base(look)
    {
        (_shell, _title, _choices, _picked) = (shell, title, choices, picked);
        _at = Math.Clamp(at, 0, Math.Max(0, choices.Count - 1));
    }

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "take it", () => Pick(_at)) { Also = [Key.Space] },
        new(Key.CursorDown, "↓", "next", () => Move(1)) { Also = [Key.Tab] },
        new(Key.CursorUp, "↑", "before", () => Move(-1)) { Also = [Key.Tab.WithShift] },
        new(Key.Esc, "Esc", "leave it", _shell.Lift),
    ];

    protected override bool OnKeyDown(Key key)
    {
        if (base.OnKeyDown(key))
            return true;
        string typed = key.AsRune.ToString();
        if (typed.Length == 0 || char.IsControl(typed[0]))
            return false;
        for (int step = 1; step <= _choices.Count; step++)
        {
            int index = (_at + step) % _choices.Count;
            if (_choices[index].StartsWith(typed, StringComparison.OrdinalIgnoreCase))
            {
                Move(index - _at);
                break;
            }
        }

        return true;
    }

    protected override void Paint(Brush brush)
    {
        int first = Heading(brush, _title), room = Math.Max(1, brush.Rows - first);
        _top = Math.Clamp(_top, Math.Max(0, _at - room + 1), _at);
        for (int index = _top; index < Math.Min(_choices.Count, _top + room); index++)
        {
            bool here = index == _at;
            brush.Text(2, first + index - _top, (here ? "▸ " : "  ") + _choices[index], here ? Tone.Selected : Tone.Plain);
        }
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (!mouse.IsSingleDoubleOrTripleClicked || mouse.Position is not { } at || at.Y < 2 || _top + at.Y - 2 >= _choices.Count)
            return false;
        Pick(_top + at.Y - 2);
        return true;
    }

    private void Move(int by)
    {
        _at = Math.Clamp(_at + by, 0, _choices.Count - 1);
        SetNeedsDraw();
    }

    private void Pick(int index)
    {
        _shell.Lift();
        if (index < _choices.Count)
            _picked(index);
    }
}
