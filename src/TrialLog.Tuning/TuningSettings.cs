using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning;

/// <summary>
/// Priors, the rule for stopping and the limits of a trial card. Each default is explained, with its source and what
/// happens if it is wrong, in docs/model.md. Speeds are in percent, lengths in inches.
/// </summary>
public sealed record TuningSettings
{
    /// <summary>The defaults.</summary>
    public static readonly TuningSettings Default = new();

    /// <summary>No search ends while the probability of a worthwhile gain is this or more; 0.02. Chosen.</summary>
    public double StopBelow { get; init; } = 0.02;

    /// <summary>
    /// How many times lower that probability must be where no outing compares two lengths; 0.2. Chosen, no source: such an answer
    /// rests on what is believed of the weather.
    /// </summary>
    public double StopBetweenOutings { get; init; } = 0.2;

    /// <summary>
    /// The smallest worthwhile change of speed in percent where the paddler has not chosen one; 0.3 (Bonetti and Hopkins 2010).
    /// </summary>
    public double WorthwhilePercent { get; init; } = 0.3;

    /// <summary>Probability in the likely range; 0.9.</summary>
    public double Level { get; init; } = 0.9;

    /// <summary>
    /// Standard deviation of the best length around the start length, inches; null for the spread that belongs to what the
    /// start length rests on (0.8 for a measured reach, 1.76 from stature).
    /// </summary>
    public double? StartSpreadInches { get; init; }

    /// <summary>Share of paddlers whose start length is further off than that spread allows; 0.2. Chosen, no source.</summary>
    public double StartOutlierShare { get; init; } = 0.2;

    /// <summary>How many times wider the spread is for those; 2.5. Chosen, no source.</summary>
    public double StartOutlierFactor { get; init; } = 2.5;

    /// <summary>By how much those make the variance around the start length larger.</summary>
    internal double StartVarianceFactor => 1 + StartOutlierShare * (StartOutlierFactor * StartOutlierFactor - 1);

    /// <summary>
    /// Median of the curvature of paddlers for whom length matters, percent of speed per inch squared; 0.65. Chosen, no source.
    /// </summary>
    public double CurvatureMedian { get; init; } = 0.65;

    /// <summary>Standard deviation of the logarithm of the curvature; 0.7. Chosen, no source.</summary>
    public double CurvatureLogSpread { get; init; } = 0.7;

    /// <summary>
    /// Degrees of freedom of Student's t that the logarithm of the curvature follows; infinite makes it normal. Chosen, no source.
    /// </summary>
    public double CurvatureDegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>
    /// Share of paddlers for whom length hardly matters; 0.16. Chosen, no source: without them a curve that is flat would be
    /// thought sharp, and the range too narrow.
    /// </summary>
    public double FlatShare { get; init; } = 0.16;

    /// <summary>How many times lower the median of their curvature is; 0.12. Chosen, no source.</summary>
    public double FlatFactor { get; init; } = 0.12;

    /// <summary>
    /// How lopsided the curve may be: spread of g, where the long side is (1 + g)/(1 − g) times as steep as the short side;
    /// 0.33, so that a curve twice as steep on one side lies one spread out. Chosen, no source; 0 makes every curve a parabola.
    /// </summary>
    public double SkewSpread { get; init; } = 0.33;

    /// <summary>
    /// The most that g may be, either way; 0.6: four times as steep on one side. Chosen, no source: beyond 1 a curve has no top, and
    /// near 1 it is a cliff on one side and level on the other.
    /// </summary>
    public double SkewLimit { get; init; } = 0.6;

    /// <summary>Spread of how the best length moves with the logarithm of the duration, inches per unit; 0.15. Chosen, no source.</summary>
    public double DurationSpreadInches { get; init; } = 0.15;

    /// <summary>The duration at which the start length is meant, seconds; 300. Chosen: a piece of about a kilometre.</summary>
    public double ReferenceSeconds { get; init; } = 300;

    /// <summary>Spread between hulls of the best length once the seat height is allowed for, inches; 0.35. Chosen, no source.</summary>
    public double HullSpreadInches { get; init; } = SeatHeightRule.SpreadInches;

    /// <summary>
    /// How many times wider that is for a hull that was never paddled, while others were; 2. A range carried over on an unsourced figure
    /// should hold though the figure were twice too small. Chosen.
    /// </summary>
    public double UnpaddledHullFactor { get; init; } = 2;

    /// <summary>
    /// Spread of the best length for each inch that the blade asked for differs from those paddled, inches; 0.25, as in
    /// <see cref="ExposedShaftRule"/>.
    /// </summary>
    public double BladeSpreadPerInch { get; init; } = ExposedShaftRule.SpreadPerInch;

    /// <summary>Median of the spread between outings, percent; 2.5 (conditions vary by 3.0 %, Smith and Hopkins 2011).</summary>
    public double OutingMedian { get; init; } = 2.5;

    /// <summary>Standard deviation of its logarithm; 0.7.</summary>
    public double OutingLogSpread { get; init; } = 0.7;

    /// <summary>
    /// Median of the spread of a piece, percent; 0.9. The published 1.1 % (Smith and Hopkins 2011) is a standard deviation; the
    /// scale of Student's t with 4 degrees of freedom that fits normal noise best is 0.83 of it.
    /// </summary>
    public double PieceMedian { get; init; } = 0.9;

    /// <summary>Standard deviation of its logarithm; 0.6.</summary>
    public double PieceLogSpread { get; init; } = 0.6;

    /// <summary>
    /// Degrees of freedom of Student's t for the pieces; 4. <see cref="double.PositiveInfinity"/> makes them Gaussian.
    /// </summary>
    public double DegreesOfFreedom { get; init; } = 4;

    /// <summary>Mean of the change of speed from one piece to the next, percent; −0.3.</summary>
    public double OrderMean { get; init; } = -0.3;

    /// <summary>Spread of the same; 0.5.</summary>
    public double OrderSpread { get; init; } = 0.5;

    /// <summary>Mean change of speed per CR10 point of effort, percent; 3.</summary>
    public double EffortMean { get; init; } = 3;

    /// <summary>Spread of the same; 1.5.</summary>
    public double EffortSpread { get; init; } = 1.5;

    /// <summary>
    /// Spread of the change of speed per point of effort as told, percent, where heart rate shows how hard the paddler really pulled; 1.8.
    /// Wider than <see cref="EffortSpread"/>, since a told point need not be a true one. Chosen.
    /// </summary>
    public double ToldEffortSpread { get; init; } = 1.8;

    /// <summary>
    /// Median of the spread of effort that was not told, CR10 points; 0.5. Chosen, to include the 5.6 to 8.3 % of Katsanos and Moffatt
    /// 2005.
    /// </summary>
    public double UntoldEffortMedian { get; init; } = 0.5;

    /// <summary>Standard deviation of its logarithm; 0.8. Chosen.</summary>
    public double UntoldEffortLogSpread { get; init; } = 0.8;

    /// <summary>
    /// Median of the spread of a piece's mean heart rate at given effort, beats a minute; 3. Chosen, above the 2 of Lamberts and others
    /// 2004 for the sensor.
    /// </summary>
    public double HeartRateMedian { get; init; } = 3;

    /// <summary>Standard deviation of its logarithm; 0.35. Chosen.</summary>
    public double HeartRateLogSpread { get; init; } = 0.35;

    /// <summary>Mean change of heart rate per point of effort, beats a minute; 9. Chosen.</summary>
    public double HeartRatePerPointMean { get; init; } = 9;

    /// <summary>The least that it is believed to be, beats a minute; 2. Chosen.</summary>
    public double HeartRatePerPointLeast { get; init; } = 2;

    /// <summary>Spread of the same; 2.25. Chosen.</summary>
    public double HeartRatePerPointSpread { get; init; } = 2.25;

    /// <summary>Mean change of heart rate from one piece to the next at given effort, beats a minute; 1.5. Chosen.</summary>
    public double HeartRateDriftMean { get; init; } = 1.5;

    /// <summary>Spread of the same; 1.5. Chosen.</summary>
    public double HeartRateDriftSpread { get; init; } = 1.5;

    /// <summary>Mean bend of that drift, beats a minute by piece squared; −0.3. Chosen.</summary>
    public double HeartRateBendMean { get; init; } = -0.3;

    /// <summary>Spread of the same; 0.5. Chosen.</summary>
    public double HeartRateBendSpread { get; init; } = 0.5;

    /// <summary>Spread of what an inch of length does to heart rate at given effort, beats a minute; 0.65, around zero. Chosen.</summary>
    public double HeartRatePerInchSpread { get; init; } = 0.65;

    /// <summary>
    /// Spread of how much harder a paddler pulls an inch longer without telling, as a share of the spread of untold effort; 0.2, around
    /// zero. Chosen.
    /// </summary>
    public double LeanShare { get; init; } = 0.2;

    /// <summary>
    /// Spread of what such a lean does to speed where nothing but blind outings shows it, percent an inch; 0.3, around zero. Chosen.
    /// </summary>
    public double LeanSpread { get; init; } = 0.3;

    /// <summary>Mean change of speed per unit of the logarithm of distance, percent; −6 (Riegel 1981).</summary>
    public double DistanceMean { get; init; } = -6;

    /// <summary>Spread of the same; 3.</summary>
    public double DistanceSpread { get; init; } = 3;

    /// <summary>Spread of the change of speed per week over the season, percent; 0.3, around zero.</summary>
    public double TrendSpread { get; init; } = 0.3;

    /// <summary>
    /// Spread of the effect of wind and current along the course on one-way pieces of an outing, percent; 10: all but flat.
    /// </summary>
    public double AlongCourseSpread { get; init; } = 10;

    /// <summary>Error of a piece's time, seconds; 0.5. Chosen: two presses of a watch.</summary>
    public double TimingErrorSeconds { get; init; } = 0.5;

    /// <summary>Error of a piece's distance against the other pieces of its outing, metres; 2. Chosen, no source.</summary>
    public double DistanceErrorMetres { get; init; } = 2;

    /// <summary>How far a card's lengths may lie from the length the paddler is used to, inches; 2. Chosen, no source.</summary>
    public double StepLimitInches { get; init; } = 2;

    /// <summary>The longest a card's longest length may be above its shortest, inches; 3. Chosen, no source.</summary>
    public double CardWidthInches { get; init; } = 3;

    /// <summary>Pieces on a card once the first outings are paddled, where nobody told pieces or minutes: an even number; 4.</summary>
    public int CardPieces { get; init; } = 4;

    /// <summary>Cards whose value is within this share of the best card's count as equal, and the narrowest is taken; 0.03.</summary>
    public double CardTolerance { get; init; } = 0.03;

    /// <summary>Soreness from which a length counts as one that hurt, points of 10; 3. Chosen, no source.</summary>
    public double SorenessLimit { get; init; } = 3;

    /// <summary>
    /// What an outing of testing costs where the paddler has not said, percent of speed; 0.005. Chosen: beside the two percent of
    /// <see cref="StopBelow"/> a price of 0.01 would decide nothing.
    /// </summary>
    public double PricePercent { get; init; } = 0.005;

    /// <summary>
    /// An outing that takes longer than so many minutes costs more in proportion, where the paddler has not said what it costs; 50. Chosen,
    /// no source: between what four and six pieces of a kilometre take.
    /// </summary>
    public double PriceMinutes { get; init; } = 50;
}
