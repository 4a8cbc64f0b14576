using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Checks;

/// <summary>
/// Length that goes with something else: what the other thing does to speed then looks like length. Six things are told in the log, and a
/// seventh, how hard one really pulled, is shown by heart rate. Users read "tangled". All thresholds are chosen.
/// </summary>
internal static class Confounding
{
    private const int EnoughPieces = 4, EnoughPiecesOfHulls = 6, EnoughOutings = 4;

    /// <summary>From this share of the variation on, next to nothing is compared inside a hull or with one blade.</summary>
    private const double NearlyAllBetween = 0.9;

    /// <summary>From this share on, lengths are compared between outings, hardly inside them.</summary>
    private const double MostlyBetween = 0.7;

    /// <summary>Longer lengths always late in the outing, or always early: fading looks like length.</summary>
    public static readonly ILogCheck Order = new Check(static log =>
        log.InHull.Count < EnoughPieces ? null
            : Tangled("order-tangled", Association.WithinOutings(log.InHull, static piece => piece.Piece.Order)));

    /// <summary>One length outbound and another homebound: wind and current look like length.</summary>
    public static readonly ILogCheck Direction = new Check(static log =>
    {
        List<CheckedPiece> oneWay = [.. log.InHull.Where(static piece => piece.Piece.Course is Course.Out or Course.Back)];
        return oneWay.Count < EnoughPieces ? null
            : Tangled("course-tangled", Association.WithinOutings(oneWay, static piece => piece.Piece.Course == Course.Out ? 1 : 0));
    });

    /// <summary>One length paddled harder than another, as told: effort looks like length.</summary>
    public static readonly ILogCheck Effort = new Check(static log =>
    {
        List<CheckedPiece> told = [.. log.InHull.Where(static piece => piece.Piece.Effort is not null)];
        return told.Count < EnoughPieces ? null
            : Tangled("effort-tangled", Association.WithinOutings(told, static piece => piece.Piece.Effort!.Value.Points));
    });

    /// <summary>
    /// Heart rate that rises or falls with length where the lengths were known: pushing harder with one of them, or what that length costs,
    /// and only blind outings tell which.
    /// </summary>
    public static readonly ILogCheck HeartRate = new Check(static log =>
        log.HeartRate is { IsClear: true } slope ? new("heart-rate-tangled") { Longer = slope.BeatsPerInch > 0 } : null);

    /// <summary>Each hull with its own lengths: the hulls do not compare the same lengths.</summary>
    public static readonly ILogCheck Hull = new Check(static log =>
        log.Counted.Count >= EnoughPiecesOfHulls
            && Association.BetweenShare(log.Counted, static piece => piece.Outing.HullId) >= NearlyAllBetween ? new("hull-tangled") : null);

    /// <summary>Each paddle with its own lengths: a faster blade looks like a better length.</summary>
    public static readonly ILogCheck Blade = new Check(static log =>
        log.InHull.Count >= EnoughPieces && Association.BetweenShare(log.InHull, static piece => piece.Piece.PaddleId) >= NearlyAllBetween
            ? new("blade-tangled") { Hull = log.Question.Hull.Name }
            : null);

    /// <summary>Lengths that only ever went one way over the season: fitness and season look like length.</summary>
    public static readonly ILogCheck Calendar = new Check(static log =>
        log.InHull.Select(static piece => piece.Outing.Id).Distinct().Count() < EnoughOutings
            || Association.BetweenShare(log.InHull, static piece => piece.Outing.Id) < MostlyBetween
            ? null
            : Tangled("calendar-tangled", Association.Correlation(
                [.. log.InHull.Select(static piece => piece.LengthInches)],
                    [.. log.InHull.Select(static piece => (double)piece.Outing.Date.DayNumber)])));

    private static HealthCheck? Tangled(string name, double correlation) =>
        Math.Abs(correlation) >= Association.Tangled ? new(name) { Longer = correlation > 0 } : null;

    private sealed class Check(Func<CheckedLog, HealthCheck?> look) : ILogCheck
    {
        public HealthCheck? Look(CheckedLog log) => look(log);
    }
}
