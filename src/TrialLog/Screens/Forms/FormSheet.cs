using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using TrialLog.Application.Wording;
using TrialLog.Plots;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Forms;

/// <summary>A form laid over the screen, with a sentence that says what it is for.</summary>
internal sealed class FormSheet : Sheet
{
    private readonly IShell _shell;
    private readonly string _title;
    private readonly Func<string> _about;
    private readonly Form _form;
    private readonly Action _done;
    private bool _edited;

    /// <param name="look">The terminal's glyphs and looks.</param>
    /// <param name="shell">The window.</param>
    /// <param name="title">The heading.</param>
    /// <param name="form">The inputs.</param>
    /// <param name="about">What it is for, or what follows from what was typed so far.</param>
    /// <param name="done">Takes the form when all is well.</param>
    public FormSheet(Look look, IShell shell, string title, Form form, Func<string> about, Action done)
        : base(look)
    {
        (_shell, _title, _about, _form, _done) = (shell, title, about, form, done);
        form.Y = 3;
        form.Height = form.HeightIn(this, above: () => 3, below: () => AboutLines.Count);
        form.Done += Finish;
        form.Refused += problem => shell.Say(problem, Tone.Problem);
        // A field would take these for itself.
        form.KeyFirst = key => key.IsCtrl && Heed(key);
        form.Edited += () =>
        {
            _edited = true;
            SetNeedsLayout();
            SetNeedsDraw();
        };
        Add(form);
    }

    public override bool Typing => _form.Typing;

    public override (string Title, string Text)? Explanation => (_title, $"{_about()}\n\n# What you can type\n{_form.Explained}");

    public override string? Unsaved => _edited ? "What you typed here is not saved." : null;

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.S.WithCtrl, "Ctrl+S", "save", () =>
        {
            if (_form.Complete())
                Finish();
        }) { Also = [Key.F9] },
        new(Key.Enter, "Enter", "next", () => { }),
        new(Key.Esc, "Esc", "cancel", () =>
        {
            if (_shell.MayLeave(this))
                _shell.Lift();
        }),
    ];

    private IReadOnlyList<string> AboutLines => WordWrap.Lines(Look.Strokes.Write(_about()), Math.Min(90, Viewport.Width - 4));

    protected override void Paint(Brush brush)
    {
        Heading(brush, _title);
        int row = 3 + _form.Frame.Height;
        foreach (string line in WordWrap.Sentences(Look.Strokes.Write(_about()), Math.Min(90, Viewport.Width - 4), brush.Rows - row))
            brush.Text(2, row++, line, Tone.Dim);
    }

    protected override void OnHasFocusChanged(bool newHasFocus, View? previousFocusedView, View? focusedView)
    {
        base.OnHasFocusChanged(newHasFocus, previousFocusedView, focusedView);
        SetNeedsDraw();
    }

    private void Finish() => _shell.Try(_done);
}
