using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Squads;

/// <summary>
/// Who needs the coach first. Whoever hurt at the last outing and has been silent since leads, the longest silence first; then the
/// sore, the sorest first; then by what is to be won; then who has no paddle yet; last who is done. A warning about the trials moves
/// nobody: it says how good an answer is, not how much hangs on it.
/// </summary>
public static class SquadOrder
{
    /// <summary>The rows, worst first.</summary>
    public static IReadOnlyList<SquadRow> WorstFirst(IEnumerable<SquadRow> rows) =>
    [
        .. rows
            .OrderBy(row => row.Place)
            .ThenByDescending(row => row.Place == SquadPlace.HurtAndSilent ? row.DaysSilent : 0)
            .ThenByDescending(row => row.Soreness?.Halves ?? 0)
            .ThenByDescending(row => row.Place is SquadPlace.ToWin or SquadPlace.Finished ? row.ToWinPercent : 0)
            .ThenBy(row => row.Paddler.Name, StringComparer.OrdinalIgnoreCase)
            .ThenBy(row => row.Paddler.Id),
    ];
}
