using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Sizing;

/// <summary>A start length with everything that is said about it.</summary>
internal sealed record StartLengthAnswer(BodyMeasures Body, Length? Known, LengthUnit Unit, StartLength Start)
{
    /// <summary>The central 90 % range.</summary>
    public (Length Low, Length High) Likely => StartLengthAdvice.LikelyRange(Start);

    /// <summary>What it rests on.</summary>
    public string Explanation => StartLengthAdvice.Explain(Body, Known, Unit);

    /// <summary>What would improve it most.</summary>
    public string WhatNext => StartLengthAdvice.WhatNext(Body, Known, Unit);

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
    public static StartLengthAnswer Of(BodyMeasures body, Length? known, LengthUnit unit)
    {
        if (BodyChecks.Problems(body, unit) is [var problem, ..])
            throw new InvalidValueException(problem);
        if (known is { } paddle && Plausible.ProblemWithPaddleLength(paddle) is { } wrong)
            throw new InvalidValueException(wrong);
        return new(body, known, unit, StartLength.From(body, known));
    }

    /// <summary>A paddler's.</summary>
    /// <exception cref="InvalidValueException">A measure cannot be right.</exception>
    public static StartLengthAnswer Of(Paddler paddler) => Of(paddler.Body, paddler.KnownLength, paddler.Unit);
}
