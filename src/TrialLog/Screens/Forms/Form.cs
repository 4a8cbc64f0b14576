using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using TrialLog.Domain.Values;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Forms;

/// <summary>Labelled inputs one below the other. What is wrong with one is said right below it, as it is typed.</summary>
internal sealed class Form : Canvas
{
    private readonly List<(string Label, IInput Input, string Hint)> _rows = [];
    private readonly int _inputColumn;
    private readonly int _inputWidth;
    private bool _demanding;

    /// <param name="look">The terminal's glyphs and looks.</param>
    /// <param name="inputColumn">Where the inputs begin.</param>
    /// <param name="inputWidth">How wide they are.</param>
    public Form(Look look, int inputColumn = 22, int inputWidth = 22)
        : base(look)
    {
        (_inputColumn, _inputWidth) = (inputColumn, inputWidth);
        CanFocus = true;
    }

    /// <summary>Something was changed.</summary>
    public event Action? Edited;

    /// <summary>Enter was pressed in the last input, with nothing wrong in the form.</summary>
    public event Action? Done;

    /// <summary>It was to be done with, but something is wrong or missing: what, in a sentence.</summary>
    public event Action<string>? Refused;

    /// <summary>Whether letters go into a field.</summary>
    public bool Typing => Focused is Field or ChoiceField;

    /// <summary>Each input by its label, with what is meant.</summary>
    public string Explained => string.Join('\n', _rows.Select(row => row.Hint.Length > 0 ? $"{row.Label}: {row.Hint}." : row.Label + "."));

    /// <summary>Rows that the form takes.</summary>
    public int NeededRows => _rows.Count * 2;

    /// <summary>
    /// The height of a form that stands so far down in a view and leaves rows below for what is said there: all it needs, or what there
    /// is. Of a long form three inputs are enough, since it moves with the cursor; a caution below it is not cut.
    /// </summary>
    public Dim HeightIn(View view, Func<int> above, Func<int> below) =>
        Dim.Func(_ => Math.Clamp(view.Viewport.Height - above() - below(), Math.Min(3, _rows.Count), Math.Max(3, NeededRows)));

    // On a low terminal the inputs stand close together and move, so that the one with the cursor is in sight.
    private int Apart => Viewport.Height >= NeededRows - 1 ? 2 : 1;

    private int Top => Math.Clamp(_rows.FindIndex(row => ((View)row.Input).HasFocus) - Viewport.Height / Apart / 2, 0,
        Math.Max(0, _rows.Count - (Viewport.Height + Apart - 1) / Apart));

    /// <summary>Adds an input.</summary>
    public TInput Row<TInput>(string label, TInput input, string hint = "")
        where TInput : View, IInput
    {
        input.X = _inputColumn;
        int place = _rows.Count;
        input.Y = Pos.Func(_ => (place - Top) * Apart);
        input.Width = _inputWidth;
        input.Edited += () =>
        {
            SetNeedsDraw();
            Edited?.Invoke();
        };
        input.KeyFirst = KeyInInput;
        input.HasFocusChanged += (_, _) =>
        {
            SetNeedsLayout();
            SetNeedsDraw();
        };
        _rows.Add((label, input, hint));
        Add(input);
        return input;
    }

    /// <summary>Puts the cursor into the first input.</summary>
    public void Begin() => ((View)_rows[0].Input).SetFocus();

    /// <summary>Whether all is well; if not, the cursor goes to the first that is not, and what is missing is marked.</summary>
    public bool Complete()
    {
        int wrong = _rows.FindIndex(row => row.Input.Problem is not null);
        if (wrong < 0)
            return true;
        _demanding = true;
        ((View)_rows[wrong].Input).SetFocus();
        SetNeedsDraw();
        Refused?.Invoke(_rows[wrong].Input.Problem!);
        return false;
    }

    protected override void Paint(Brush brush)
    {
        (int top, int apart) = (Top, Apart);
        for (int index = top; index < _rows.Count; index++)
        {
            (string label, IInput input, string hint) = _rows[index];
            bool here = ((View)input).HasFocus;
            int row = (index - top) * apart;
            brush.Text(1, row, (here ? "▸ " : "  ") + label, here ? Tone.Strong : Tone.Plain);
            int after = _inputColumn + _inputWidth + 2;
            string? problem = _demanding ? input.Problem : input.Typo;
            if (hint.Length > 0 && brush.Columns - after > 10 && (problem is null || apart > 1))
                brush.Text(after, row, hint, Tone.Dim);
            if (problem is not null)
                brush.Text(apart == 1 ? after : Math.Clamp(brush.Columns - problem.Length - 3, 1, _inputColumn), row + apart - 1,
                    "✗ " + problem, Tone.Problem);
        }
    }

    /// <summary>Sees each key before an input does; true where it took it.</summary>
    public Func<Key, bool>? KeyFirst { get; set; }

    private bool KeyInInput(Key key)
    {
        if (KeyFirst?.Invoke(key) == true)
            return true;
        int at = _rows.FindIndex(row => ((View)row.Input).HasFocus);
        if (key == Key.CursorDown || (key == Key.Enter && at + 1 < _rows.Count))
            Focus(at + 1);
        else if (key == Key.CursorUp)
            Focus(at - 1);
        else if (key == Key.Tab || key == Key.Tab.WithShift)
            Focus((at + (key == Key.Tab ? 1 : _rows.Count - 1)) % _rows.Count);
        else if (key == Key.Enter)
            Finish();
        else
            return false;
        return true;
    }

    private void Focus(int index) => ((View)_rows[Math.Clamp(index, 0, _rows.Count - 1)].Input).SetFocus();

    private void Finish()
    {
        if (Complete())
            Done?.Invoke();
    }
}
