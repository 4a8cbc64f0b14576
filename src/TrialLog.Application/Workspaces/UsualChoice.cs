using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Application.Workspaces;

/// <summary>Whose length to look at when nobody said: never a question, always the likeliest.</summary>
internal static class UsualChoice
{
    private const string LastHull = "last-hull:", LastPaddle = "last-paddle:";

    /// <summary>
    /// The paddler last worked with, in the hull and with the paddle they last looked at, else those of their latest outing;
    /// null while the logbook lacks a paddler or a paddle to tune.
    /// </summary>
    public static Chosen? Of(Workspace workspace)
    {
        IReadOnlyList<Paddler> paddlers = workspace.Logbook.Paddlers();
        return paddlers.Count == 0 ? null : Of(workspace, workspace.LatestPaddler() ?? paddlers[0]);
    }

    /// <summary>As <see cref="Of(Workspace)"/>, for that paddler, whose outings may be at hand.</summary>
    public static Chosen? Of(Workspace workspace, Paddler paddler, IReadOnlyList<Outing>? atHand = null)
    {
        IReadOnlyList<Paddle> paddles = [.. workspace.Logbook.Paddles().Where(paddle => !paddle.Steering)];
        IReadOnlyList<Hull> hulls = workspace.Logbook.Hulls();
        if (paddles.Count == 0 || hulls.Count == 0)
            return null;
        Hull? hull = hulls.FirstOrDefault(known => known.Id.ToString() == workspace.Logbook.Setting(LastHull + paddler.Id));
        Paddle? paddle = paddles.FirstOrDefault(known => known.Id.ToString() == workspace.Logbook.Setting(LastPaddle + paddler.Id));
        if (hull is null || paddle is null)
        {
            // Only now is the whole log read: it may be long.
            IReadOnlyList<Outing> outings = atHand ?? workspace.Logbook.Outings(paddler.Id);
            hull ??= workspace.UsualHull(paddler, outings);
            paddle ??= workspace.LatestPaddle(hull, outings) ?? paddles[0];
        }

        return new Chosen(paddler, hull, paddle);
    }

    /// <summary>Remembers what was looked at.</summary>
    public static void Keep(Workspace workspace, Chosen chosen)
    {
        if (workspace.Logbook.IsReadOnly)
            return;
        workspace.Remember(chosen.Paddler);
        workspace.Logbook.SaveSetting(LastHull + chosen.Paddler.Id, chosen.Hull.Id.ToString());
        workspace.Logbook.SaveSetting(LastPaddle + chosen.Paddler.Id, chosen.Paddle.Id.ToString());
    }
}
