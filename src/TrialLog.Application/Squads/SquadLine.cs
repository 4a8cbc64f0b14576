using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Squads;

/// <summary>A paddler of the squad, before any analysis: what they usually paddle, and what their last outing was like.</summary>
/// <param name="Chosen">The paddler in their usual hull with their usual paddle; null while there is no paddle to tune.</param>
/// <param name="Paddler">The paddler.</param>
/// <param name="LastOuting">How long ago they were last out: <c>today</c>, <c>3 d ago</c>, <c>5 wk ago</c>; <c>never</c>.</param>
/// <param name="Soreness">The worst soreness of the last four weeks; null where none was told.</param>
internal sealed record SquadLine(Chosen? Chosen, Paddler Paddler, string LastOuting, Soreness? Soreness)
{
    /// <summary>The squad by name.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="outingsOf">A paddler's outings, wherever they are at hand.</param>
    public static IReadOnlyList<SquadLine> All(Workspace workspace, Func<Paddler, IReadOnlyList<Outing>> outingsOf) =>
        [.. workspace.Logbook.Paddlers().OrderBy(paddler => paddler.Name, StringComparer.OrdinalIgnoreCase).Select(paddler => Of(workspace, paddler, outingsOf(paddler)))];

    private static SquadLine Of(Workspace workspace, Paddler paddler, IReadOnlyList<Outing> outings)
    {
        Outing? last = outings.Count > 0 ? outings[^1] : null;
        return new SquadLine(UsualChoice.Of(workspace, paddler, outings), paddler, last is null ? "never" : Ago(workspace.Today.DayNumber - last.Date.DayNumber), RecentSoreness.Worst(outings, workspace.Today));
    }

    private static string Ago(int days) => days switch
    {
        <= 0 => "today",
        < 15 => $"{days} d ago",
        < 366 => $"{days / 7} wk ago",
        _ => "over a year",
    };
}
