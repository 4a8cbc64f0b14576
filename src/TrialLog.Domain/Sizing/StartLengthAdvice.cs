using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>What a start length rests on, said plainly, and what would make it surer.</summary>
public static class StartLengthAdvice
{
    /// <summary>Normal quantile of the central 90 % range.</summary>
    public const double Ninety = 1.645;

    /// <summary>How the start length came about, in one or two sentences.</summary>
    public static string Explain(BodyMeasures body, Length? known, LengthUnit unit)
    {
        StartLength start = StartLength.From(body, known);
        string length = Spoken.ToTenth(start.Length, unit);
        return start.Basis switch
        {
            StartLengthBasis.KnownPaddle =>
                $"A paddle of {length} already suits in a solo canoe; no body measure says more than that.",
            StartLengthBasis.SeatedReach =>
                $"Your seated reach is {length}: with the paddle upright beside the hip, the top of the grip falls in the middle of the " +
                    $"palm (common practice, no source).",
            StartLengthBasis.OverheadReach =>
                $"Your fingertip reaches {Spoken.ToTenth(body.OverheadReach!.Value, unit)} above the seat, the middle of your palm about " +
                    $"{length}: with the paddle upright beside the hip, the top of the grip falls there (common practice, no source).",
            StartLengthBasis.Stature =>
                $"A stature of {Spoken.ToTenth(body.Stature!.Value, unit)} goes with a seated reach of about {length} (ANSUR II, 6,068 " +
                    $"adults), but people of one height differ by up to {Spoken.Amount(9, unit)}.",
            StartLengthBasis.SomeMeasures =>
                $"{Listed(body)} suggest a seated reach of about {length} (ANSUR II, 6,068 adults).",
            _ => $"Nothing is known of the body, so this is the average adult's seated reach, {length} (ANSUR II, 6,068 adults).",
        };
    }

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

    /// <summary>What would improve the start length most, as an order to the paddler; always something.</summary>
    public static string WhatNext(BodyMeasures body, Length? known, LengthUnit unit) => Improvements(body, known) is not [var most, ..]
        ? Unchecked(body) ? $"Your standing height would show a slip: a reach to the fingertip is about {Spoken.Amount(5, unit)} too " +
            $"long. An outing that compares lengths makes it surer."
            : "No body measure makes this surer; an outing that compares lengths does."
        : WithSpanAndEyeHeight(body, known) is { } then
            ? $"{most.Says(unit)} If no arm can be raised, your arm span and sitting eye height cut it to {Spoken.Amount(then, unit)}."
            : most.Says(unit);

    /// <summary>Whether a reach is all that is known, so that nothing bears it out.</summary>
    private static bool Unchecked(BodyMeasures body) => body.SeatedReach is not null && BodySurvey.BestLine(body) is null;

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

    private static string Listed(BodyMeasures body)
    {
        string[] names = [.. BodySurvey.BestLine(body)!.Terms.Select(term => BodyChecks.Name(term.Measure).Split(' ', 2)[1])];
        string list = names.Length == 1 ? names[0] : string.Join(", ", names[..^1]) + " and " + names[^1];
        return "Your " + list;
    }
}

/// <summary>A measure that would make a start length surer.</summary>
/// <param name="Measure">What to measure.</param>
/// <param name="FromInches">The spread now, inches.</param>
/// <param name="ToInches">The spread with it, inches.</param>
public sealed record Improvement(BodyMeasure Measure, double FromInches, double ToInches)
{
    /// <summary><c>Measure your seated reach: it cuts the uncertainty from 1.2 to 0.8 in.</c></summary>
    public string Says(LengthUnit unit)
    {
        string from = Spoken.Amount(FromInches, unit);
        return $"Measure your {BodyChecks.Name(Measure).Split(' ', 2)[1]}: it cuts the uncertainty from {from[..from.IndexOf(' ')]} to " +
            $"{Spoken.Amount(ToInches, unit)}.";
    }
}
