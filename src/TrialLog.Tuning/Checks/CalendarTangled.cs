using TrialLog.Domain.Log;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tuning.Checks;

/// <summary>Lengths that only ever went one way over the season: fitness and season look like length.</summary>
internal sealed class CalendarTangled : ILogCheck
{
    private const int EnoughOutings = 4;

    /// <summary>From this share on, lengths are compared between outings, hardly inside them. Chosen.</summary>
    private const double MostlyBetween = 0.7;

    public HealthCheck? Look(CheckedLog log)
    {
        if (log.InHull.Select(piece => piece.Outing.Id).Distinct().Count() < EnoughOutings
            || Association.BetweenShare(log.InHull, piece => piece.Outing.Id) < MostlyBetween)
            return null;
        double correlation = Association.Correlation(
            [.. log.InHull.Select(piece => piece.LengthInches)], [.. log.InHull.Select(piece => (double)piece.Outing.Date.DayNumber)]);
        return Math.Abs(correlation) >= Association.Tangled
            ? new("calendar-tangled") { Longer = correlation > 0 }
            : null;
    }
}
