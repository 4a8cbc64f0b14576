using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using TrialLog.Domain.Values;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Shell;

/// <summary>The line in which a text to find is typed; what is on the screen moves to it with each letter.</summary>
internal sealed class Finder : Canvas
{
    private readonly TextField _field;
    private ISearched? _searched;
    private bool _found = true;

    public Finder(Look look)
        : base(look)
    {
        (Height, CanFocus, Visible) = (1, true, false);
        _field = new TextField { X = 8, Y = 0, Width = Dim.Fill(24) };
        _field.TextChanged += (_, _) => Go(next: false);
        Add(_field);
    }

    /// <summary>It was closed.</summary>
    public event Action? Closed;

    /// <summary>The keys that work while it is open.</summary>
    public IReadOnlyList<KeyHint> Keys =>
        [new(Key.Enter, "Enter", "next", () => Go(next: true)), new(Key.Esc, "Esc", "done", Close)];

    /// <summary>Opens it over what is searched.</summary>
    public void Open(ISearched searched)
    {
        (_searched, _field.Text, _found, Visible) = (searched, "", true, true);
        _field.SetFocus();
        SetNeedsDraw();
    }

    protected override void Paint(Brush brush)
    {
        brush.Text(1, 0, "find /", Tone.Key);
        if (!_found)
            brush.TextTo(brush.Columns - 1, 0, "✗ not on this screen", Tone.Problem);
    }

    protected override bool OnKeyDown(Key key)
    {
        if (Keys.FirstOrDefault(hint => hint.Answers(key)) is not { } known)
            return false;
        known.Do();
        return true;
    }

    private void Go(bool next)
    {
        _found = _field.Text.Length == 0 || _searched?.Find(_field.Text, next) == true;
        SetNeedsDraw();
    }

    private void Close()
    {
        Visible = false;
        Closed?.Invoke();
    }
}
