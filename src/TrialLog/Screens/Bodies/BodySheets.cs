using System.Globalization;
using TrialLog.Application.Deciding;
using TrialLog.Application.Setup;
using TrialLog.Application.Sizing;
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

namespace TrialLog.Screens.Bodies;

/// <summary>What can be filled in or read from the body-and-boats screen.</summary>
internal static class BodySheets
{
    /// <summary>Body measures, the known length and the worthwhile change.</summary>
    public static void Measures(Session session)
    {
        Paddler paddler = session.Chosen!.Paddler;
        LengthUnit unit = paddler.Unit;
        BodyMeasures body = paddler.Body;
        Shown<Paddler> shown = EditSheets.Of(paddler);
        var form = new Form(session.Look, inputColumn: 26, inputWidth: 16);
        Field reach = Row("Seated reach", body.SeatedReach, BodyMeasure.SeatedReach, "seat to the palm of the raised arm");
        Field overhead = Row("Overhead reach, sitting", body.OverheadReach, BodyMeasure.OverheadReach, "seat to the raised fingertip");
        Field span = Row("Arm span", body.ArmSpan, BodyMeasure.ArmSpan, "fingertip to fingertip");
        Field stature = Row("Standing height", body.Stature, BodyMeasure.Stature, "without shoes");
        Field eye = Row("Sitting eye height", body.EyeHeight, BodyMeasure.EyeHeight, "seat to the eye");
        Field breadth = Row("Shoulder breadth", body.ShoulderBreadth, BodyMeasure.ShoulderBreadth, "between the bony tips");
        Field known = form.Row("A paddle that suits", Field.ForLength(paddler.KnownLength, unit), "overall, solo hull");
        Field worthwhile = form.Row("Worthwhile change, %",
            new Field(paddler.WorthwhilePercent?.ToString("0.##", CultureInfo.InvariantCulture) ?? "", CheckPercent), "0.3 unless you say");
        ChoiceField swaps = form.Row("Lengths change on water",
            new ChoiceField(session.Look, ["yes", "no, one an outing"], paddler.SwapsOnWater ? 0 : 1), "← → to change");
        (Field Field, BodyMeasure Measure)[] measures =
        [
            (reach, BodyMeasure.SeatedReach), (overhead, BodyMeasure.OverheadReach), (span, BodyMeasure.ArmSpan),
            (stature, BodyMeasure.Stature), (eye, BodyMeasure.EyeHeight), (breadth, BodyMeasure.ShoulderBreadth),
        ];
        session.Shell.Lay(new FormSheet(session.Look, session.Shell, $"{Quoted.Visible(paddler.Name)}: measures", form,
            () => Measuring.Caution, () =>
            {
                var details = new PaddlerDetails
                {
                    SeatedReach = reach.AsLength(unit),
                    OverheadReach = overhead.AsLength(unit),
                    ArmSpan = span.AsLength(unit),
                    Stature = stature.AsLength(unit),
                    EyeHeight = eye.AsLength(unit),
                    ShoulderBreadth = breadth.AsLength(unit),
                    KnownLength = known.AsLength(unit),
                    WorthwhilePercent = worthwhile.IsEmpty ? null : double.Parse(worthwhile.Text, CultureInfo.InvariantCulture),
                    SwapsOnWater = swaps.At == 0,
                    // What was emptied is to be forgotten.
                    Clear = [.. measures.Where(measure => measure.Field.IsEmpty).Select(measure => measure.Measure)],
                    ClearToo = (known.IsEmpty ? PaddlerFields.KnownLength : 0) | (worthwhile.IsEmpty ? PaddlerFields.Worthwhile : 0),
                };
                Change(
                    session,
                    workspace => shown.Change(workspace, () => SetUpPaddler.Change(workspace, paddler.Name, details)),
                    "Saved the measures.");
            }));

        Field Row(string label, Length? length, BodyMeasure measure, string hint)
        {
            return form.Row(label, new Field(length?.Typed(unit) ?? "", text =>
                Length.TryParse(text, unit, out Length read, out string? problem) ? BodyChecks.ProblemWith(measure, read, unit) : problem),
                    hint);
        }
    }

    /// <summary>A technique check.</summary>
    public static void Technique(Session session)
    {
        Chosen chosen = session.Chosen!;
        LengthUnit unit = session.Unit;
        var form = new Form(session.Look, inputColumn: 26, inputWidth: 16);
        Field hand = form.Row("Top hand above the eye",
            new Field("", text => Problem(() => HandHeight.Parse(text, unit)), "Say how far the hand is above the eye; level if it is."),
            "2, level, or 1.5 below");
        Field length = form.Row(
            "At length", Field.ForLength(session.Found.Analysis(chosen)?.Current, unit, "Say at which length."), "overall");
        Field lean = form.Row("Shaft lean, degrees", new Field("", CheckLean), "from upright; may stay empty");
        ChoiceField photo = form.Row("Seen", new ChoiceField(session.Look, ["in a photo", "by eye"], 0), "← → to change");
        session.Shell.Lay(
            new FormSheet(session.Look, session.Shell,
            $"Technique check in {Quoted.Visible(chosen.Hull.Name)} with {Quoted.Visible(chosen.Paddle.Name)}", form,
            () => hand.Problem is null && length.Problem is null && lean.Problem is null && !hand.IsEmpty
                ? Problem(() => Answer()) ?? Says(Answer())
                : string.Join(' ', Measuring.Technique.Steps),
            () =>
            {
                TechniqueAnswer answer = Answer();
                Change(session, workspace => CheckTechnique.Keep(workspace, answer), "Saved the technique check.");
            }));

        TechniqueAnswer Answer() => CheckTechnique.Of(session.Workspace, chosen, length.AsLength(unit), HandHeight.Parse(hand.Text, unit),
            lean.IsEmpty ? null : double.Parse(lean.Text, CultureInfo.InvariantCulture), photo.At == 0, session.Workspace.Today);

        string Says(TechniqueAnswer answer) =>
            (session.State.Sore is { } told ? RestFirst.Sentence(told)
                : $"By this check alone: {answer.InWords(unit)}; weak evidence, and it counts as such.")
            + (answer.Implied.Overhead ? " ! " + TechniqueRule.ShoulderCaution : "");
    }

    /// <summary>The seat height of the chosen hull.</summary>
    public static void SeatHeight(Session session)
    {
        Hull hull = session.Chosen!.Hull;
        LengthUnit unit = session.Unit;
        session.Shell.Lay(
            new QuestionSheet(session.Look, session.Shell,
            $"Seat height in {Quoted.Visible(hull.Name)}: sit bones to waterline, you aboard",
            string.Join(' ', Measuring.SeatHeight.Steps), hull.SeatHeight?.Typed(unit) ?? "",
            text => Length.TryParse(text, unit, out _, out string? problem) ? null : problem,
            text =>
                Change(session, workspace => SetUpHull.Change(workspace, hull.Name, null, Length.Parse(text, unit)),
                $"Saved the seat height in {hull.Name}.")));
    }

    /// <summary>Another paddle.</summary>
    public static void AddPaddle(Session session)
    {
        LengthUnit unit = session.Unit;
        var form = new Form(session.Look, inputColumn: 26, inputWidth: 22);
        Field name = form.Row("Name", new Field("", text => Problem(() => NameRule.Checked(text, "paddle")), "Give the paddle a name."));
        Field blade = form.Row("Blade, to throat", Field.ForLength(null, unit, "Measure the blade from its tip to the throat."));
        Field shortest = form.Row("Shortest length", Field.ForLength(null, unit, "Type the shortest length it can be set to."),
            "tip of blade to top of grip");
        Field longest = form.Row("Longest length", Field.ForLength(null, unit, "Type the longest; the same for a fixed paddle."),
            "the same for a fixed paddle");
        Paddler paddler = session.Chosen!.Paddler;
        ChoiceField whose = form.Row("Whose it is",
            new ChoiceField(session.Look, [Quoted.Visible(paddler.Name), "the club's", "nobody's"]), "← → to change");
        ChoiceField use = form.Row("Used for", new ChoiceField(session.Look, ["forward paddling", "steering"]), "← → to change");
        string? asked = null;
        session.Shell.Lay(
            new FormSheet(session.Look, session.Shell, "Another paddle", form, () => string.Join(' ', Measuring.Paddle.Steps), () =>
        {
            (string? before, asked) = (asked, name.Text);
            if (before != name.Text)
                NewName.Refuse(session.State.Paddles.Select(known => known.Name), name.Text, "paddle", "save again");
            string named = name.Text;
            var details = new PaddleDetails
            {
                Blade = blade.AsLength(unit),
                Range = (shortest.AsLength(unit)!.Value, longest.AsLength(unit)!.Value),
                Steering = use.At == 1,
                Owner = whose.At == 0 ? paddler : null,
                Club = whose.At == 1,
            };
            Change(session, workspace => SetUpPaddle.Add(workspace, named, details, newName: true), $"Added the paddle {named.Trim()}.");
        }));
    }

    /// <summary>The order sheet, to read and copy.</summary>
    public static void Order(Session session)
    {
        if (session.Found.Carried(session.Chosen!) is not { } carried || session.Found.Analysis(session.Chosen!) is not { } analysis)
        {
            session.Shell.Say("The lengths are still being worked out; try again in a moment.");
            return;
        }

        Paddler paddler = session.Chosen!.Paddler;
        IReadOnlyList<Outing> outings = session.State.Outings;
        session.Ask(workspace =>
                OrderSheetText.Plain(
                DrawUpOrderSheet.Of(workspace, paddler, CarryLengths.Rows(workspace, paddler, outings, carried), analysis.GoalSeconds)),
            text =>
                session.Shell.Lay(
                new TextSheet(session.Look, session.Shell, "Order sheet (to a file: triallog order-sheet --out FILE)", text,
                asWritten: true)));
    }

    /// <summary>Notes that the best length is raced from now on.</summary>
    public static void Race(Session session, Analysis analysis)
    {
        Length length = analysis.Best.Length;
        var chosen = new Chosen(analysis.Paddler, analysis.Hull, analysis.Paddle);
        string said = Say.Length(length, analysis.Paddler.Unit);
        session.Change(
            workspace => Decide.On(workspace, chosen, length, DecisionKind.Raced, workspace.Today, null, null),
            _ => session.Shell.Say($"Noted: in {analysis.Hull.Name} {analysis.Paddler.Name} races {said} from today. In the " +
                $"logbook, u undoes it.", Paint.Tone.Best));
    }

    /// <summary>Takes the word that soreness is gone, and whose word it is.</summary>
    public static void ClearSoreness(Session session)
    {
        Paddler paddler = session.Chosen!.Paddler;
        session.Shell.Lay(new QuestionSheet(
            session.Look, session.Shell, "Who says that the soreness is gone?",
            $"Your name, your coach's or your clinician's. {Cautions.Pain} What was told until today then no longer " +
                $"holds your lengths down.", "",
            text => NameRule.TryCheck(text, "person", out _, out string? problem) ? null : problem,
            text => session.Change(
                workspace => Application.Deciding.ClearSoreness.Of(workspace, paddler, text, null),
                _ => session.Shell.Say("Noted that it is gone. In the logbook, u undoes it. If it comes back, stop.", Paint.Tone.Best))));
    }

    /// <summary>Takes down what was decided about a length.</summary>
    public static void NoteDecision(Session session)
    {
        Chosen chosen = session.Chosen!;
        LengthUnit unit = session.Unit;
        DecisionKind[] kinds = Enum.GetValues<DecisionKind>();
        var form = new Form(session.Look, inputColumn: 26, inputWidth: 22);
        ChoiceField kind = form.Row(
            "Decided", new ChoiceField(session.Look, ["race it", "ordered", "cut to it", "delivered", "kept as it is"]), "← → to change");
        Field length = form.Row("Length", Field.ForLength(session.Analysis?.Best.Length, unit, "Say which length."), "overall");
        Field day = form.Row("Day", new Field(Say.Day(session.Today), text => Problem(() => TextForms.Date(session.Today).Read(text)),
            "Say when."), "today, sat, 24 nov");
        Field by = form.Row("By", new Field("", text => Problem(() => NameRule.Checked(text, "person who decided"))), "may stay empty");
        Field because = form.Row("Because", new Field(
            "", text => NoteRule.TryCheck(text, "reason", out _, out string? problem) ? null : problem), "may stay empty");
        session.Shell.Lay(new FormSheet(session.Look, session.Shell,
            $"Decided for {Quoted.Visible(chosen.Hull.Name)} with {Quoted.Visible(chosen.Paddle.Name)}", form,
            () => "It stands beside the answer from then on, and later outings are held against it.", () =>
            {
                (Length at, DateOnly when) = (length.AsLength(unit)!.Value, TextForms.Date(session.Today).Read(day.Text));
                (string? who, string? why) = (by.IsEmpty ? null : by.Text, because.IsEmpty ? null : because.Text);
                DecisionKind what = kinds[kind.At];
                Change(session, workspace => Decide.On(workspace, chosen, at, what, when, who, why), "Noted.");
            }));
    }

    private static void Change(Session session, Action<Workspace> change, string done) => session.Change(change, () =>
    {
        session.Shell.Lift();
        session.Shell.Say($"{done} In the logbook, u undoes it.", Paint.Tone.Best);
    });

    private static string? CheckPercent(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double percent) && percent is > 0 and <= 5
            ? null : "A worthwhile change lies above 0 and up to 5% of speed.";

    private static string? CheckLean(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double lean) && lean is >= 0 and <= 60
            ? null : "The shaft's lean is measured from upright, 0 to 60 degrees.";

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
