using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Application.Workspaces;

/// <summary>A paddler's own hulls and paddles: nobody is given, shown or sold another's.</summary>
internal static class OwnGear
{
    /// <summary>
    /// The paddles that are theirs or the club's, and those of nobody's that they paddled with. Whoever is alone in the logbook, or has
    /// none of these in one from before paddles had owners, also has those that are nobody's and that nobody else paddled with.
    /// </summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="paddler">Whose gear.</param>
    /// <param name="outings">That paddler's outings.</param>
    public static IReadOnlyList<Paddle> Paddles(Workspace workspace, Paddler paddler, IReadOnlyList<Outing> outings)
    {
        IReadOnlyList<Paddle> all = workspace.Logbook.Paddles();
        HashSet<Guid> used = UsedIn(outings);
        List<Paddle> own = [.. all.Where(paddle => paddle.IsFor(paddler.Id) || (paddle.OwnerId is null && used.Contains(paddle.Id)))];
        bool alone = workspace.Logbook.Paddlers().Count == 1;
        if (own.Count > 0 && !alone)
            return own;
        HashSet<Guid> others = alone ? [] : [.. workspace.Logbook.PaddleUses().Select(use => use.PaddleId)];
        return [.. all.Where(paddle => own.Contains(paddle) || (paddle.OwnerId is null && !others.Contains(paddle.Id)))];
    }

    /// <summary>The hulls they paddled in and the one they race; where there is none of either, all.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="paddler">Whose gear.</param>
    /// <param name="outings">That paddler's outings.</param>
    public static IReadOnlyList<Hull> Hulls(Workspace workspace, Paddler paddler, IReadOnlyList<Outing> outings)
    {
        IReadOnlyList<Hull> all = workspace.Logbook.Hulls();
        HashSet<Guid> used = [.. outings.Select(outing => outing.HullId)];
        List<Hull> own = [.. all.Where(hull => used.Contains(hull.Id) || hull.Id == paddler.Goal?.HullId)];
        return own.Count > 0 ? own : all;
    }

    private static HashSet<Guid> UsedIn(IReadOnlyList<Outing> outings) =>
        [.. outings.SelectMany(outing => outing.Pieces).Select(piece => piece.PaddleId)];
}
