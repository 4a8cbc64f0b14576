using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning;

namespace TrialLog.Application.Squads;

/// <summary>Soreness of late: over the same days, and from the same points, as it limits the lengths that are proposed.</summary>
public static class RecentSoreness
{
    /// <summary>The worst soreness told in the last four weeks (<see cref="TuningSettings.SorenessDays"/>); null where none was told.</summary>
    /// <param name="outings">A paddler's outings in any order.</param>
    /// <param name="today">The day from which is looked back.</param>
    public static Soreness? Worst(IEnumerable<Outing> outings, DateOnly today)
    {
        List<Soreness> told = [.. outings
            .Where(outing => today.DayNumber - outing.Date.DayNumber is >= 0 and var ago && ago <= TuningSettings.Default.SorenessDays)
            .Select(WorstOf).OfType<Soreness>()];
        return told.Count == 0 ? null : told.MaxBy(soreness => soreness.Halves);
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
