using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Checks;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Assessments;

/// <summary>
/// What the log says about one paddler in one hull with one paddle: the assessment, and with it the curve, the next card and the forecast.
/// </summary>
public sealed record Analysis : Assessment
{
    /// <summary>The paddler.</summary>
    public required Paddler Paddler { get; init; }

    /// <summary>Where the search started.</summary>
    public required StartLength Start { get; init; }

    /// <summary>Outings with at least one piece that counts, all hulls.</summary>
    public required int Outings { get; init; }

    /// <summary>Pieces that count, all hulls.</summary>
    public required int Pieces { get; init; }

    /// <summary>
    /// Where the paddler is now: the length most paddled of late in outings of one length (trials of several are not), in this hull with
    /// this paddle, else the start length carried over.
    /// </summary>
    public required Length Current { get; init; }

    /// <summary>Whether <see cref="Current"/> was paddled so; false where it is the start length carried over.</summary>
    public required bool CurrentIsUsual { get; init; }

    /// <summary>Whether, while sore, no shorter length is known not to have hurt.</summary>
    public bool SoreEverywhere { get; init; }

    /// <summary>Whether the latest technique check in this hull with this paddle found the top hand above the head.</summary>
    public bool TopHandOverhead { get; init; }

    /// <summary>Curvature, percent of speed lost per inch squared by a paddler alone in the hull.</summary>
    public required Interval Curvature { get; init; }

    /// <summary>Expected gain of speed from moving to the best length, percent; not negative.</summary>
    public required double GainFromMovingPercent { get; init; }

    /// <summary>The same over the goal event, in seconds.</summary>
    public required double GainFromMovingSeconds { get; init; }

    /// <summary>The same over the goal event, in seconds.</summary>
    public required double GainLeftSeconds { get; init; }

    /// <summary>How long the goal event takes, seconds, as known or reckoned from the pieces (Riegel 1981).</summary>
    public required double GoalSeconds { get; init; }

    /// <summary>Outings until diminishing returns.</summary>
    public required OutingsToGo OutingsToGo { get; init; }

    /// <summary>The same if lengths were changed on the water; null where they are, or where it is time to stop.</summary>
    public OutingsToGo? OutingsToGoIfSwapping { get; init; }

    /// <summary>
    /// The next trial; when it is time to stop, what teaches most if the paddler goes out anyway. Without any length for a fixed paddle
    /// that the log has no adjustable one to put against.
    /// </summary>
    public required TrialCard Card { get; init; }

    /// <summary>Whether there is a card to paddle.</summary>
    public bool HasCard => Card.Lengths.Count > 0;

    /// <summary>The paddle for each piece of the card where they differ: a fixed paddle against an adjustable one; else empty.</summary>
    public IReadOnlyList<Paddle> CardPaddles { get; init; } = [];

    /// <summary>The card as it is, first, and with more pieces: minutes on the water, and what each should win.</summary>
    public IReadOnlyList<CardOption> CardOptions { get; init; } = [];

    /// <summary>
    /// Once it is settled, a card a quarter inch each side of the best length, to feel the difference and not to find it; else empty.
    /// </summary>
    public IReadOnlyList<Length> ToFeel { get; init; } = [];

    /// <summary>Where a fixed paddle stands against the best length; null for an adjustable one.</summary>
    public FixedPaddleFacts? FixedPaddle { get; init; }

    /// <summary>What is wrong with the experiment itself, if anything.</summary>
    public required IReadOnlyList<HealthCheck> Checks { get; init; }

    /// <summary>What effort, heart rate and hidden lengths did for the answer.</summary>
    public EffortView Effort { get; init; } = new(null, false, 0, null, null);

    /// <summary>
    /// What other paddlers' settled logs taught about the start length; null where they taught nothing or were not asked.
    /// </summary>
    public SquadPrior? LearntFromSquad { get; init; }

    /// <summary>The response curve for this hull and paddle.</summary>
    public required ResponseCurve Curve { get; init; }
}

/// <summary>A card of so many pieces, so long.</summary>
/// <param name="Pieces">Pieces.</param>
/// <param name="Distance">Of each.</param>
/// <param name="Minutes">On the water, with warm-up, easy paddling between pieces and changes of setting.</param>
/// <param name="ValuePercent">By how much it should lower the expected loss, percent of speed.</param>
/// <param name="OutingsToGo">Outings to go if they are all like this.</param>
public sealed record CardOption(int Pieces, Distance Distance, int Minutes, double ValuePercent, OutingsToGo OutingsToGo);

/// <summary>Where a fixed paddle stands.</summary>
/// <param name="CostPercent">Expected loss of speed at its length over that at the best length, percent; not negative.</param>
/// <param name="CostSeconds">The same over the goal event.</param>
/// <param name="ProbabilityWorthwhile">Chance that another length is faster by a worthwhile change.</param>
/// <param name="Against">The adjustable paddle that the card puts it against; null where the log has none.</param>
public sealed record FixedPaddleFacts(double CostPercent, double CostSeconds, double ProbabilityWorthwhile, Paddle? Against);

/// <summary>The best length and how sure it is.</summary>
/// <param name="Length">The setting with the least expected loss.</param>
/// <param name="LikelyLow">Lower end of the central interval.</param>
/// <param name="LikelyHigh">Upper end of the central interval.</param>
/// <param name="Level">Probability in that interval, 0.9.</param>
/// <param name="WithinQuarterInch">Probability that the truly best length lies within a quarter inch of <paramref name="Length"/>.</param>
/// <param name="Probabilities">For each setting with some probability, that it is the nearest to the truly best one; by length.</param>
public sealed record BestLength(
    Length Length, Length LikelyLow, Length LikelyHigh, double Level, double WithinQuarterInch,
    IReadOnlyList<StepProbability> Probabilities)
{
    /// <summary>How the pieces that it rests on were timed: by hand, by watch or both; empty where none was paddled.</summary>
    public IReadOnlyList<TimedBy> TimedAs { get; init; } = [];
}

/// <summary>One setting of the shaft and the probability that it is the best.</summary>
/// <param name="Length">The setting.</param>
/// <param name="Probability">0 to 1.</param>
public sealed record StepProbability(Length Length, double Probability);

/// <summary>A median with a central interval.</summary>
/// <param name="Median">The median.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public sealed record Interval(double Median, double Low, double High);

/// <summary>How many more outings until diminishing returns.</summary>
/// <param name="Median">The median.</param>
/// <param name="Low">Lower end of the central 80 % range.</param>
/// <param name="High">Upper end of the central 80 % range; <see cref="Most"/> means that many or more.</param>
public sealed record OutingsToGo(int Median, int Low, int High)
{
    /// <summary>The forecast looks no further than this many outings.</summary>
    public const int Most = 30;
}

/// <summary>Speed against length, all else equal, in percent of the speed at the best length.</summary>
/// <param name="Points">The curve over the paddle's range, by length.</param>
/// <param name="Pieces">The pieces of this hull, adjusted for everything but length.</param>
public sealed record ResponseCurve(IReadOnlyList<CurvePoint> Points, IReadOnlyList<AdjustedPiece> Pieces);

/// <summary>One point of a response curve.</summary>
/// <param name="Length">Overall length.</param>
/// <param name="Percent">Mean speed there less mean speed at the best length, percent; mostly below zero.</param>
/// <param name="Low">Lower end of the central 90 % band of the same difference.</param>
/// <param name="High">Upper end of that band.</param>
public sealed record CurvePoint(Length Length, double Percent, double Low, double High);

/// <summary>The state of the search after an outing.</summary>
/// <param name="OutingId">The outing; null for the state before the first.</param>
/// <param name="Date">Its date.</param>
/// <param name="Outings">Outings that count so far.</param>
/// <param name="Then">What the log meant then.</param>
public sealed record ProgressPoint(Guid? OutingId, DateOnly? Date, int Outings, Assessment Then)
{
    /// <summary>Best length then.</summary>
    public Length Best => Then.Best.Length;

    /// <summary>Lower end of the likely range then.</summary>
    public Length LikelyLow => Then.Best.LikelyLow;

    /// <summary>Upper end of the likely range then.</summary>
    public Length LikelyHigh => Then.Best.LikelyHigh;

    /// <summary>Gain left then, percent.</summary>
    public double GainLeftPercent => Then.GainLeftPercent;

    /// <summary>Probability then that a worthwhile gain was left.</summary>
    public double ProbabilityWorthwhileLeft => Then.ProbabilityWorthwhileLeft;

    /// <summary>
    /// What going from the best length of the point before to this one's should gain by all that was known after this outing, percent of
    /// speed: what the outing taught. 0 for the first point, and where the best length stayed.
    /// </summary>
    public double TaughtPercent { get; init; }

    /// <summary>Whether it was time to stop then.</summary>
    public bool DiminishingReturns => Then.DiminishingReturns;
}
