using TrialLog.Domain;

namespace TrialLog.Reports;

/// <summary>
/// Who needs the coach first: whoever was sore in the last outing, the sorest first; then by failed checks, most first;
/// then by gain left, most first; then by name.
/// </summary>
public static class SquadOrder
{
    /// <summary>Soreness from here on goes before everything else. No source: chosen.</summary>
    public const double SoreFromPoints = 3;

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

    /// <summary>Whether that soreness is high enough to go before everything else.</summary>
    public static bool IsSore(Soreness? soreness) => soreness is { Points: >= SoreFromPoints };
}
