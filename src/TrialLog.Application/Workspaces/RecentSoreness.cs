using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Workspaces;

/// <summary>Soreness as it stands: by the same rule as it limits the lengths that are proposed.</summary>
public static class RecentSoreness
{
    /// <summary>
    /// The worst soreness that stands (<see cref="StandingSoreness"/>); where none does, the worst of the last day on which any was told,
    /// which did not reach the limit; null where none was told, or since a clearance.
    /// </summary>
    /// <param name="outings">A paddler's outings in any order.</param>
    /// <param name="today">The day asked about.</param>
    /// <param name="clearances">Word that soreness is gone.</param>
    public static Soreness? Worst(IEnumerable<Outing> outings, DateOnly today, IEnumerable<SorenessClearance>? clearances = null)
    {
        IReadOnlyCollection<Outing> all = outings as IReadOnlyCollection<Outing> ?? [.. outings];
        IReadOnlyCollection<SorenessClearance> cleared = [.. clearances ?? []];
        if (StandingSoreness.Of(all, cleared, today) is { } standing)
            return standing.Worst;
        DateOnly since = cleared.Where(clearance => clearance.Date <= today).Select(clearance => clearance.Date)
            .DefaultIfEmpty(DateOnly.MinValue).Max();
        return all.Where(outing => outing.Date <= today && outing.Date > since)
            .GroupBy(outing => outing.Date, outing => outing.Pieces.Select(piece => piece.Soreness).OfType<Soreness>())
            .Select(day => (Day: day.Key, Told: day.SelectMany(told => told).ToList()))
            .Where(day => day.Told.Count > 0)
            .OrderByDescending(day => day.Day)
            .Select(day => (Soreness?)day.Told.MaxBy(soreness => soreness.Halves))
            .FirstOrDefault();
    }

    /// <summary>The worst soreness told in an outing; null where none was told.</summary>
    public static Soreness? WorstOf(Outing outing)
    {
        List<Soreness> told = [.. outing.Pieces.Select(piece => piece.Soreness).OfType<Soreness>()];
        return told.Count == 0 ? null : told.MaxBy(soreness => soreness.Halves);
    }

    /// <summary>Whether that soreness goes before everything else: from where a length counts as one that hurt.</summary>
    public static bool Hurts(Soreness? soreness) => soreness is { } told && told.Points >= TuningSettings.Default.SorenessLimit;
}
