using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Json;

/// <summary>What <c>next --json</c> prints; the units are in the names.</summary>
internal sealed record NextFacts(
    string Paddler, string Hull, string Paddle, string Standing, string ToDo, int Outings, int Pieces,
    double CurrentIn, BestFacts Best, IntervalFacts CurvaturePctPerIn2,
    double GainFromMovingPct, double GainFromMovingS, double GainLeftPct, double GainLeftS, double GoalS,
    double WorthwhilePct, double PWorthwhileLeft, IReadOnlyList<string> Why,
        bool DiminishingReturns, bool Flat,
    OutingsToGoFacts? OutingsToGo, CardFacts Card, IReadOnlyList<CardOptionFacts> CardOptions, SquadPriorFacts? LearntFromSquad,
        EffortFacts Effort, FixedPaddleJson? FixedPaddle, string Verdict,
    IReadOnlyList<CheckFacts> Checks, IReadOnlyList<string> Cautions)
{
    /// <summary>The facts, with the program's own card.</summary>
    public static NextFacts Of(Analysis analysis) => Of(analysis, CardFacts.Of(analysis.Card, CardReason.Of(analysis)));

    /// <summary>The facts, with the card as it was given.</summary>
    public static NextFacts Of(Analysis analysis, GivenCard card) => Of(analysis, CardFacts.Of(card));

    private static NextFacts Of(Analysis analysis, CardFacts card) => new(
        analysis.Paddler.Name, analysis.Hull.Name, analysis.Paddle.Name, JsonOutput.Kebab(analysis.Standing),
        Application.Wording.Verdict.ToDo(analysis), analysis.Outings, analysis.Pieces,
        JsonOutput.Inches(analysis.Current), BestFacts.Of(analysis.Best), IntervalFacts.Of(analysis.Curvature),
        JsonOutput.Rounded(analysis.GainFromMovingPercent), JsonOutput.Rounded(analysis.GainFromMovingSeconds),
        JsonOutput.Rounded(analysis.GainLeftPercent), JsonOutput.Rounded(analysis.GainLeftSeconds),
            JsonOutput.Rounded(analysis.GoalSeconds),
        JsonOutput.Rounded(analysis.WorthwhilePercent), JsonOutput.Rounded(analysis.ProbabilityWorthwhileLeft),
        [.. analysis.Why.Select(JsonOutput.Kebab)], analysis.DiminishingReturns, analysis.Flat,
        // While it hurts nobody counts outings.
        analysis.Standing == Tuning.Assessments.Standing.Sore ? null
            : new OutingsToGoFacts(analysis.OutingsToGo.Median, analysis.OutingsToGo.Low, analysis.OutingsToGo.High),
        card, [.. analysis.CardOptions.Select(option =>
            new CardOptionFacts(option.Pieces, option.Distance.Metres, option.Minutes, JsonOutput.Rounded(option.ValuePercent),
            new OutingsToGoFacts(option.OutingsToGo.Median, option.OutingsToGo.Low, option.OutingsToGo.High)))],
        analysis.LearntFromSquad is { } squad
            ? new SquadPriorFacts(squad.Paddlers, JsonOutput.Rounded(squad.OffsetInches), JsonOutput.Rounded(squad.SdInches)) : null,
        new EffortFacts(analysis.Effort.ToldSd is { } told ? JsonOutput.Rounded(told) : null, analysis.Effort.HeartRateUsed,
            analysis.Effort.BlindOutings),
        analysis.FixedPaddle is { } its
            ? new FixedPaddleJson(JsonOutput.Inches(analysis.Ideal.Length), JsonOutput.Rounded(its.CostPercent),
            JsonOutput.Rounded(its.CostSeconds), JsonOutput.Rounded(its.ProbabilityWorthwhile), its.Against?.Name) : null,
        Application.Wording.Verdict.Of(analysis),
        [.. analysis.Checks.Select(check => new CheckFacts(check.Name, Warnings.Of(check, analysis)))],
            Application.Wording.Cautions.Of(analysis));
}

/// <summary>A card of so many pieces, so long: minutes on the water, what it should win, and the outings to go.</summary>
internal sealed record CardOptionFacts(int Pieces, double DistanceM, int Minutes, double ValuePct, OutingsToGoFacts OutingsToGo);

/// <summary>What other paddlers' settled logs taught about the start length.</summary>
internal sealed record SquadPriorFacts(int Paddlers, double OffsetIn, double SdIn);

/// <summary>What effort, heart rate and blind outings did; <c>told_sd</c> is null without heart rate.</summary>
internal sealed record EffortFacts(double? ToldSd, bool HeartRateUsed, int BlindOutings);

/// <summary>Where a fixed paddle stands against the best length.</summary>
internal sealed record FixedPaddleJson(double BestIn, double CostPct, double CostS, double PWorthwhile, string? Against);

internal sealed record BestFacts(
    double LengthIn, double LikelyLowIn, double LikelyHighIn, double Level, double WithinQuarterInch,
    string? TimedAs, IReadOnlyList<ProbabilityFacts> Probabilities)
{
    public static BestFacts Of(BestLength best) => new(
        JsonOutput.Inches(best.Length), JsonOutput.Inches(best.LikelyLow), JsonOutput.Inches(best.LikelyHigh), best.Level,
        JsonOutput.Rounded(best.WithinQuarterInch),
        best.TimedAs switch { [] => null, [var one] => JsonOutput.Kebab(one), _ => "both" },
        [.. best.Probabilities.Select(step => new ProbabilityFacts(JsonOutput.Inches(step.Length), JsonOutput.Rounded(step.Probability)))]);
}

internal sealed record ProbabilityFacts(double LengthIn, double P);

internal sealed record IntervalFacts(double Median, double Low, double High)
{
    public static IntervalFacts Of(Interval interval) =>
        new(JsonOutput.Rounded(interval.Median), JsonOutput.Rounded(interval.Low), JsonOutput.Rounded(interval.High));
}

internal sealed record OutingsToGoFacts(int Median, int Low, int High);

internal sealed record CheckFacts(string Name, string Says);

/// <summary>A card; a blind one has letters in place of lengths until its times are in.</summary>
internal sealed record CardFacts(
    IReadOnlyList<double> LengthsIn, int Pieces, double DistanceM, double Effort, double RestS, string Reason,
    IReadOnlyList<string>? Letters = null, string? By = null, string? Because = null, IReadOnlyList<double>? OwnLengthsIn = null)
{
    public static CardFacts Of(TrialCard card, string reason) => new(
        [.. card.Lengths.Select(JsonOutput.Inches)], card.Lengths.Count, card.Distance.Metres, card.Effort.Points,
            card.Rest.Seconds, reason);

    public static CardFacts Of(GivenCard given)
    {
        bool hidden = given is { Blind: true, PaddledAs: null };
        return Of(given.Card, given.Reason) with
        {
            LengthsIn = hidden ? [] : [.. given.Card.Lengths.Select(JsonOutput.Inches)],
            Letters = given.Blind ? BlindWords.Letters(given.Card) : null,
            By = given.By,
            Because = given.Because,
            OwnLengthsIn = given.OwnLengths.Count == 0 || hidden ? null : [.. given.OwnLengths.Select(JsonOutput.Inches)],
        };
    }
}
