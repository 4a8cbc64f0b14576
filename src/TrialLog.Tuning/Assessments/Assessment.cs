using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Assessments;

/// <summary>
/// What the log means for one hull and one paddle: the best length, how sure it is, what more testing may win, and where the search stands.
/// The same whether an analysis, a carried length or a point of progress says it.
/// </summary>
public record Assessment
{
    /// <summary>The hull.</summary>
    public required Hull Hull { get; init; }

    /// <summary>The paddle.</summary>
    public required Paddle Paddle { get; init; }

    /// <summary>
    /// Of the paddle's settings that may be paddled now, the one with the least expected loss, and how sure the best length is. While sore
    /// it is the length for now; a fixed paddle has but one.
    /// </summary>
    public required BestLength Best { get; init; }

    /// <summary>
    /// The length to have with this blade in this hull, wherever the shaft's range ends and whatever is sore: <see cref="Best"/> where the
    /// paddle reaches it and nothing hurts.
    /// </summary>
    public required IdealLength Ideal { get; init; }

    /// <summary>Whether the paddle can be set to <see cref="Ideal"/>.</summary>
    public bool InRange => Paddle.Reaches(Ideal.Length);

    /// <summary>Pieces in this hull that count, with any paddle; 0 means carried over by rule alone.</summary>
    public required int PiecesInHull { get; init; }

    /// <summary>
    /// Expected loss of speed at the best length, percent: what more testing could win on average if it found the true best length.
    /// </summary>
    public required double GainLeftPercent { get; init; }

    /// <summary>The smallest change of speed that matters, percent.</summary>
    public required double WorthwhilePercent { get; init; }

    /// <summary>Probability that some other length is faster than the best known by a worthwhile change.</summary>
    public required double ProbabilityWorthwhileLeft { get; init; }

    /// <summary>Why pieces as short as the log's cannot settle it; null where they can.</summary>
    public ShortPieces? TooShort { get; init; }

    /// <summary>
    /// Whether effort rests on the paddler's word alone: no heart rate counted and fewer than two outings had hidden lengths, so nothing
    /// would show it if one length were pulled harder.
    /// </summary>
    public bool OnToldEffort { get; init; }

    /// <summary>What an outing of testing costs this paddler, percent of speed.</summary>
    public required double PricePercent { get; init; }

    /// <summary>Where the search stands.</summary>
    public required Standing Standing { get; init; }

    /// <summary>Why, what decides first.</summary>
    public required IReadOnlyList<StandingReason> Why { get; init; }

    /// <summary>Whether to stop testing: settled or flat.</summary>
    public bool DiminishingReturns => Standing is Standing.Settled or Standing.Flat;

    /// <summary>Whether an inch either way very probably costs less than a worthwhile change, whether or not it is time to stop.</summary>
    public required bool Flat { get; init; }

    /// <summary>Soreness that stands; null where there is none.</summary>
    public required StandingSoreness? Soreness { get; init; }

    /// <summary>The longest length to paddle while soreness stands, in this hull with this paddle; null where none does.</summary>
    public required Length? SorenessLimit { get; init; }
}

/// <summary>A best length wherever the shaft's range ends.</summary>
/// <param name="Length">The length, on the paddle's settings where it reaches so far, else on quarter inches.</param>
/// <param name="WithinQuarterInch">Probability that the true best length lies within a quarter inch of it.</param>
/// <param name="GainLeftPercent">Expected loss of speed there, percent.</param>
public sealed record IdealLength(Length Length, double WithinQuarterInch, double GainLeftPercent);
