using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Squads;

/// <summary>Where a paddler stands on the coach's list, and why there: from the top down.</summary>
public enum SquadPlace
{
    /// <summary>Hurt at the last outing, and nothing was heard since.</summary>
    HurtAndSilent,

    /// <summary>Sore: rest comes before testing.</summary>
    Sore,

    /// <summary>Something is left to be won by testing.</summary>
    ToWin,

    /// <summary>Nobody has said yet which hull and paddle it is about.</summary>
    NoPaddle,

    /// <summary>Time to stop: no card, no calendar entry.</summary>
    Finished,
}

/// <summary>
/// One paddler of the squad: what the coach's list, sheet, screen and JSON all show. Made before the analysis is there, too, so
/// that a screen can list everybody at once.
/// </summary>
/// <param name="Paddler">Who.</param>
/// <param name="Hull">In which hull; null while nobody has said.</param>
/// <param name="Paddle">With which paddle; null while nobody has said.</param>
/// <param name="Analysis">What the log says; null while it is being worked out, or where there is no paddle.</param>
/// <param name="LastOuting">The day of the last outing; null before the first.</param>
/// <param name="Soreness">The soreness that stands: told, and not gone since; null for none.</param>
/// <param name="DaysSilent">Days since an outing that hurt, if none came after it; else null.</param>
public sealed record SquadRow(
    Paddler Paddler, Hull? Hull, Paddle? Paddle, Analysis? Analysis, DateOnly? LastOuting, Soreness? Soreness, int? DaysSilent)
{
    /// <summary>That paddler's row on that day, from their analysis, if it is there, and all their outings in any order.</summary>
    public static SquadRow Of(
        Paddler paddler, Hull? hull, Paddle? paddle, Analysis? analysis,
            IReadOnlyCollection<Outing> outings, IEnumerable<SorenessClearance> clearances, DateOnly today)
    {
        StandingSoreness? sore = analysis is null ? StandingSoreness.Of(outings, clearances, today) : analysis.Soreness;
        DateOnly? last = outings.Count == 0 ? null : outings.Max(outing => outing.Date);
        return new(paddler, hull, paddle, analysis, last, sore?.Worst,
            sore is not null && last <= sore.LastTold ? Math.Max(0, today.DayNumber - sore.LastTold.DayNumber) : null);
    }

    /// <summary>That paddler's row in the hull and with the paddle that were analysed.</summary>
    public static SquadRow Of(Analysis analysis, IReadOnlyCollection<Outing> outings, DateOnly today) =>
        Of(analysis.Paddler, analysis.Hull, analysis.Paddle, analysis, outings, [], today);

    /// <summary>The coach's or blind card that stands for this hull and paddle; null where the log's own is handed out.</summary>
    public GivenCard? StandingCard { get; init; }

    /// <summary>Where on the list.</summary>
    public SquadPlace Place =>
        DaysSilent > 0 ? SquadPlace.HurtAndSilent
        : IsSore ? SquadPlace.Sore
        : Paddle is null ? SquadPlace.NoPaddle
        : IsFinished ? SquadPlace.Finished
        : SquadPlace.ToWin;

    /// <summary>Whether rest comes before testing.</summary>
    public bool IsSore => Soreness is not null;

    /// <summary>Whether it is time to stop: nothing to test, and no card.</summary>
    public bool IsFinished => Analysis?.Standing is Standing.Settled or Standing.Flat || Analysis?.Paddle.IsFixed == true;

    /// <summary>Whether a card is handed out this week: there is something to win, and trials in this hull can tell it.</summary>
    public bool Tests => Analysis is not null && CanTest(Analysis, StandingCard);

    /// <summary>
    /// Whether a card of that analysis is worth handing out: not while it hurts, nor when it is time to stop, nor where a large crew hides
    /// what one paddle does. A coach's card that stands is handed out all the same, but for soreness.
    /// </summary>
    public static bool CanTest(Analysis analysis, GivenCard? standing = null) =>
        standing?.By is not null ? analysis.Standing != Standing.Sore
            : analysis.Standing is Standing.Testing or Standing.CannotTell && !analysis.Paddle.IsFixed
                && !analysis.Why.Contains(StandingReason.LargeCrewsOnly);

    /// <summary>
    /// What the usual length costs on average against the true best length, percent of speed: gained partly by going to the best length,
    /// partly by more testing.
    /// </summary>
    public double ToWinPercent => Analysis is null ? 0 : Analysis.GainFromMovingPercent + Analysis.GainLeftPercent;

    /// <summary>The same over their race, seconds.</summary>
    public double ToWinSeconds => Analysis is null ? 0 : Analysis.GainFromMovingSeconds + Analysis.GainLeftSeconds;
}
