using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Assessments;

/// <summary>The best length in one hull with one paddle's blade, tuned or carried over.</summary>
/// <param name="Hull">The hull.</param>
/// <param name="Paddle">The paddle whose blade it is.</param>
/// <param name="Best">The setting with the least expected loss, on quarter inches, wherever the shaft's range ends.</param>
/// <param name="LikelyLow">Lower end of the central 90 % range.</param>
/// <param name="LikelyHigh">Upper end of that range.</param>
/// <param name="WithinQuarterInch">Probability that the truly best length lies within a quarter inch of <paramref name="Best"/>.</param>
/// <param name="Pieces">Pieces paddled in this hull that count: 0 means carried over by rule alone.</param>
/// <param name="InRange">Whether the paddle can be set to it.</param>
/// <param name="GainLeftPercent">Expected loss at <paramref name="Best"/>, percent.</param>
/// <param name="DiminishingReturns">Whether returns have diminished for this hull.</param>
public sealed record CarriedLength(
    Hull Hull, Paddle Paddle, Length Best, Length LikelyLow, Length LikelyHigh, double WithinQuarterInch,
    int Pieces, bool InRange, double GainLeftPercent, bool DiminishingReturns)
{
    /// <summary>The longest length to propose while the paddler has been sore of late, in this hull with this paddle; null where they have not.</summary>
    public Length? SorenessCeiling { get; init; }
}
