using Terminal.Gui.Input;
using TrialLog.Domain.Values;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Model;

namespace TrialLog.Screens.Forms;

/// <summary>One of a few things, changed with ← and →, Space or a click.</summary>
internal sealed class ChoiceField : Canvas, IInput
{
    private readonly IReadOnlyList<string> _choices;
    private int _at;

    public ChoiceField(Look look, IReadOnlyList<string> choices, int at = 0)
        : base(look)
    {
        _choices = choices;
        _at = Math.Clamp(at, 0, Math.Max(0, choices.Count - 1));
        Height = 1;
        CanFocus = true;
    }

    public event Action? Edited;

    public Func<Key, bool>? KeyFirst { get; set; }

    public string? Typo => null;

    public string? Problem => null;

    /// <summary>Which one is taken.</summary>
    public int At
    {
        get => _at;
        set
        {
            if (value == _at || value < 0 || value >= _choices.Count)
                return;
            _at = value;
            SetNeedsDraw();
            Edited?.Invoke();
        }
    }

    protected override void Paint(Brush brush)
    {
        string text = _choices.Count == 0 ? "none" : _choices[_at];
        brush.Runs(0, 0, (HasFocus ? "◂ " : "  ", Tone.Key), (brush.Fit(text, brush.Columns - 4), HasFocus ? Tone.Selected : Tone.Strong),
            (_choices.Count > 1 ? " ▸" : "", HasFocus ? Tone.Key : Tone.Dim));
    }

    protected override bool OnKeyDown(Key key)
    {
        if (KeyFirst?.Invoke(key) == true)
            return true;
        if (key == Key.CursorRight || key == Key.Space)
            Step(1);
        else if (key == Key.CursorLeft)
            Step(-1);
        else
            return PickByLetter(key);
        return true;
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (!mouse.IsSingleDoubleOrTripleClicked)
            return false;
        SetFocus();
        Step(mouse.Position is { X: 0 } ? -1 : 1);
        return true;
    }

    private void Step(int by)
    {
        if (_choices.Count > 0)
            At = (_at + by + _choices.Count) % _choices.Count;
    }

    private bool PickByLetter(Key key)
    {
        string typed = key.IsAlt || key.IsCtrl ? "" : key.AsRune.ToString();
        if (typed.Length == 0 || !char.IsLetterOrDigit(typed[0]))
            return false;
        for (int step = 1; step <= _choices.Count; step++)
        {
            int index = (_at + step) % _choices.Count;
            if (_choices[index].StartsWith(typed, StringComparison.OrdinalIgnoreCase))
            {
                At = index;
                break;
            }
        }

        return true;
    }
}
