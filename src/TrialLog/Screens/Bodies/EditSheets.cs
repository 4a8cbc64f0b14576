using TrialLog.Application.Setup;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Screens.Base;
using TrialLog.Screens.Forms;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Bodies;

/// <summary>Mends what is shown of the paddler, the hull and the paddle, where it is shown.</summary>
internal static class EditSheets
{
    /// <summary>Asks what to mend.</summary>
    public static void Lay(Session session)
    {
        if (session.Chosen is not { } chosen)
            return;
        (string Name, Action Edit)[] things =
        [
            ($"paddler {chosen.Paddler.Name}: name, unit, race", () => Paddler(session, chosen.Paddler)),
            ($"paddler {chosen.Paddler.Name}: body measures", () => BodySheets.Measures(session)),
            ("a decision: raced, ordered, cut, delivered, kept", () => BodySheets.NoteDecision(session)),
            ($"hull {chosen.Hull.Name}: name, crew, seat height", () => Hull(session, chosen.Hull)),
            .. session.State.Paddles.Select(
                paddle => ($"paddle {paddle.Name}: name, blade, range, owner", (Action)(() => Paddle(session, paddle)))),
        ];
        session.Shell.Lay(
            new ChoiceSheet(session.Look, session.Shell, "Change what?", [.. things.Select(thing => Quoted.Visible(thing.Name))], 0,
            index => things[index].Edit()));
    }

    private static void Paddler(Session session, Paddler paddler)
    {
        IReadOnlyList<Hull> hulls = session.State.Hulls;
        var form = new Form(session.Look, inputColumn: 26, inputWidth: 30);
        Field name = form.Row("Name", Name(paddler.Name, "paddler"));
        ChoiceField unit = form.Row("Lengths in",
            new ChoiceField(session.Look, ["inches", "centimetres"], paddler.Unit == LengthUnit.Centimetres ? 1 : 0), "← → to change");
        Field goal = form.Row("Race it is for", new Field(GoalText.Of(paddler.Goal, hulls) ?? "", text => Problem(() => Goal(text))),
            "OC1, 10km, or empty");
        Lay(session, $"{Quoted.Visible(paddler.Name)}: name, unit, race", form,
            "With a race named, gains are told in seconds of that race.", Of(paddler), () =>
        {
            var details = new PaddlerDetails
            {
                NewName = Renamed(name, paddler.Name),
                Unit = unit.At == 1 ? LengthUnit.Centimetres : LengthUnit.Inches,
                Goal = goal.IsEmpty ? null : Goal(goal.Text),
                ClearToo = goal.IsEmpty ? PaddlerFields.Goal : PaddlerFields.None,
            };
            return workspace => SetUpPaddler.Change(workspace, paddler.Name, details, newName: true);
        });

        GoalEvent Goal(string text) =>
            GoalText.Read(
            text, named => hulls.FirstOrDefault(hull => string.Equals(hull.Name, named.Trim(), StringComparison.OrdinalIgnoreCase))
            ?? throw new InvalidValueException($"There is no hull “{Quoted.Brief(named)}”."));
    }

    private static void Hull(Session session, Hull hull)
    {
        LengthUnit unit = session.Unit;
        var form = new Form(session.Look, inputColumn: 26, inputWidth: 22);
        Field name = form.Row("Name", Name(hull.Name, "hull"));
        Field crew = form.Row(
            "Paddlers aboard",
            new Field($"{hull.Crew}", text => int.TryParse(text, out int number)
            && number is >= 1 and <= 24 ? null : "A hull has 1 to 24 paddlers aboard.", "Say how many."));
        Field seat = form.Row("Seat height", Field.ForLength(hull.SeatHeight, unit), "sit bones to water; or empty");
        Lay(session, $"The hull {Quoted.Visible(hull.Name)}", form, "The higher the seat, the longer the paddle.",
            new Shown<Hull>(hull, workspace => workspace.Logbook.Hulls().FirstOrDefault(known => known.Id == hull.Id)), () =>
        {
            (string? other, int aboard, Length? height) = (
                Renamed(name, hull.Name), int.Parse(crew.Text, System.Globalization.CultureInfo.InvariantCulture), seat.AsLength(unit));
            return workspace =>
                SetUpHull.Change(workspace, hull.Name, aboard, height, other, clearSeatHeight: height is null, newName: true);
        });
    }

    private static void Paddle(Session session, Paddle paddle)
    {
        LengthUnit unit = session.Unit;
        IReadOnlyList<Paddler> paddlers = session.State.Paddlers;
        var form = new Form(session.Look, inputColumn: 26, inputWidth: 22);
        Field name = form.Row("Name", Name(paddle.Name, "paddle"));
        Field blade = form.Row("Blade, to throat", Field.ForLength(paddle.Blade, unit, "Measure the blade from its tip to the throat."));
        Field shortest = form.Row("Shortest length", Field.ForLength(paddle.Shortest, unit, "Type the shortest length it can be set to."),
            "tip of blade to top of grip");
        Field longest = form.Row("Longest length", Field.ForLength(paddle.Longest, unit, "Type the longest; the same for a fixed paddle."),
            "the same for a fixed paddle");
        int owner = paddle.BelongsToClub ? 1 : paddle.OwnerId is { } id ? 2 + paddlers.ToList().FindIndex(known => known.Id == id) : 0;
        ChoiceField whose = form.Row(
            "Whose it is",
            new ChoiceField(session.Look, ["nobody has said", "the club's", .. paddlers.Select(known => Quoted.Visible(known.Name))],
            Math.Max(0, owner)), "← → to change");
        Lay(session, $"The paddle {Quoted.Visible(paddle.Name)}", form, "Nobody but its owner is ever given it unasked.",
            new Shown<Paddle>(paddle, workspace => workspace.Logbook.Paddles().FirstOrDefault(known => known.Id == paddle.Id)), () =>
        {
            var details = new PaddleDetails
            {
                NewName = Renamed(name, paddle.Name),
                Blade = blade.AsLength(unit),
                Range = (shortest.AsLength(unit)!.Value, longest.AsLength(unit)!.Value),
                ClearOwner = whose.At == 0,
                Club = whose.At == 1,
                Owner = whose.At >= 2 ? paddlers[whose.At - 2] : null,
            };
            return workspace => SetUpPaddle.Change(workspace, paddle.Name, details, newName: true);
        });
    }

    /// <summary>A paddler as a form began from it.</summary>
    public static Shown<Paddler> Of(Paddler paddler) =>
        new(paddler, workspace => workspace.Logbook.Paddlers().FirstOrDefault(known => known.Id == paddler.Id));

    private static void Lay<T>(Session session, string title, Form form, string about, Shown<T> shown, Func<Action<Workspace>> change)
        where T : class => session.Shell.Lay(new FormSheet(session.Look, session.Shell, title, form, () => about, () =>
    {
        Action<Workspace> typed = change();
        session.Change(
            workspace => shown.Change(workspace, () => typed(workspace)),
            () =>
            {
                session.Shell.Lift();
                session.Shell.Say("Saved. In the logbook, u undoes it.", Tone.Best);
            });
    }));

    private static Field Name(string name, string kind) =>
        new(name, text => Problem(() => NameRule.Checked(text, kind)), $"Give the {kind} a name.");

    private static string? Renamed(Field field, string before) => field.Text.Trim() == before ? null : field.Text.Trim();

    private static string? Problem(Action check)
    {
        try
        {
            check();
            return null;
        }
        catch (InvalidValueException wrong)
        {
            return wrong.Message;
        }
    }
}
