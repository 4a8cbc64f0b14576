using System.Text.Json;
using TrialLog.Application.Sizing;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Json;

/// <summary>What <c>start-length --json</c> prints; the measuring steps with <c>--steps</c>.</summary>
internal sealed record StartLengthFacts(
    string? Paddler, string? RestFirst, string? Hull, double LengthIn, double SpreadIn, double LikelyLowIn, double LikelyHighIn,
        double Level, string Basis,
    double ReferenceBladeIn, string Explanation, string WhatNext, IReadOnlyList<ImprovementFacts> Improvements, double? HandSpacingIn,
    IReadOnlyList<string> Questions, IReadOnlyList<MeasuringFacts>? Steps)
{
    public static StartLengthFacts Of(string? paddler, string? rest, StartLengthAnswer answer, bool steps) => new(
        paddler, rest, answer.Hull?.Name, JsonOutput.Inches(answer.InHull), JsonOutput.Rounded(answer.Start.SpreadInches),
        JsonOutput.Inches(answer.Likely.Low), JsonOutput.Inches(answer.Likely.High), 0.9, JsonOutput.Kebab(answer.Start.Basis),
        JsonOutput.Inches(ExposedShaftRule.ReferenceBlade), answer.Explanation, answer.WhatNext,
        [.. answer.Improvements.Select(one => new ImprovementFacts(JsonOutput.Kebab(one.Measure), JsonOutput.Rounded(one.ToInches)))],
        answer.HandSpacing is { } hands ? JsonOutput.Inches(hands) : null, answer.Questions,
        steps ? [.. Measuring.All.Select(one => new MeasuringFacts(one.What, one.Steps))] : null);
}

/// <summary>A measure that would improve a start length, and the spread it would leave.</summary>
internal sealed record ImprovementFacts(string Measure, double SpreadIn);

/// <summary>How to take a measure alone.</summary>
internal sealed record MeasuringFacts(string What, IReadOnlyList<string> Steps);

/// <summary>What <c>transfer --json</c> prints.</summary>
internal sealed record TransferFacts(string? Paddler, string? RestFirst, TransferOriginFacts? From, IReadOnlyList<CarriedFacts> Lengths)
{
    public static TransferFacts Of(string? paddler, string? rest, TransferOriginFacts? from, IReadOnlyList<CarriedRow> rows) =>
        new(paddler, rest, from, [.. rows.Select(CarriedFacts.Of)]);
}

/// <summary>A length given by hand, and where it is good.</summary>
internal sealed record TransferOriginFacts(string Hull, string Paddle, double LengthIn);

/// <summary>The best length in one hull with one paddle.</summary>
internal sealed record CarriedFacts(
    string Hull, string Paddle, double BladeIn, double LengthIn, double? LikelyLowIn, double? LikelyHighIn, double? WithinQuarterInch,
    string Evidence, int Pieces, bool InRange, double ShortestIn, double LongestIn, double SeatHeightOffsetIn, bool SeatHeightMeasured,
    double BladeOffsetIn, double? SorenessCeilingIn, double? GainLeftPct, bool? DiminishingReturns)
{
    public static CarriedFacts Of(CarriedRow row) => new(
        row.Hull.Name, row.Paddle.Name, JsonOutput.Inches(row.Paddle.Blade), JsonOutput.Inches(row.Best),
        row.Likely is { } low ? JsonOutput.Inches(low.Low) : null, row.Likely is { } high ? JsonOutput.Inches(high.High) : null,
        row.WithinQuarterInch is { } within ? JsonOutput.Rounded(within) : null,
        JsonOutput.Kebab(row.Evidence), row.Pieces, row.InRange, JsonOutput.Inches(row.Paddle.Shortest),
            JsonOutput.Inches(row.Paddle.Longest),
        JsonOutput.Rounded(row.SeatHeightOffsetInches), row.Hull.SeatHeight is not null, JsonOutput.Rounded(row.BladeOffsetInches),
        row.SorenessCeiling is { } ceiling ? JsonOutput.Inches(ceiling) : null,
        row.GainLeftPercent is { } left ? JsonOutput.Rounded(left) : null,
            row.Evidence == CarriedEvidence.ByHand ? null : row.DiminishingReturns);
}

/// <summary>What <c>technique --json</c> prints; without <c>--hand</c> an array of the kept ones.</summary>
internal sealed record TechniqueFacts(
    string Paddler, string? RestFirst, string Hull, string Paddle, string Date, double LengthIn, double HandAboveEyeIn, double ShaftLeanDeg,
        bool LeanMeasured,
    bool FromPhoto, double ChangeIn, double SpreadIn, double PointsToIn, bool InRange, bool Overhead, string? Caution, bool Saved,
    double? BestWithoutIn = null, double? BestWithIn = null)
{
    public static TechniqueFacts Of(TechniqueAnswer answer, string? rest, bool saved) => new(
        answer.Paddler.Name, rest, answer.Hull.Name, answer.Paddle.Name, answer.Check.Date.ToString("yyyy-MM-dd"),
            JsonOutput.Inches(answer.Check.Length),
        JsonOutput.Rounded(answer.Check.HandAboveEyeInches), answer.Check.ShaftLeanDegrees ?? TechniqueRule.AssumedLeanDegrees,
        answer.Check.ShaftLeanDegrees is not null, answer.Check.FromPhoto, JsonOutput.Rounded(answer.Implied.ChangeInches),
        JsonOutput.Rounded(answer.Implied.SpreadInches), JsonOutput.Inches(answer.PointsTo), answer.InRange, answer.Implied.Overhead,
        answer.Implied.Overhead ? TechniqueRule.ShoulderCaution : null, saved);
}

/// <summary>What <c>order-sheet --json</c> prints.</summary>
internal sealed record OrderSheetFacts(
    string Paddler, string? RestFirst, string Date, IReadOnlyList<OrderLineFacts> Lines, IReadOnlyList<SteeringFacts> Steering,
        double ToleranceIn,
    IReadOnlyList<string> ForTheMaker, IReadOnlyList<string> Cutting, IReadOnlyList<string> Cautions)
{
    public static OrderSheetFacts Of(OrderSheet sheet) => new(
        sheet.Paddler, sheet.RestFirst?[0], sheet.Date.ToString("yyyy-MM-dd"),
            [.. sheet.Lines.Select(line => OrderLineFacts.Of(line, sheet.Unit))],
        [.. sheet.Steering.Select(line => SteeringFacts.Of(line.Hull, line.Paddle, sheet.RestFirst?[0], line.Proposal))],
            OrderSheet.ToleranceInches,
        sheet.ForTheMaker, sheet.Cutting, OrderSheet.Cautions);
}

/// <summary>What to order for one hull and blade.</summary>
internal sealed record OrderLineFacts(
    string Hull, string Paddle, double BladeIn, double? CutToIn, double? OrderAtIn, double LikelyLowIn, double LikelyHighIn,
    double WithinQuarterInch, int Pieces, string RestsOn, double GainLeftPct, bool DiminishingReturns,
    double? OwnFixedAtIn, double? SorenessCeilingIn, string Risk)
{
    public static OrderLineFacts Of(OrderLine line, LengthUnit unit) => new(
        line.Hull, line.Paddle, JsonOutput.Inches(line.Blade), line.NotNow ? null : JsonOutput.Inches(line.CutTo),
            line.NotNow ? null : JsonOutput.Inches(line.OrderAt),
        JsonOutput.Inches(line.LikelyLow), JsonOutput.Inches(line.LikelyHigh), JsonOutput.Rounded(line.WithinQuarterInch), line.Pieces,
            line.RestsOn,
        JsonOutput.Rounded(line.GainLeftPercent), line.DiminishingReturns,
        line.FixedAt is { } own ? JsonOutput.Inches(own) : null, line.SorenessCeiling is { } ceiling ? JsonOutput.Inches(ceiling) : null,
            OrderWords.Risk(line, unit));
}

/// <summary>What <c>steering --json</c> prints.</summary>
internal sealed record SteeringFacts(
    string Hull, string Paddle, string? RestFirst, double LengthIn, double LowIn, double HighIn, bool LargeBlade, string Why,
        IReadOnlyList<string> Cautions)
{
    public static SteeringFacts Of(string hull, string paddle, string? rest, SteeringProposal proposal) => new(
        hull, paddle, rest, JsonOutput.Inches(proposal.Length), JsonOutput.Inches(proposal.Low), JsonOutput.Inches(proposal.High),
            proposal.Large,
            SteeringWords.Why(proposal), SteeringWords.Cautions);
}
