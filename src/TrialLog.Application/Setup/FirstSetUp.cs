using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Setup;

/// <summary>Sets up an empty logbook: the paddler, the hull they paddle, and their paddle.</summary>
internal static class FirstSetUp
{
    /// <summary>Saves paddler and paddle; what is in the logbook already under these names is changed, not doubled.</summary>
    public static Chosen Save(Workspace workspace, string name, PaddlerDetails paddler, Hull hull, string paddleName, PaddleDetails paddle)
    {
        // The paddle first: it has more to get wrong, and without a paddler the logbook still counts as empty.
        Paddle withPaddle = workspace.Logbook.Paddles().Any(known => Same(known.Name, paddleName))
            ? SetUpPaddle.Change(workspace, paddleName, paddle)
            : SetUpPaddle.Add(workspace, paddleName, paddle, newName: true);
        Paddler who = workspace.Logbook.Paddlers().Any(known => Same(known.Name, name))
            ? SetUpPaddler.Change(workspace, name, paddler)
            : SetUpPaddler.Add(workspace, name, paddler, newName: true);
        var chosen = new Chosen(who, hull, withPaddle);
        UsualChoice.Keep(workspace, chosen);
        return chosen;
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
