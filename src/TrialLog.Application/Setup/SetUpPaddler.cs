using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Setup;

/// <summary>What is told of a paddler; null leaves it as it is.</summary>
internal sealed record PaddlerDetails
{
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

    /// <summary>The measures told here, over those known before.</summary>
    public BodyMeasures Over(BodyMeasures before) => before with
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
        string checkedName = NameRule.Checked(name, "paddler");
        if (workspace.Logbook.Paddlers().Any(known => string.Equals(known.Name, checkedName, StringComparison.OrdinalIgnoreCase)))
            throw new RequestException($"There is a paddler “{checkedName}” already; change what is known with: triallog paddler set \"{checkedName}\" …");
        if (!newName)
            NewName.Refuse(workspace.Logbook.Paddlers().Select(known => known.Name), checkedName, "paddler");
        Paddler paddler = With(new Paddler { Id = Guid.CreateVersion7(workspace.Now), Name = checkedName, Unit = workspace.Unit }, details);
        workspace.Logbook.Change($"Added the paddler {checkedName}", logbook => logbook.Put(paddler));
        workspace.Remember(paddler);
        return paddler;
    }

    public static Paddler Change(Workspace workspace, string name, PaddlerDetails details)
    {
        Paddler paddler = With(workspace.PaddlerNamed(name), details);
        workspace.Logbook.Change($"Changed what is known of {paddler.Name}", logbook => logbook.Put(paddler));
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
    public static GoalEvent Goal(Workspace workspace, string text)
    {
        int comma = text.IndexOf(',', StringComparison.Ordinal);
        if (comma < 0)
            throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a goal event; write the hull, a comma, and a distance or a time: \"OC1, 10km\" or \"OC6, 1:30:00\".");
        return Goal(workspace.HullNamed(text[..comma]), text[(comma + 1)..]);
    }

    /// <summary>Reads how far or how long a goal event in that hull is: <c>10km</c>, <c>1:30:00</c>.</summary>
    public static GoalEvent Goal(Hull hull, string text)
    {
        string rest = text.Trim();
        if (rest.Contains(':', StringComparison.Ordinal) || rest.EndsWith("min", StringComparison.OrdinalIgnoreCase) || rest.EndsWith('h') || rest.EndsWith('s'))
            return new GoalEvent { HullId = hull.Id, Time = PieceTime.Parse(rest) };
        return new GoalEvent { HullId = hull.Id, Distance = Distance.Parse(rest) };
    }

    private static Paddler With(Paddler paddler, PaddlerDetails details)
    {
        if (details.WorthwhilePercent is { } worthwhile && worthwhile is not (> 0 and <= 5))
            throw new InvalidValueException("A worthwhile change lies above 0 and up to 5 % of speed.");
        Paddler changed = paddler with
        {
            Unit = details.Unit ?? paddler.Unit,
            KnownLength = details.KnownLength ?? paddler.KnownLength,
            Goal = details.Goal ?? paddler.Goal,
            SwapsOnWater = details.SwapsOnWater ?? paddler.SwapsOnWater,
            WorthwhilePercent = details.WorthwhilePercent ?? paddler.WorthwhilePercent,
            Body = details.Over(paddler.Body),
        };
        if (changed.KnownLength is { } known && Plausible.ProblemWithPaddleLength(known) is { } problem)
            throw new InvalidValueException(problem);
        return BodyChecks.Problems(changed.Body, changed.Unit) is [var wrong, ..] ? throw new InvalidValueException(wrong) : changed;
    }
}
