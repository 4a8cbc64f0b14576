using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>Where a search starts, and how sure that is.</summary>
/// <param name="Length">Overall length for a solo canoe with the reference blade.</param>
/// <param name="SpreadInches">Standard deviation of the best length around it, inches: the prior's width in the model.</param>
/// <param name="Basis">What it rests on.</param>
public sealed record StartLength(Length Length, double SpreadInches, StartLengthBasis Basis)
{
    /// <summary>
    /// Spread of the best length around a measured seated reach, inches. Chosen, no published figure: common practice calls
    /// the rule right "within about 95 %", which at a reach of 50 in is ±2.5 in at the very most, about three of these.
    /// </summary>
    public const double SpreadByReachInches = 0.8;

    /// <summary>
    /// The start length from the best of what is known: a paddle that suits; seated reach; what the survey's lines make of
    /// the other measures; the average adult.
    /// </summary>
    /// <param name="body">Body measures.</param>
    /// <param name="known">Overall length of a paddle known to suit in a solo canoe with a blade near the reference.</param>
    public static StartLength From(BodyMeasures body, Length? known)
    {
        if (known is { } suits)
            return new(suits, SpreadByReachInches, StartLengthBasis.KnownPaddle);
        if (body.SeatedReach is { } reach)
            return new(reach, SpreadByReachInches, StartLengthBasis.SeatedReach);
        if (BodySurvey.BestLine(body) is not { } line)
            return new(Length.FromInches(BodySurvey.MeanReachInches), Spread(BodySurvey.ReachSpreadInches), StartLengthBasis.Nothing);
        return new(
            Length.FromInches(Math.Max(0, line.ReachInches(body))),
            Spread(line.SpreadWithReadingsInches),
            line.Terms is [{ Measure: BodyMeasure.Stature }] ? StartLengthBasis.Stature
                : line.SpreadInches == 0 ? StartLengthBasis.Segments
                : StartLengthBasis.SomeMeasures);

        static double Spread(double reach) => Math.Sqrt(SpreadByReachInches * SpreadByReachInches + reach * reach);
    }

    /// <summary>The start length of that paddler.</summary>
    public static StartLength Of(Paddler paddler) => From(paddler.Body, paddler.KnownLength);
}

/// <summary>What a start length rests on.</summary>
public enum StartLengthBasis
{
    /// <summary>A paddle already known to suit.</summary>
    KnownPaddle,

    /// <summary>Seated reach, measured.</summary>
    SeatedReach,

    /// <summary>Seated reach added up from sitting shoulder height, upper arm and forearm to grip.</summary>
    Segments,

    /// <summary>Seated reach estimated from stature.</summary>
    Stature,

    /// <summary>The average adult.</summary>
    Nothing,

    /// <summary>Seated reach estimated from some of stature, eye height and segments.</summary>
    SomeMeasures,
}
