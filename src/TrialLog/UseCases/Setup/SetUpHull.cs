using TrialLog.Domain;

namespace TrialLog.UseCases;

/// <summary>Adds a hull, or changes what is known of one.</summary>
internal static class SetUpHull
{
    /// <param name="desk">The open logbook.</param>
    /// <param name="name">The name.</param>
    /// <param name="crew">Paddlers aboard.</param>
    /// <param name="seatHeight">Sit bones to waterline; null where not measured.</param>
    /// <param name="newName">Whether the name is meant though it is close to a known one.</param>
    public static Hull Add(Desk desk, string name, int crew, Length? seatHeight, bool newName = false)
    {
        string checkedName = NameRule.Checked(name, "hull");
        if (desk.Logbook.Hulls().Any(known => string.Equals(known.Name, checkedName, StringComparison.OrdinalIgnoreCase)))
            throw new RequestException($"There is a hull “{checkedName}” already; change it with: triallog hull set \"{checkedName}\" …");
        if (!newName)
            NewName.Refuse(desk.Logbook.Hulls().Select(known => known.Name), checkedName, "hull");
        Hull hull = With(new Hull { Id = Guid.CreateVersion7(desk.Now), Name = checkedName, Crew = 1 }, crew, seatHeight);
        desk.Logbook.Change($"Added the hull {checkedName}", logbook => logbook.Put(hull));
        return hull;
    }

    public static Hull Change(Desk desk, string name, int? crew, Length? seatHeight)
    {
        Hull hull = With(desk.HullNamed(name), crew, seatHeight);
        desk.Logbook.Change($"Changed the hull {hull.Name}", logbook => logbook.Put(hull));
        return hull;
    }

    public static Hull Remove(Desk desk, string name)
    {
        Hull hull = desk.HullNamed(name);
        desk.Logbook.Change($"Removed the hull {hull.Name}", logbook => logbook.RemoveHull(hull.Id));
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
