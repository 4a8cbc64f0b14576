using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Classical;

namespace TrialLog.Commands.Json;

/// <summary>What <c>curve --json</c> prints: speed against length in percent of the speed at the best length.</summary>
internal sealed record CurveFacts(
    string Paddler, string Hull, string Paddle, string Standing, string ToDo, BestFacts Best, double CurrentIn, double WorthwhilePct,
    IReadOnlyList<CurvePointFacts> Points, IReadOnlyList<CurvePieceFacts> Pieces, ClassicalFacts? Classical)
{
    public static CurveFacts Of(Analysis analysis, ClassicalFit? classical) => new(
        analysis.Paddler.Name, analysis.Hull.Name, analysis.Paddle.Name, JsonOutput.Kebab(analysis.Standing), Verdict.ToDo(analysis),
        BestFacts.Of(analysis.Best),
        JsonOutput.Inches(analysis.Current), JsonOutput.Rounded(analysis.WorthwhilePercent),
        [.. analysis.Curve.Points.Select(point =>
            new CurvePointFacts(JsonOutput.Inches(point.Length), JsonOutput.Rounded(point.Percent), JsonOutput.Rounded(point.Low),
            JsonOutput.Rounded(point.High)))],
        [.. analysis.Curve.Pieces.Select(piece =>
            new CurvePieceFacts(piece.PieceId, piece.OutingId, JsonOutput.Inches(piece.Length), JsonOutput.Rounded(piece.Percent),
            JsonOutput.Rounded(piece.Weight)))],
        classical is null ? null : ClassicalFacts.Of(classical, ClassicalWords.Of(classical, analysis.Hull, analysis.Paddler.Unit)));
}

internal sealed record CurvePointFacts(double LengthIn, double SpeedPct, double LowPct, double HighPct);

internal sealed record CurvePieceFacts(Guid PieceId, Guid OutingId, double LengthIn, double SpeedPct, double Weight);

/// <summary>The classical view: a mixed model by REML without a prior.</summary>
internal sealed record ClassicalFacts(
    int Pieces, int Outings, double CentreIn, double OutingSdPct, double PieceSdPct,
    IReadOnlyList<CoefficientFacts> Coefficients, double? VertexIn, string? VertexShape, double? VertexLowIn, double? VertexHighIn,
        string Says)
{
    public static ClassicalFacts Of(ClassicalFit fit, string says) => new(
        fit.Pieces, fit.Outings, Finite(fit.CentreInches) ?? 0, Finite(fit.OutingSd) ?? 0, Finite(fit.PieceSd) ?? 0,
        [.. fit.Coefficients.Select(one => new CoefficientFacts(one.Name, Finite(one.Estimate) ?? 0, Finite(one.StandardError) ?? 0))],
        Finite(fit.VertexInches), fit.Vertex?.Shape.ToString().ToLowerInvariant(), Finite(fit.Vertex?.Low),
            Finite(fit.Vertex?.High), says);

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? JsonOutput.Rounded(number) : null;
}

internal sealed record CoefficientFacts(string Name, double Estimate, double StandardError);

/// <summary>One point of <c>progress --json</c>.</summary>
internal sealed record ProgressFacts(
    string? Date, int Outings, string Standing, double BestIn, double LikelyLowIn, double LikelyHighIn, double GainLeftPct,
        double PWorthwhileLeft,
        bool DiminishingReturns)
{
    public static ProgressFacts Of(ProgressPoint point) => new(
        point.Date?.ToString("yyyy-MM-dd"), point.Outings, JsonOutput.Kebab(point.Then.Standing), JsonOutput.Inches(point.Best),
            JsonOutput.Inches(point.LikelyLow),
            JsonOutput.Inches(point.LikelyHigh),
        JsonOutput.Rounded(point.GainLeftPercent), JsonOutput.Rounded(point.ProbabilityWorthwhileLeft), point.DiminishingReturns);
}
