using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Assessments;

/// <summary>
/// Pain that was told and has not gone. It stands until a later day on which soreness was told and none of it reached the limit, at
/// whatever lengths were paddled then, or until somebody cleared it. Silence clears nothing, however long. No medical rule: common sense,
/// no source.
/// </summary>
/// <param name="Worst">The worst soreness that stands.</param>
/// <param name="Since">The first day on which it was told.</param>
/// <param name="LastTold">The last day on which it was told.</param>
public sealed record StandingSoreness(Soreness Worst, DateOnly Since, DateOnly LastTold)
{
    /// <summary>The soreness that stands on a day; null where there is none.</summary>
    /// <param name="outings">A paddler's outings in any order. A piece that does not count for speed counts for the shoulder.</param>
    /// <param name="clearances">Word that it is gone: what was told on its day or before no longer stands.</param>
    /// <param name="today">The day asked about; what is dated later is not looked at.</param>
    /// <param name="limit">Points from which soreness counts as pain; <see cref="TuningSettings.SorenessLimit"/> by default.</param>
    public static StandingSoreness? Of(
        IEnumerable<Outing> outings, IEnumerable<SorenessClearance> clearances, DateOnly today, double? limit = null)
    {
        double from = limit ?? TuningSettings.Default.SorenessLimit;
        DateOnly cleared = DateOnly.MinValue;
        foreach (SorenessClearance clearance in clearances)
            if (clearance.Date <= today && clearance.Date > cleared)
                cleared = clearance.Date;
        SortedDictionary<DateOnly, Soreness> worstOfDay = [];
        foreach (Outing outing in outings)
        {
            if (outing.Date > today || outing.Date <= cleared)
                continue;
            foreach (Piece piece in outing.Pieces)
                if (piece.Soreness is { } told && (!worstOfDay.TryGetValue(outing.Date, out Soreness known) || told.Halves > known.Halves))
                    worstOfDay[outing.Date] = told;
        }

        StandingSoreness? standing = null;
        foreach ((DateOnly day, Soreness worst) in worstOfDay)
            standing = worst.Points < from ? null
                : standing is null ? new(worst, day, day)
                : standing with { Worst = worst.Halves > standing.Worst.Halves ? worst : standing.Worst, LastTold = day };
        return standing;
    }
}
