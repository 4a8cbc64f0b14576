using TrialLog.Application.Text;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Setup;

/// <summary>What is told of a paddler; null leaves it as it is, and what is named in <see cref="Clear"/> is forgotten.</summary>
internal sealed record PaddlerDetails
{
    /// <summary>A new name.</summary>
    public string? NewName { get; init; }

    public LengthUnit? Unit { get; init; }

    public Length? SeatedReach { get; init; }

    public Length? Stature { get; init; }

    public Length? SittingShoulderHeight { get; init; }

    public Length? ShoulderElbow { get; init; }

    public Length? ElbowGrip { get; init; }

    public Length? EyeHeight { get; init; }

    public Length? ShoulderBreadth { get; init; }

    public Length? ArmSpan { get; init; }

    public Length? OverheadReach { get; init; }

    public Length? HandLength { get; init; }

    public Length? PalmLength { get; init; }

    public Length? KnownLength { get; init; }

    public GoalEvent? Goal { get; init; }

    public bool? SwapsOnWater { get; init; }

    public double? WorthwhilePercent { get; init; }

    /// <summary>What trial outings look like; what is null in it stays as it is.</summary>
    public TrialHabits Trials { get; init; } = TrialHabits.Untold;

    /// <summary>Body measures to forget.</summary>
    public IReadOnlyList<BodyMeasure> Clear { get; init; } = [];

    /// <summary>What else to forget.</summary>
    public PaddlerFields ClearToo { get; init; }

    /// <summary>The measures told here, over those known before.</summary>
    public BodyMeasures Over(BodyMeasures before)
    {
        BodyMeasures told = before with
        {
            SeatedReach = SeatedReach ?? before.SeatedReach,
            Stature = Stature ?? before.Stature,
            SittingShoulderHeight = SittingShoulderHeight ?? before.SittingShoulderHeight,
            ShoulderElbow = ShoulderElbow ?? before.ShoulderElbow,
            ElbowGrip = ElbowGrip ?? before.ElbowGrip,
            EyeHeight = EyeHeight ?? before.EyeHeight,
            ShoulderBreadth = ShoulderBreadth ?? before.ShoulderBreadth,
            ArmSpan = ArmSpan ?? before.ArmSpan,
            OverheadReach = OverheadReach ?? before.OverheadReach,
            HandLength = HandLength ?? before.HandLength,
            PalmLength = PalmLength ?? before.PalmLength,
        };
        return Clear.Aggregate(told, static (body, measure) => body.With(measure, null));
    }
}

/// <summary>Fields of a paddler, beside the body, that can be forgotten.</summary>
[Flags]
internal enum PaddlerFields
{
    None = 0,
    KnownLength = 1,
    Goal = 2,
    Worthwhile = 4,
    Pieces = 8,
    Distance = 16,
    Minutes = 32,
    TimedBy = 64,
    Price = 128,
}

/// <summary>Adds a paddler, or changes what is known of one.</summary>
internal static class SetUpPaddler
{
    /// <param name="workspace">The open logbook.</param>
    /// <param name="name">The name.</param>
    /// <param name="details">What is told.</param>
    /// <param name="newName">Whether the name is meant though it is close to a known one.</param>
    public static Paddler Add(Workspace workspace, string name, PaddlerDetails details, bool newName = false)
    {
        Paddler paddler = New(workspace, name, details, newName);
        workspace.Logbook.Change($"Added the paddler {paddler.Name}", logbook => logbook.Put(paddler));
        workspace.Remember(paddler);
        return paddler;
    }

    /// <summary>As <see cref="Add"/>, written by the caller as part of a larger change.</summary>
    public static Paddler New(Workspace workspace, string name, PaddlerDetails details, bool newName)
    {
        string checkedName = NewName.Checked(workspace.Logbook.Paddlers().Select(known => known.Name), name, "paddler", newName);
        return With(new Paddler { Id = Guid.CreateVersion7(workspace.Now), Name = checkedName, Unit = workspace.Unit }, details);
    }

    /// <param name="workspace">The open logbook.</param>
    /// <param name="name">Whom to change.</param>
    /// <param name="details">What is told.</param>
    /// <param name="newName">Whether a new name is meant though it is close to a known one.</param>
    public static Paddler Change(Workspace workspace, string name, PaddlerDetails details, bool newName = false)
    {
        Paddler before = workspace.PaddlerNamed(name), paddler = With(before, details);
        if (details.NewName is { } other)
            paddler = paddler
                with
            {
                Name = NewName.Checked(
                workspace.Logbook.Paddlers().Where(known => known.Id != before.Id).Select(known => known.Name), other,
                "paddler", newName)
            };
        workspace.Logbook.Change(
            paddler.Name == before.Name ? $"Changed what is known of {paddler.Name}" : $"Renamed {before.Name} to {paddler.Name}",
                logbook => logbook.Put(paddler));
        workspace.Remember(paddler);
        return paddler;
    }

    public static Paddler Remove(Workspace workspace, string name)
    {
        Paddler paddler = workspace.PaddlerNamed(name);
        workspace.Logbook.Change($"Removed the paddler {paddler.Name} with all outings", logbook => logbook.RemovePaddler(paddler.Id));
        return paddler;
    }

    /// <summary>Reads a goal event: <c>OC1, 10km</c> or <c>OC6, 1:30:00</c>.</summary>
    public static GoalEvent Goal(Workspace workspace, string text) => GoalText.Read(text, workspace.HullNamed);

    /// <summary>The paddler with what is told.</summary>
    public static Paddler With(Paddler paddler, PaddlerDetails details)
    {
        if (details.WorthwhilePercent is { } worthwhile && worthwhile is not (> 0 and <= 5))
            throw new InvalidValueException("A worthwhile change lies above 0 and up to 5% of speed.");
        bool Cleared(PaddlerFields field) => details.ClearToo.HasFlag(field);
        TrialHabits told = details.Trials, before = paddler.Trials;
        Paddler changed = paddler with
        {
            Unit = details.Unit ?? paddler.Unit,
            KnownLength = Cleared(PaddlerFields.KnownLength) ? null : details.KnownLength ?? paddler.KnownLength,
            Goal = Cleared(PaddlerFields.Goal) ? null : details.Goal ?? paddler.Goal,
            SwapsOnWater = details.SwapsOnWater ?? paddler.SwapsOnWater,
            WorthwhilePercent = Cleared(PaddlerFields.Worthwhile) ? null : details.WorthwhilePercent ?? paddler.WorthwhilePercent,
            Body = details.Over(paddler.Body),
            Trials = Habits.Checked(new TrialHabits
            {
                Pieces = Cleared(PaddlerFields.Pieces) ? null : told.Pieces ?? before.Pieces,
                Distance = Cleared(PaddlerFields.Distance) ? null : told.Distance ?? before.Distance,
                Minutes = Cleared(PaddlerFields.Minutes) ? null : told.Minutes ?? before.Minutes,
                TimedBy = Cleared(PaddlerFields.TimedBy) ? null : told.TimedBy ?? before.TimedBy,
                PricePercent = Cleared(PaddlerFields.Price) ? null : told.PricePercent ?? before.PricePercent,
            }),
        };
        if (changed.KnownLength is { } known && Plausible.ProblemWithPaddleLength(known) is { } problem)
            throw new InvalidValueException(problem);
        return BodyChecks.Problems(changed.Body, changed.Unit) is [var wrong, ..] ? throw new InvalidValueException(wrong) : changed;
    }
}
