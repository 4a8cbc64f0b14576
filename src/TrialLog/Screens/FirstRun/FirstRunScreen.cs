using System.Text.Json;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using TrialLog.Application.Coaching;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Forms;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.FirstRun;

/// <summary>Leads through an empty logbook: who, start length, hull, paddle, to the first card.</summary>
internal sealed class FirstRunScreen : Screen
{
    private const string DraftName = "first-run";

    private static readonly string[] Steps = ["You", "Start length", "Hull", "Paddle"];

    private readonly FirstRunAnswers _answers;
    private readonly Form[] _forms;
    private int _step;

    public FirstRunScreen(Session session)
        : base(session)
    {
        _answers = new FirstRunAnswers(session);
        _forms = _answers.Forms();
        foreach (Form form in _forms)
        {
            form.Y = Pos.Func(_ => FirstRow);
            form.Height = form.HeightIn(this, above: () => FirstRow, below: () => Advice().Sum(said => said.Lines.Count));
            form.Visible = false;
            form.Edited += () =>
            {
                SaveDraft();
                SetNeedsLayout();
                SetNeedsDraw();
            };
            form.Done += Next;
            form.Refused += problem => Session.Shell.Say(problem, Tone.Problem);
            form.KeyFirst = key => key.IsCtrl && Heed(key);
            Add(form);
        }

        TakeDraft();
        Place();
    }

    public override (string Wide, string Narrow) Names => ("Getting started", "Start");

    public override bool Typing => true;

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.S.WithCtrl, "Ctrl+S", _step == Steps.Length - 1 ? "to your first card" : "next step", Next) { Also = [Key.F9] },
        .. _step > 0 ? [new KeyHint(Key.Esc, "Esc", "step back", Back)] : Array.Empty<KeyHint>(),
        new(Key.Enter, "Enter", "next line", () => { }),
        new(Key.CursorRight, "← →", "choose", () => { }),
    ];

    public override string Explanation =>
        "TrialLog needs four things before it can plan an outing: who you are, a length to start from, the hull you paddle, and " +
        "what your paddle can be set to. All of it can be changed later under Body and boats.\n\n" +
        "# Start length\n" +
        "Sit on a flat seat, back upright, and raise one arm straight up. From the seat to the middle of the palm is your seated " +
        "reach, and that is the length to start from (common practice, no source). Standing height is a poorer guide: it is mostly " +
        "leg, and legs do no work in a seat. The less sure the start, the wider the first trials search.\n\n" +
        "# Blade and range\n" +
        "The blade is measured from its tip to the throat, where the shaft begins. The range is the shortest and the longest overall " +
        "length, tip of blade to top of grip, that the shaft can be set to.";

    public override void Refresh() => SetNeedsDraw();

    protected override void OnHasFocusChanged(bool newHasFocus, View? previousFocusedView, View? focusedView)
    {
        base.OnHasFocusChanged(newHasFocus, previousFocusedView, focusedView);
        if (newHasFocus && focusedView == this)
            _forms[_step].Begin();
    }

    protected override void Paint(Brush brush)
    {
        int column = 1;
        for (int step = 0; step < Steps.Length; step++)
        {
            string mark = step < _step ? "✓" : step == _step ? "▸" : " ";
            column = brush.Text(column, 0, $"{mark} {step + 1} {Steps[step]}   ", step == _step ? Tone.Title : Tone.Dim);
        }

        if (FirstRow > 1)
            brush.Text(1, FirstRow / 2, _answers.Question(_step), Tone.Strong);
        int row = FirstRow + _forms[_step].Frame.Height;
        foreach ((IReadOnlyList<string> lines, Tone tone) in Advice())
        {
            foreach (string line in lines)
                brush.Text(1, row++, line, tone);
            row += Low ? 0 : 1;
        }
    }

    // On a low terminal the question, the form and what is advised stand close together.
    private bool Low => Viewport.Height < 14;

    // The question gives way to a caution: the step is named above it.
    private int FirstRow => !Low ? 4 : Said().Any(said => said.Tone == Tone.Caution) ? 1 : 2;

    // Of what is advised a caution is never cut: on a low terminal it stands alone.
    private List<(IReadOnlyList<string> Lines, Tone Tone)> Advice()
    {
        List<(IReadOnlyList<string> Lines, Tone Tone)> all = Said();
        if (Low && all.Exists(said => said.Tone == Tone.Caution))
            all.RemoveAll(said => said.Tone != Tone.Caution);
        return all;
    }

    private List<(IReadOnlyList<string> Lines, Tone Tone)> Said() =>
    [
        .. _answers.Advice(_step).Select(said =>
            (WordWrap.Lines(Look.Strokes.Write(said.Text), Math.Min(92, Viewport.Width - 2)), said.Tone)),
    ];

    private void Next()
    {
        if (!_forms[_step].Complete())
            return;
        if (_step < Steps.Length - 1)
        {
            _step++;
            _answers.Enter(_step);
            SaveDraft();
            ShowStep();
            return;
        }

        Action<Workspace> save = _answers.Saving();
        Session.Change(workspace =>
            {
                save(workspace);
                workspace.Logbook.DropDraft(DraftName);
            },
            () => { });
    }

    private void Back()
    {
        _step--;
        SaveDraft();
        ShowStep();
    }

    private void ShowStep()
    {
        Place();
        _forms[_step].Begin();
        // The line of keys is the window's, and says something else at the last step.
        Session.Shell.Redraw();
    }

    private void Place()
    {
        for (int step = 0; step < _forms.Length; step++)
            _forms[step].Visible = step == _step;
        SetNeedsDraw();
    }

    private void SaveDraft()
    {
        string text = JsonSerializer.Serialize(_answers.ToDraft(_step), DraftJson.Default.FirstRunDraft);
        Session.PutLatest(DraftName, workspace => workspace.Logbook.SaveDraft(DraftName, text));
    }

    private void TakeDraft()
    {
        if (Session.State.Chosen is not null || Session.Workspace.Logbook.Draft(DraftName) is not { } text)
            return;
        try
        {
            if (JsonSerializer.Deserialize(text, DraftJson.Default.FirstRunDraft) is { } draft)
            {
                _answers.Take(draft);
                _step = Math.Clamp(draft.Step, 0, Steps.Length - 1);
            }
        }
        catch (JsonException)
        {
            // It was written by another version; what is typed now takes its place.
        }
    }
}
