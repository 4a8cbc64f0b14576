using Terminal.Gui.Input;
using Terminal.Gui.Views;
using TrialLog.Application.Files;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Plots;
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
    private readonly AnswerField _field;
    private IReadOnlyList<string> _offered = [];
    private IReadOnlyList<string> _listed = [];
    private int _firstListed;
    private int _recalled = -1;

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
        _field = new AnswerField(key => (key == Key.Tab || key == Key.CursorUp || key == Key.CursorDown) && Heed(key))
        {
            X = 2, Y = 3, Width = Terminal.Gui.ViewBase.Dim.Fill(2), Text = text,
        };
        _field.TextChanged += (_, _) => SetNeedsDraw();
        Add(_field);
    }

    /// <summary>What a half typed answer may become, for Tab; null where there is nothing to complete.</summary>
    public Func<string, IReadOnlyList<string>>? Completions { get; init; }

    /// <summary>Answers given before, the latest first, for the arrows.</summary>
    public IReadOnlyList<string> Recent { get; init; } = [];

    public override bool Typing => true;

    public override (string Title, string Text)? Explanation => (_title, _hint);

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "do it", Answer),
        new(Key.Esc, "Esc", "leave it", _shell.Lift),
        .. Completions is null ? Array.Empty<KeyHint>() : [new KeyHint(Key.Tab, "Tab", "complete", Complete)],
        .. Recent.Count == 0 ? Array.Empty<KeyHint>() :
        [
            new KeyHint(Key.CursorUp, "↑", "one before", () => Recall(1)),
            new KeyHint(Key.CursorDown, "↓", "one after", () => Recall(-1)),
        ],
    ];

    protected override void Paint(Brush brush)
    {
        Heading(brush, _title);
        string? problem = _field.Text.Length > 0 ? _problem(_field.Text) : null;
        int row = 5;
        // On a low terminal what is wrong matters more than what is meant.
        int room = brush.Rows - row - (problem is null ? 0 : 3);
        foreach (string line in WordWrap.Sentences(Look.Strokes.Write(_hint), brush.Columns - 4, room))
            brush.Text(2, row++, line, Tone.Dim);
        if (problem is not null)
            row = brush.Words(2, row + 1, brush.Columns - 4, "✗ " + problem, Tone.Problem);
        (string heading, IReadOnlyList<string> listed) = _field.Text.Length == 0 && Recent.Count > 0 ? ("Imported before", Recent)
            : ("", _offered);
        row++;
        if (heading.Length > 0 && row < brush.Rows)
            brush.Text(2, row++, heading, Tone.Dim);
        _firstListed = row;
        _listed = [.. listed.Take(Math.Max(0, brush.Rows - row))];
        foreach (string one in _listed)
            brush.Text(4, row++, one, Tone.Plain);
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (!mouse.IsSingleDoubleOrTripleClicked || mouse.Position is not { } at || at.Y < _firstListed
            || at.Y - _firstListed >= _listed.Count)
            return false;
        Put(_listed[at.Y - _firstListed]);
        if (_field.Text.EndsWith('/'))
            Complete();
        return true;
    }

    private void Complete()
    {
        IReadOnlyList<string> completions = Completions!(_field.Text);
        Put(PathCompletion.Common(_field.Text, completions));
        _offered = completions.Count > 1 || _field.Text.EndsWith('/') ? Completions(_field.Text) : [];
        if (completions.Count == 0)
            _shell.Say("Nothing to import begins so.", Tone.Now);
        SetNeedsDraw();
    }

    private void Recall(int by)
    {
        _recalled = Math.Clamp(_recalled + by, -1, Recent.Count - 1);
        Put(_recalled < 0 ? "" : Recent[_recalled]);
    }

    private void Put(string text)
    {
        _field.Text = text;
        _field.InsertionPoint = text.Length;
        _field.SetFocus();
        SetNeedsDraw();
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

    // The library would leave the field on Tab and the arrows.
    private sealed class AnswerField(Func<Key, bool> first) : TextField
    {
        protected override bool OnKeyDown(Key key) => first(key) || base.OnKeyDown(key);
    }
}
