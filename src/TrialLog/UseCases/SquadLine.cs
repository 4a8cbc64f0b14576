using TrialLog.Domain;
using TrialLog.Reports;

namespace TrialLog.UseCases;

/// <summary>A paddler of the squad, before any analysis: what they usually paddle, and what their last outing was like.</summary>
/// <param name="Chosen">The paddler in their usual hull with their usual paddle; null while there is no paddle to tune.</param>
/// <param name="Paddler">The paddler.</param>
/// <param name="LastOuting">How long ago they were last out: <c>today</c>, <c>3 d ago</c>, <c>5 wk ago</c>; <c>never</c>.</param>
/// <param name="Soreness">The worst soreness of the last four weeks; null where none was told.</param>
internal sealed record SquadLine(Chosen? Chosen, Paddler Paddler, string LastOuting, Soreness? Soreness)
{
    /// <summary>The squad by name.</summary>
    /// <param name="desk">The open logbook.</param>
    /// <param name="outingsOf">A paddler's outings, wherever they are at hand.</param>
    public static IReadOnlyList<SquadLine> All(Desk desk, Func<Paddler, IReadOnlyList<Outing>> outingsOf) =>
        [.. desk.Logbook.Paddlers().OrderBy(paddler => paddler.Name, StringComparer.OrdinalIgnoreCase).Select(paddler => Of(desk, paddler, outingsOf(paddler)))];

    private static SquadLine Of(Desk desk, Paddler paddler, IReadOnlyList<Outing> outings)
    {
        Outing? last = outings.Count > 0 ? outings[^1] : null;
        return new SquadLine(UsualChoice.Of(desk, paddler, outings), paddler, last is null ? "never" : Ago(desk.Today.DayNumber - last.Date.DayNumber), RecentSoreness.Worst(outings, desk.Today));
    }

    private static string Ago(int days) => days switch
    {
        <= 0 => "today",
        < 15 => $"{days} d ago",
        < 366 => $"{days / 7} wk ago",
        _ => "over a year",
    };
}
