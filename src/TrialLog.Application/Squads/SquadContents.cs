using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Squads;

/// <summary>Everything the squad's sheet is written from.</summary>
/// <param name="Members">The paddlers, in any order.</param>
/// <param name="Date">The day of the sheet.</param>
/// <param name="Version">The program's version.</param>
public sealed record SquadContents(IReadOnlyList<SquadMember> Members, DateOnly Date, string Version)
{
    /// <summary>Who is not on the sheet and why, a sentence each.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];
}

/// <summary>One paddler of a squad.</summary>
/// <param name="Analysis">What the log says.</param>
/// <param name="LastOuting">The day of the last outing; null before the first.</param>
/// <param name="Soreness">The worst soreness told in the last four weeks; null where none was told.</param>
public sealed record SquadMember(Analysis Analysis, DateOnly? LastOuting, Soreness? Soreness)
{
    /// <summary>That paddler's row on that day, from the analysis and the paddler's outings in any order.</summary>
    public static SquadMember Of(Analysis analysis, IReadOnlyCollection<Outing> outings, DateOnly today) =>
        new(analysis, outings.Count == 0 ? null : outings.Max(outing => outing.Date), RecentSoreness.Worst(outings, today));
}
