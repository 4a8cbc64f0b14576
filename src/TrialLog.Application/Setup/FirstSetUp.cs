using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Setup;

/// <summary>Sets up an empty logbook: the paddler, the hull they paddle, and their paddle.</summary>
internal static class FirstSetUp
{
    /// <summary>
    /// Saves paddler and paddle as one change, or nothing; what is in the logbook already under these names is changed, not doubled.
    /// </summary>
    public static Chosen Save(Workspace workspace, string name, PaddlerDetails paddler, Hull hull, string paddleName, PaddleDetails paddle)
    {
        Paddle withPaddle = workspace.Logbook.Paddles().FirstOrDefault(known => Same(known.Name, paddleName)) is { } knownPaddle
            ? SetUpPaddle.With(knownPaddle, paddle)
            : SetUpPaddle.New(workspace, paddleName, paddle, newName: true);
        Paddler who = workspace.Logbook.Paddlers().FirstOrDefault(known => Same(known.Name, name)) is { } knownPaddler
            ? SetUpPaddler.With(knownPaddler, paddler)
            : SetUpPaddler.New(workspace, name, paddler, newName: true);
        workspace.Logbook.Change($"Set up {who.Name} with the paddle {withPaddle.Name}", logbook =>
        {
            logbook.Put(who);
            logbook.Put(withPaddle);
        });
        workspace.Remember(who);
        var chosen = new Chosen(who, hull, withPaddle);
        UsualChoice.Keep(workspace, chosen);
        return chosen;
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
