using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>What would make a start length surer.</summary>
public static class StartLengthAdvice
{
    /// <summary>
    /// Each single measure that would make the start length surer, surest first, then the one easier to take; empty where
    /// no body measure would.
    /// </summary>
    public static IReadOnlyList<Improvement> Improvements(BodyMeasures body, Length? known)
    {
        double now = StartLength.From(body, known).SpreadInches;
        return
        [
            .. Enum.GetValues<BodyMeasure>()
                .Where(measure => body[measure] is null)
                .Select(measure => new Improvement(measure, now, SpreadWith(body, known, measure)))
                .Where(improvement => improvement.ToInches < improvement.FromInches - 0.05)
                .OrderBy(improvement => improvement.ToInches),
        ];
    }

    /// <summary>
    /// What would improve the start length most short of raising an arm: arm span and sitting eye height, where they would; the spread
    /// that they leave, inches.
    /// </summary>
    public static double? WithSpanAndEyeHeight(BodyMeasures body, Length? known)
    {
        double now = StartLength.From(body, known).SpreadInches;
        double then = SpreadWith(body, known, BodyMeasure.ArmSpan, BodyMeasure.EyeHeight);
        return then < now - 0.05 ? then : null;
    }

    /// <summary>The spread with more measures known: what they are does not matter, but a reach is one that the others bear out.</summary>
    private static double SpreadWith(BodyMeasures body, Length? known, params ReadOnlySpan<BodyMeasure> more)
    {
        BodyMeasures then = body;
        foreach (BodyMeasure measure in more)
            then = then.With(
                measure, body[measure] ?? Length.FromInches(
                measure == BodyMeasure.SeatedReach && BodySurvey.BestLine(body) is { } line ? Math.Max(0, line.ReachInches(body)) : 20));
        return StartLength.From(then, known).SpreadInches;
    }
}

/// <summary>A measure that would make a start length surer.</summary>
/// <param name="Measure">What to measure.</param>
/// <param name="FromInches">The spread now, inches.</param>
/// <param name="ToInches">The spread with it, inches.</param>
public sealed record Improvement(BodyMeasure Measure, double FromInches, double ToInches);
