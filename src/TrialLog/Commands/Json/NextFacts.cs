using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Json;

/// <summary>What <c>next --json</c> prints; the units are in the names.</summary>
internal sealed record NextFacts(
    string Paddler, string Hull, string Paddle, int Outings, int Pieces,
    double CurrentIn, BestFacts Best, IntervalFacts CurvaturePctPerIn2,
    double GainFromMovingPct, double GainFromMovingS, double GainLeftPct, double GainLeftS, double GoalS,
    double WorthwhilePct, double PWorthwhileLeft, bool DiminishingReturns, bool Flat,
    OutingsToGoFacts OutingsToGo, CardFacts Card, string Verdict,
    IReadOnlyList<CheckFacts> Checks, IReadOnlyList<string> Cautions)
{
    public static NextFacts Of(Analysis analysis) => new(
        analysis.Paddler.Name, analysis.Hull.Name, analysis.Paddle.Name, analysis.Outings, analysis.Pieces,
        JsonOutput.Inches(analysis.Current), BestFacts.Of(analysis.Best), IntervalFacts.Of(analysis.Curvature),
        JsonOutput.Rounded(analysis.GainFromMovingPercent), JsonOutput.Rounded(analysis.GainFromMovingSeconds),
        JsonOutput.Rounded(analysis.GainLeftPercent), JsonOutput.Rounded(analysis.GainLeftSeconds), JsonOutput.Rounded(analysis.GoalSeconds),
        JsonOutput.Rounded(analysis.WorthwhilePercent), JsonOutput.Rounded(analysis.ProbabilityWorthwhileLeft),
        analysis.DiminishingReturns, analysis.Flat,
        new OutingsToGoFacts(analysis.OutingsToGo.Median, analysis.OutingsToGo.Low, analysis.OutingsToGo.High),
        CardFacts.Of(analysis.Card, CardReason.Of(analysis)), Application.Wording.Verdict.Of(analysis),
        [.. analysis.Checks.Select(check => new CheckFacts(check.Name, Warnings.Of(check, analysis)))], Application.Wording.Cautions.Of(analysis));
}

internal sealed record BestFacts(
    double LengthIn, double LikelyLowIn, double LikelyHighIn, double Level, double WithinQuarterInch,
    IReadOnlyList<ProbabilityFacts> Probabilities)
{
    public static BestFacts Of(BestLength best) => new(
        JsonOutput.Inches(best.Length), JsonOutput.Inches(best.LikelyLow), JsonOutput.Inches(best.LikelyHigh), best.Level,
        JsonOutput.Rounded(best.WithinQuarterInch),
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

internal sealed record CardFacts(IReadOnlyList<double> LengthsIn, double DistanceM, double Effort, double RestS, string Reason)
{
    public static CardFacts Of(TrialCard card, string reason) => new(
        [.. card.Lengths.Select(JsonOutput.Inches)], card.Distance.Metres, card.Effort.Points, card.Rest.Seconds, reason);
}
