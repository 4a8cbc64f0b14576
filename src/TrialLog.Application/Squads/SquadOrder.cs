using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Squads;

/// <summary>
/// Who needs the coach first: whoever was sore in the last four weeks, the sorest first; then by failed checks, most first;
/// then by gain left, most first; then by name.
/// </summary>
public static class SquadOrder
{
    /// <summary>The members, worst first.</summary>
    public static IReadOnlyList<SquadMember> WorstFirst(IEnumerable<SquadMember> members) =>
    [
        .. members
            .OrderByDescending(member => RecentSoreness.Hurts(member.Soreness) ? member.Soreness!.Value.Halves : 0)
            .ThenByDescending(member => member.Analysis.Checks.Count)
            .ThenByDescending(member => member.Analysis.GainLeftPercent)
            .ThenBy(member => member.Analysis.Paddler.Name, StringComparer.OrdinalIgnoreCase)
            .ThenBy(member => member.Analysis.Paddler.Id),
    ];
}
