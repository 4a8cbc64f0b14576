using TrialLog.Domain;
using TrialLog.Tuning;

namespace TrialLog.Reports;

/// <summary>
/// Who needs the coach first: whoever was sore in the last outing, the sorest first; then by failed checks, most first;
/// then by gain left, most first; then by name.
/// </summary>
public static class SquadOrder
{
    /// <summary>The members, worst first.</summary>
    public static IReadOnlyList<SquadMember> WorstFirst(IEnumerable<SquadMember> members) =>
    [
        .. members
            .OrderByDescending(member => IsSore(member.Soreness) ? member.Soreness!.Value.Halves : 0)
            .ThenByDescending(member => member.Analysis.Checks.Count)
            .ThenByDescending(member => member.Analysis.GainLeftPercent)
            .ThenBy(member => member.Analysis.Paddler.Name, StringComparer.OrdinalIgnoreCase)
            .ThenBy(member => member.Analysis.Paddler.Id),
    ];

    /// <summary>Whether that soreness goes before everything else: from where a length counts as one that hurt.</summary>
    public static bool IsSore(Soreness? soreness) => soreness is { } told && told.Points >= TuningSettings.Default.SorenessLimit;
}
