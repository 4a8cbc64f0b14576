using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Model;

namespace TrialLog.Application.Sizing;

/// <summary>A start length with everything that is said about it.</summary>
internal sealed record StartLengthAnswer(BodyMeasures Body, Length? Known, LengthUnit Unit, StartLength Start)
{
    /// <summary>The hull it is asked for; null for a solo canoe.</summary>
    public Hull? Hull { get; init; }

    /// <summary>Inches a paddle in that hull is longer than in a solo canoe.</summary>
    public double HullOffsetInches { get; init; }

    /// <summary>The start length in the hull it is asked for, with the reference blade.</summary>
    public Length InHull => Start.Length.PlusInches(HullOffsetInches);

    /// <summary>The central 90 % range in that hull.</summary>
    public (Length Low, Length High) Likely => StartBelief.LikelyRange(Start with { Length = InHull });

    /// <summary>Why it differs from a solo canoe's; null where it does not.</summary>
    public string? HullNote => Hull switch
    {
        null => null,
        { SeatHeight: not null } when HullOffsetInches == 0 => null,
        { SeatHeight: not null } => $"{Quoted.Visible(Hull.Name)} has its seat {Difference} than a solo canoe's, and an inch more seat " +
            $"wants an inch more paddle (common practice, no source).",
        { Crew: > 2 } => $"In a canoe of {Hull.Crew} seats the boat sits higher: an inch longer than in a solo canoe and up to two, the " +
            $"top of the grip near the knuckles (common practice, no source).",
        { Crew: 2 } => "In a canoe of two seats an inch shorter than in a solo canoe (common practice, no source).",
        _ => null,
    };

    private string Difference => $"{Say.Amount(Math.Abs(HullOffsetInches), Unit)} {(HullOffsetInches < 0 ? "lower" : "higher")}";

    /// <summary>What it rests on.</summary>
    public string Explanation => StartWords.Explain(Body, Known, Unit);

    /// <summary>What would improve it most.</summary>
    public string WhatNext => StartWords.WhatNext(Body, Known, Unit);

    /// <summary>Every single measure that would improve it, surest first.</summary>
    public IReadOnlyList<Improvement> Improvements => StartLengthAdvice.Improvements(Body, Known);

    /// <summary>How far apart the hands go, where the shoulder breadth is known.</summary>
    public Length? HandSpacing => Body.ShoulderBreadth is { } breadth ? Domain.Sizing.HandSpacing.From(breadth) : null;

    /// <summary>What is possible but unlikely among the measures.</summary>
    public IReadOnlyList<string> Questions => BodyChecks.Questions(Body, Known, Unit);
}

/// <summary>Finds a start length from what is known of a body.</summary>
internal static class FindStartLength
{
    /// <summary>From body measures and a paddle that suits, whoever's they are.</summary>
    /// <exception cref="InvalidValueException">A measure cannot be right; the sentence says which and asks what was meant.</exception>
    /// <param name="body">The measures.</param>
    /// <param name="known">A paddle that suits in a solo canoe, if any.</param>
    /// <param name="unit">The unit of the sentences.</param>
    /// <param name="hull">The hull it is asked for; null for a solo canoe.</param>
    /// <param name="hulls">Every hull of the logbook, among which seat heights are compared.</param>
    public static StartLengthAnswer Of(
        BodyMeasures body, Length? known, LengthUnit unit, Hull? hull = null, IReadOnlyList<Hull>? hulls = null)
    {
        if (BodyChecks.Problems(body, unit) is [var problem, ..])
            throw new InvalidValueException(problem);
        if (known is { } paddle && Plausible.ProblemWithPaddleLength(paddle) is { } wrong)
            throw new InvalidValueException(wrong);
        return new(body, known, unit, StartLength.From(body, known))
        {
            Hull = hull,
            HullOffsetInches = hull is null ? 0 : SeatHeightRule.OffsetsInches(hulls ?? [hull])[hull.Id],
        };
    }

    /// <summary>A paddler's.</summary>
    /// <exception cref="InvalidValueException">A measure cannot be right.</exception>
    public static StartLengthAnswer Of(Paddler paddler) => Of(paddler.Body, paddler.KnownLength, paddler.Unit);
}
