using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Model;

namespace TrialLog.Application.Wording;

/// <summary>A start length in words.</summary>
internal static class StartWords
{
    /// <summary><c>in a solo hull start at 51 in, likely 48¾ to 53¼ in</c>.</summary>
    public static string InASoloHull(StartLength start, LengthUnit unit)
    {
        (Length low, Length high) = StartBelief.LikelyRange(start);
        return $"in a solo hull start at {Say.Quarter(start.Length, unit)}, likely {Say.Range(low, high, unit)}";
    }

    /// <summary>How to find how far apart the hands go without a measure.</summary>
    public const string HandsQuickly = "Hold the paddle overhead with both elbows at 90°: the hands are about as far apart as the elbows.";

    /// <summary>How the start length came about, in one or two sentences.</summary>
    public static string Explain(BodyMeasures body, Length? known, LengthUnit unit)
    {
        StartLength start = StartLength.From(body, known);
        string length = Say.Tenth(start.Length, unit);
        return start.Basis switch
        {
            StartLengthBasis.KnownPaddle =>
                $"A paddle of {length} already suits in a solo canoe; no body measure says more than that.",
            StartLengthBasis.SeatedReach =>
                $"Your seated reach is {length}: with the paddle upright beside the hip, the top of the grip falls in the middle of the " +
                    $"palm (common practice, no source).",
            StartLengthBasis.OverheadReach =>
                $"Your fingertip reaches {Say.Tenth(body.OverheadReach!.Value, unit)} above the seat, the middle of your palm about " +
                    $"{length}: with the paddle upright beside the hip, the top of the grip falls there (common practice, no source).",
            StartLengthBasis.Stature =>
                $"A stature of {Say.Tenth(body.Stature!.Value, unit)} goes with a seated reach of about {length} (ANSUR II, 6,068 " +
                    $"adults), but people of one height differ by up to {Say.Amount(9, unit)}.",
            StartLengthBasis.SomeMeasures =>
                $"{Listed(body)} a seated reach of about {length} (ANSUR II, 6,068 adults).",
            _ => $"Nothing is known of the body, so this is the average adult's seated reach, {length} (ANSUR II, 6,068 adults).",
        };
    }

    /// <summary>What would improve the start length most, as an order to the paddler; always something.</summary>
    public static string WhatNext(BodyMeasures body, Length? known, LengthUnit unit)
    {
        if (StartLengthAdvice.Improvements(body, known) is not [var most, ..])
            return body.SeatedReach is not null && BodySurvey.BestLine(body) is null
                ? $"Your standing height would show a slip: a reach to the fingertip is about {Say.Amount(5, unit)} too long. An outing " +
                    $"that compares lengths makes it surer."
                : "No body measure makes this surer; an outing that compares lengths does.";
        string from = Say.Amount(most.FromInches, unit);
        string measure = $"Measure your {BodyChecks.Name(most.Measure).Split(' ', 2)[1]}: it cuts the uncertainty from " +
            $"{from[..from.IndexOf(' ')]} to {Say.Amount(most.ToInches, unit)}.";
        return StartLengthAdvice.WithSpanAndEyeHeight(body, known) is { } then
            ? $"{measure} If no arm can be raised, your arm span and sitting eye height cut it to {Say.Amount(then, unit)}."
            : measure;
    }

    private static string Listed(BodyMeasures body)
    {
        string[] names = [.. BodySurvey.BestLine(body)!.Terms.Select(term => BodyChecks.Name(term.Measure).Split(' ', 2)[1])];
        return names.Length == 1 ? $"Your {names[0]} suggests" : $"Your {string.Join(", ", names[..^1])} and {names[^1]} suggest";
    }
}
