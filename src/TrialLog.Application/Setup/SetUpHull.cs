using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
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
        string checkedName = NewName.Checked(workspace.Logbook.Hulls().Select(known => known.Name), name, "hull", newName);
        Hull hull = Checked(new Hull { Id = Guid.CreateVersion7(workspace.Now), Name = checkedName, Crew = crew, SeatHeight = seatHeight });
        workspace.Logbook.Change($"Added the hull {checkedName}", logbook => logbook.Put(hull));
        return hull;
    }

    /// <param name="workspace">The open logbook.</param>
    /// <param name="name">Which hull.</param>
    /// <param name="crew">Paddlers aboard; null leaves it.</param>
    /// <param name="seatHeight">Sit bones to waterline; null leaves it.</param>
    /// <param name="rename">A new name; null leaves it.</param>
    /// <param name="clearSeatHeight">Whether to forget the seat height.</param>
    /// <param name="newName">Whether a new name is meant though it is close to a known one.</param>
    public static Hull Change(
        Workspace workspace, string name, int? crew, Length? seatHeight, string? rename = null, bool clearSeatHeight = false,
            bool newName = false)
    {
        Hull before = workspace.HullNamed(name);
        Hull hull = Checked(
            before with { Crew = crew ?? before.Crew, SeatHeight = clearSeatHeight ? null : seatHeight ?? before.SeatHeight });
        if (rename is not null)
            hull = hull
                with
            {
                Name = NewName.Checked(
                workspace.Logbook.Hulls().Where(known => known.Id != before.Id).Select(known => known.Name), rename, "hull", newName)
            };
        workspace.Logbook.Change(hull.Name == before.Name ? $"Changed the hull {hull.Name}"
            : $"Renamed the hull {before.Name} to {hull.Name}", logbook => logbook.Put(hull));
        return hull;
    }

    public static Hull Remove(Workspace workspace, string name)
    {
        Hull hull = workspace.HullNamed(name);
        workspace.Logbook.Change($"Removed the hull {hull.Name}", logbook => logbook.RemoveHull(hull.Id));
        return hull;
    }

    private static Hull Checked(Hull hull) =>
        hull.Crew is < 1 or > 24 ? throw new InvalidValueException("A hull has 1 to 24 paddlers aboard.")
        : hull.SeatHeight is { } height && Plausible.ProblemWithSeatHeight(height) is { } problem ? throw new InvalidValueException(problem)
        : hull;
}
