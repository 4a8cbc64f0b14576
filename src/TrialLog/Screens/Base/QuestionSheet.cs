using Terminal.Gui.Input;
using Terminal.Gui.Views;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Base;

/// <summary>One line to type, checked as it is typed.</summary>
internal sealed class QuestionSheet : Sheet
{
    private readonly string _title;
    private readonly string _hint;
    private readonly IShell _shell;
    private readonly Func<string, string?> _problem;
    private readonly Action<string> _answered;
    private readonly TextField _field;

    /// <param name="look">The terminal's glyphs and looks.</param>
    /// <param name="shell">The window.</param>
    /// <param name="title">The question.</param>
    /// <param name="hint">What is meant, with an example.</param>
    /// <param name="text">What stands there at first.</param>
    /// <param name="problem">What is wrong with a text, in words; null if it will do.</param>
    /// <param name="answered">Takes the answer.</param>
    public QuestionSheet(Look look, IShell shell, string title, string hint, string text,
        Func<string, string?> problem, Action<string> answered)
        : base(look)
    {
        (_shell, _title, _hint, _problem, _answered) = (shell, title, hint, problem, answered);
        _field = new TextField { X = 2, Y = 3, Width = Terminal.Gui.ViewBase.Dim.Fill(2), Text = text };
        _field.TextChanged += (_, _) => SetNeedsDraw();
        Add(_field);
    }

    public override bool Typing => true;

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "do it", Answer),
        new(Key.Esc, "Esc", "leave it", _shell.Lift),
    ];

    protected override void Paint(Brush brush)
    {
        Heading(brush, _title);
        int row = brush.Words(2, 5, brush.Columns - 4, _hint, Tone.Dim);
        if (_field.Text.Length > 0 && _problem(_field.Text) is { } problem)
            brush.Words(2, row + 1, brush.Columns - 4, "✗ " + problem, Tone.Problem);
    }

    private void Answer()
    {
        if (_problem(_field.Text) is { } problem)
        {
            _shell.Say(problem, Tone.Problem);
            return;
        }

        string text = _field.Text;
        _shell.Lift();
        _answered(text);
    }
}
