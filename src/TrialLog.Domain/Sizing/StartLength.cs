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
    /// Spread of the best length around a measured seated reach, inches. Chosen, no published figure: some six tenths for how far
    /// paddlers of one reach differ, and half an inch for how far the shoulder was lifted, added as squares.
    /// </summary>
    public const double SpreadByReachInches = 0.8;

    /// <summary>
    /// The start length from the best of what is known: a paddle that suits; seated reach, where the other measures bear it out;
    /// what the survey's lines make of them; the average adult.
    /// </summary>
    /// <param name="body">Body measures.</param>
    /// <param name="known">Overall length of a paddle known to suit in a solo canoe with a blade near the reference.</param>
    public static StartLength From(BodyMeasures body, Length? known)
    {
        if (known is { } suits)
            return new(suits, SpreadByReachInches, StartLengthBasis.KnownPaddle);
        if (body.SeatedReach is { } reach && BodyChecks.ReachTooFar(body) is null)
            return new(reach, SpreadByReachInches, StartLengthBasis.SeatedReach);
        if (BodySurvey.BestLine(body) is not { } line)
            return new(Length.FromInches(BodySurvey.MeanReachInches), Spread(BodySurvey.ReachSpreadInches), StartLengthBasis.Nothing);
        return new(
            Length.FromInches(Math.Max(0, line.ReachInches(body))),
            Spread(line.SpreadWithReadingsInches),
            line.Terms[0].Measure == BodyMeasure.OverheadReach ? StartLengthBasis.OverheadReach
                : line.Terms is [{ Measure: BodyMeasure.Stature }] ? StartLengthBasis.Stature
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

    /// <summary>The fingertip of the raised arm above the seat, less what lies above the palm.</summary>
    OverheadReach,

    /// <summary>Seated reach estimated from stature.</summary>
    Stature,

    /// <summary>The average adult.</summary>
    Nothing,

    /// <summary>Seated reach estimated from several of stature, arm span, eye height and segments, or one of them.</summary>
    SomeMeasures,
}
