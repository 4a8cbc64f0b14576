using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Application.Workspaces;

/// <summary>
/// Whose length to look at when nobody said, in which hull and with which paddle. One rule for commands and screens: what was used last,
/// else what there is of their own; another paddler's paddle is never given out unasked.
/// </summary>
internal static class UsualChoice
{
    private const string LastHull = "last-hull:", LastPaddle = "last-paddle:";

    /// <summary>The hull of the paddler's latest outing, else the goal event's, else OC1.</summary>
    public static Hull Hull(Workspace workspace, Paddler paddler, IReadOnlyList<Outing> outings)
    {
        IReadOnlyList<Hull> hulls = workspace.Logbook.Hulls();
        return hulls.FirstOrDefault(known => known.Id == outings.LastOrDefault()?.HullId)
            ?? hulls.FirstOrDefault(known => known.Id == paddler.Goal?.HullId)
            ?? hulls.FirstOrDefault(known => known.Id == StandardHulls.All[0].Id)
            ?? hulls[0];
    }

    /// <summary>
    /// The paddle they used last in that hull, else last at all; else every paddle of their own, to choose from; none where all are
    /// somebody else's.
    /// </summary>
    public static IReadOnlyList<Paddle> Paddles(Workspace workspace, Paddler paddler, Hull hull, IReadOnlyList<Outing> outings)
    {
        Dictionary<Guid, Paddle> paddles = workspace.Logbook.Paddles()
            .Where(paddle => !paddle.Steering && (paddle.OwnerId is null || paddle.IsFor(paddler.Id))).ToDictionary(paddle => paddle.Id);
        IEnumerable<Outing> latestFirst = outings.Reverse();
        Paddle? latest = latestFirst.Where(outing => outing.HullId == hull.Id).Concat(latestFirst)
            .SelectMany(outing => outing.Pieces).Select(piece => paddles.GetValueOrDefault(piece.PaddleId))
                .FirstOrDefault(paddle => paddle is not null);
        return latest is not null ? [latest]
            : [.. OwnGear.Paddles(workspace, paddler, outings).Where(paddle => paddles.ContainsKey(paddle.Id))];
    }

    /// <summary>
    /// The paddler last worked with, in the hull and with the paddle they last looked at, else those of their latest outing;
    /// null while the logbook lacks a paddler or a paddle to tune. Where several paddles are theirs, the first.
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
            hull ??= Hull(workspace, paddler, outings);
            paddle ??= Paddles(workspace, paddler, hull, outings).FirstOrDefault();
        }

        return paddle is null ? null : new Chosen(paddler, hull, paddle);
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
