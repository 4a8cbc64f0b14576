using TrialLog.Domain;

namespace TrialLog.UseCases;

/// <summary>Sets up an empty logbook: the paddler, the hull they paddle, and their paddle.</summary>
internal static class FirstSetUp
{
    /// <summary>Saves paddler and paddle; what is in the logbook already under these names is changed, not doubled.</summary>
    public static Chosen Save(Desk desk, string name, PaddlerDetails paddler, Hull hull, string paddleName, PaddleDetails paddle)
    {
        // The paddle first: it has more to get wrong, and without a paddler the logbook still counts as empty.
        Paddle withPaddle = desk.Logbook.Paddles().Any(known => Same(known.Name, paddleName))
            ? SetUpPaddle.Change(desk, paddleName, paddle)
            : SetUpPaddle.Add(desk, paddleName, paddle, newName: true);
        Paddler who = desk.Logbook.Paddlers().Any(known => Same(known.Name, name))
            ? SetUpPaddler.Change(desk, name, paddler)
            : SetUpPaddler.Add(desk, name, paddler, newName: true);
        var chosen = new Chosen(who, hull, withPaddle);
        UsualChoice.Keep(desk, chosen);
        return chosen;
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
