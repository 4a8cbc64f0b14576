using System.Diagnostics.CodeAnalysis;
using TrialLog.Application.Coaching;
using TrialLog.Application.Setup;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Base;
using TrialLog.Screens.Forms;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.FirstRun;

/// <summary>What was answered on the first run, and what follows from it so far.</summary>
[SuppressMessage("Reliability", "CA1001", Justification = "The forms that the inputs are added to dispose of them.")]
internal sealed class FirstRunAnswers
{
    private const int Reach = 0, Stature = 1, Suits = 2, Unknown = 3;

    private readonly Look _look;
    private readonly IReadOnlyList<Hull> _hulls;
    private readonly Field _name, _goal, _paddle, _length, _blade, _shortest, _longest;
    private readonly ChoiceField _unit, _basis, _hull, _kind;

    public FirstRunAnswers(Session session)
    {
        Look look = session.Look;
        (_look, _hulls) = (look, session.State.Hulls);
        IReadOnlyList<Paddler> known = session.State.Paddlers;
        _name = new Field(known.Count > 0 ? known[0].Name : "", text => Problem(() => NameRule.Checked(text, "paddler")),
            "Type your name, or what your coach calls you.");
        _unit = new ChoiceField(look, ["inches", "centimetres"]);
        _basis = new ChoiceField(look, ["seated reach", "standing height", "a paddle that suits me", "I cannot measure now"]);
        _length = new Field("", CheckLength, "Measure and type it, or choose “I cannot measure now”.");
        _hull = new ChoiceField(look, [.. _hulls.Select(hull => hull.Name)]);
        _goal = new Field("", text => Problem(() => GoalText.Read($"{_hulls[_hull!.At].Name}, {text}", _ => _hulls[_hull.At])));
        _paddle = new Field("My paddle", text => Problem(() => NameRule.Checked(text, "paddle")), "Give the paddle a name.");
        _kind = new ChoiceField(look, ["adjustable", "fixed"]);
        _blade = new Field("", CheckLength, "Measure the blade from its tip to the throat.");
        _shortest = new Field("", CheckLength, "Type the shortest length it can be set to.");
        _longest = new Field("", CheckRange, "Type the longest length it can be set to.");
        _basis.Edited += () => _length.Missing = _basis.At == Unknown ? null : "Measure and type it, or choose “I cannot measure now”.";
        _kind.Edited += () => _longest.Missing = _kind.At == 1 ? null : "Type the longest length it can be set to.";
    }

    private LengthUnit Unit => _unit.At == 1 ? LengthUnit.Centimetres : LengthUnit.Inches;

    public Form[] Forms()
    {
        var you = new Form(_look);
        you.Row("Name", _name);
        you.Row("Lengths in", _unit, "← → to change");
        var start = new Form(_look, inputWidth: 26);
        start.Row("Measured by", _basis, "← → to change");
        start.Row("Length", _length, "49.75, 49 3/4 or 126.4cm");
        var hull = new Form(_look);
        hull.Row("Hull", _hull, "← → to change");
        hull.Row("Race it is for", _goal, "may stay empty; 10km or 1:30:00");
        var paddle = new Form(_look);
        paddle.Row("Name", _paddle);
        paddle.Row("Blade, to throat", _blade);
        paddle.Row("Shaft", _kind, "← → to change");
        paddle.Row("Shortest length", _shortest, "tip of blade to top of grip");
        paddle.Row("Longest length", _longest);
        return [you, start, hull, paddle];
    }

    public string Question(int step) => step switch
    {
        0 => "Who is paddling?",
        1 => $"From which length shall the search start, {_name.Text.Trim()}?",
        2 => "What do you paddle?",
        _ => "Which paddle do you have?",
    };

    public IEnumerable<(string Text, Tone Tone)> Advice(int step)
    {
        switch (step)
        {
            case 0:
                yield return ("TrialLog finds the paddle length that suits you, outing by outing: it plans which lengths to try, reads " +
                    "your times, and says when more trying is not worth it.", Tone.Plain);
                break;
            case 1:
                yield return (HowToMeasure(), Tone.Plain);
                if (_length.Typo is null && (_basis.At == Unknown || !_length.IsEmpty))
                {
                    StartLength start = StartLength.From(Body(), Known());
                    yield return ($"Start at {Say.Length(start.Length, Unit)}. {Sureness(start)}", Tone.Best);
                }

                break;
            case 2:
                yield return ("The length that suits depends on how high you sit above the water; other hulls follow later from this " +
                    "one. With a race named, gains are told in seconds of that race.", Tone.Plain);
                break;
            default:
                yield return ("A blade of about 18½ in (47 cm) is common for solo hulls. With a fixed paddle there is nothing to tune, " +
                    "but its length can still be logged.", Tone.Plain);
                yield return ($"{Cautions.Water} {Cautions.Pain}", Tone.Caution);
                break;
        }
    }

    /// <summary>Fills in what can be proposed when a step comes up.</summary>
    public void Enter(int step)
    {
        if (step != 3)
            return;
        if (_blade.IsEmpty)
            _blade.Text = ExposedShaftRule.ReferenceBlade.Typed(Unit);
        if (!_shortest.IsEmpty || !_longest.IsEmpty)
            return;
        Length around = StartLength.From(Body(), Known()).Length.RoundedTo(Length.FromInches(1));
        _shortest.Text = around.PlusInches(-3).Typed(Unit);
        _longest.Text = around.PlusInches(3).Typed(Unit);
    }

    /// <summary>What saves paddler and paddle, as they were answered.</summary>
    public Action<Workspace> Saving()
    {
        LengthUnit unit = Unit;
        Hull hull = _hulls[_hull.At];
        BodyMeasures body = Body();
        var details = new PaddlerDetails
        {
            Unit = unit,
            SeatedReach = body.SeatedReach,
            Stature = body.Stature,
            KnownLength = Known(),
            Goal = _goal.IsEmpty ? null : GoalText.Read($"{hull.Name}, {_goal.Text}", _ => hull),
        };
        Length shortest = _shortest.AsLength(Unit)!.Value;
        var paddle = new PaddleDetails
        {
            Blade = _blade.AsLength(Unit),
            Range = (shortest, _kind.At == 1 ? shortest : _longest.AsLength(Unit)!.Value),
        };
        (string name, string named) = (_name.Text.Trim(), _paddle.Text.Trim());
        return workspace =>
        {
            FirstSetUp.Save(workspace, name, details, hull, named, paddle);
            workspace.UseUnit(unit);
        };
    }

    public FirstRunDraft ToDraft(int step) => new(
        step, _name.Text, _unit.At, _basis.At, _length.Text, _hull.At, _goal.Text,
        _paddle.Text, _blade.Text, _kind.At, _shortest.Text, _longest.Text);

    public void Take(FirstRunDraft draft)
    {
        (_name.Text, _unit.At, _basis.At, _length.Text) = (draft.Name, draft.Unit, draft.Basis, draft.Length);
        (_hull.At, _goal.Text, _paddle.Text, _blade.Text) = (draft.Hull, draft.Goal, draft.Paddle, draft.Blade);
        (_kind.At, _shortest.Text, _longest.Text) = (draft.Kind, draft.Shortest, draft.Longest);
    }

    private BodyMeasures Body() => new()
    {
        SeatedReach = _basis.At == Reach ? _length.AsLength(Unit) : null,
        Stature = _basis.At == Stature ? _length.AsLength(Unit) : null,
    };

    private Length? Known() => _basis.At == Suits ? _length.AsLength(Unit) : null;

    private string HowToMeasure() => _basis.At switch
    {
        Reach => "Sit upright on a flat seat, hold a stick upright beside the hip with its end on the seat, and raise that arm straight " +
            "up. Measure from the seat to the middle of your palm (common practice, no source).",
        Stature => "Standing height, without shoes. It is mostly leg, and legs do no work in a seat, so the search has to " +
            "look further around.",
        Suits => "The overall length, tip of blade to top of grip, of a paddle that has felt right in a solo hull.",
        _ => "The search then starts from the average adult and looks far around. A measured reach saves you outings; add it any time " +
            "under Body and boats.",
    };

    private static string Sureness(StartLength start) =>
        start.SpreadInches < 1 ? "Usually within an inch or two of the best." : start.SpreadInches < 1.6
            ? "The best may be a couple of inches away." : "The best may be several inches away.";

    private string? CheckLength(string text) => Length.TryParse(text, Unit, out _, out string? problem) ? null : problem;

    private string? CheckRange(string text) => CheckLength(text)
        ?? (_shortest.AsLength(Unit) is { } shortest
            && Length.Parse(text, Unit) < shortest ? "The longest length is below the shortest; give the longer one here." : null);

    private static string? Problem(Action check)
    {
        try
        {
            check();
            return null;
        }
        catch (Exception failure) when (failure is InvalidValueException or RequestException)
        {
            return failure.Message;
        }
    }
}
