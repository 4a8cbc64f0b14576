using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>
/// What the canoe did while nobody paddled, as evidence for one reading of its legs or another. At rest it drifts with the current and a
/// little with the wind; the speeds out and back show a current that depends on whether both were paddled alike.
/// </summary>
/// <param name="track">The track.</param>
internal sealed class RestEvidence(Track track)
{
    // No sources: chosen. How far the drift at rest is from the current, m/s, one standard deviation: the wind, and, for an easy way back,
    // how easy it was.
    private const double AlikeSd = 0.15, EasySd = 0.18, UsualEasyShare = 0.72;

    /// <summary>
    /// How likely a canoe stops where it turns: in a piece out and back, before an easy way back, between pieces one way. No sources:
    /// chosen.
    /// </summary>
    public const double StopsOutAndBack = 0.1, StopsBeforeEasy = 0.3, StopsBetween = 0.9;

    // Seconds, by turning alone a canoe is slow for less. No source: chosen.
    private const int ShortestRest = 10;

    private readonly List<Stretch> rests = MovingBlocks.UsualSpeed(track) is { } usual
        ? MovingBlocks.Rests(track, usual, ShortestRest) : [];

    /// <summary>The drift at rest along a course, m/s; null where there was too little rest to tell.</summary>
    public double? Along(Heading course) => Efforts.Drift(track, course, rests);

    /// <summary>How far it is from the current that legs paddled alike both ways show, m/s; NaN where it is not known.</summary>
    public double IfAlike(IReadOnlyList<Stretch> there, IReadOnlyList<Stretch> home, Heading course) =>
        Along(course) is { } drift ? Math.Abs(drift - (Median(there) - Median(home)) / 2) : double.NaN;

    /// <summary>How far it is from the current that legs show whose way back was easy, m/s; NaN where it is not known.</summary>
    public double IfEasy(IReadOnlyList<Stretch> hard, IReadOnlyList<Stretch> easy)
    {
        double paddled = (Median(hard) + Median(easy)) / (1 + UsualEasyShare);
        return Along(track.Between(hard[0].First, hard[0].Last)) is { } drift ? Math.Abs(drift - (Median(hard) - paddled)) : double.NaN;
    }

    /// <summary>The log-likelihood of such a misfit where both ways were paddled alike.</summary>
    public static double OfAlike(double misfit) => Normal(misfit, AlikeSd);

    /// <summary>The log-likelihood of such a misfit where the way back was easy.</summary>
    public static double OfEasy(double misfit) => Normal(misfit, EasySd);

    /// <summary>
    /// The log-likelihood of stopping, or not, at the turns of these pairs. It counts once, however many there are: a paddler does as
    /// before.
    /// </summary>
    /// <param name="pairs">Legs out and back.</param>
    /// <param name="stops">How likely it stops.</param>
    public double OfTurns(IReadOnlyList<IReadOnlyList<Stretch>> pairs, double stops)
    {
        if (pairs.Count == 0)
            return 0;
        return Math.Log(2 * pairs.Count(pair => Stops(pair[0], pair[1])) > pairs.Count ? stops : 1 - stops);
    }

    private bool Stops(Stretch before, Stretch after) => rests.Exists(rest => rest.First < after.First && rest.Last > before.Last);

    private static double Normal(double misfit, double sd) => -misfit * misfit / (2 * sd * sd) - Math.Log(sd);

    private double Median(IReadOnlyList<Stretch> legs) =>
        legs.Select(leg => Steadiness.MeanSpeed(track, Steadiness.SteadyPart(track, leg))).Order().ElementAt(legs.Count / 2);
}
