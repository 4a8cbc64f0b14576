using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Setup;

/// <summary>Adds a hull, or changes what is known of one.</summary>
internal static class SetUpHull
{
    /// <param name="workspace">The open logbook.</param>
    /// <param name="name">The name.</param>
    /// <param name="crew">Paddlers aboard.</param>
    /// <param name="seatHeight">Sit bones to waterline; null where not measured.</param>
    /// <param name="newName">Whether the name is meant though it is close to a known one.</param>
    public static Hull Add(Workspace workspace, string name, int crew, Length? seatHeight, bool newName = false)
    {
        string checkedName = NameRule.Checked(name, "hull");
        if (workspace.Logbook.Hulls().Any(known => string.Equals(known.Name, checkedName, StringComparison.OrdinalIgnoreCase)))
            throw new RequestException($"There is a hull “{checkedName}” already; change it with: triallog hull set \"{checkedName}\" …");
        if (!newName)
            NewName.Refuse(workspace.Logbook.Hulls().Select(known => known.Name), checkedName, "hull");
        Hull hull = With(new Hull { Id = Guid.CreateVersion7(workspace.Now), Name = checkedName, Crew = 1 }, crew, seatHeight);
        workspace.Logbook.Change($"Added the hull {checkedName}", logbook => logbook.Put(hull));
        return hull;
    }

    public static Hull Change(Workspace workspace, string name, int? crew, Length? seatHeight)
    {
        Hull hull = With(workspace.HullNamed(name), crew, seatHeight);
        workspace.Logbook.Change($"Changed the hull {hull.Name}", logbook => logbook.Put(hull));
        return hull;
    }

    public static Hull Remove(Workspace workspace, string name)
    {
        Hull hull = workspace.HullNamed(name);
        workspace.Logbook.Change($"Removed the hull {hull.Name}", logbook => logbook.RemoveHull(hull.Id));
        return hull;
    }

    private static Hull With(Hull hull, int? crew, Length? seatHeight)
    {
        if (crew is < 1 or > 24)
            throw new InvalidValueException("A hull has 1 to 24 paddlers aboard.");
        if (seatHeight is { } height && Plausible.ProblemWithSeatHeight(height) is { } problem)
            throw new InvalidValueException(problem);
        return hull with { Crew = crew ?? hull.Crew, SeatHeight = seatHeight ?? hull.SeatHeight };
    }
}
