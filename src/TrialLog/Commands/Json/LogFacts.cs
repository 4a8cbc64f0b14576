using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;

namespace TrialLog.Commands.Json;

/// <summary>One outing of <c>history --json</c>.</summary>
internal sealed record OutingFacts(
    string Name, string Paddler, string Date, string? Time, string Label, string Hull, string? Place, int? WindBeaufort, string? Water,
        string? Notes,
    IReadOnlyList<PieceFacts> Pieces)
{
    public static OutingFacts Of(Outing outing, Paddler paddler, Hull hull, IReadOnlyDictionary<Guid, Paddle> paddles) => new(
        FindOuting.NameOf(outing), paddler.Name, outing.Date.ToString("yyyy-MM-dd"), outing.Time?.ToString("HH:mm"),
            outing.Label, hull.Name,
        outing.Place, outing.Wind?.Number, outing.Water, outing.Notes,
            [.. outing.Pieces.Select(piece => PieceFacts.Of(piece, paddles[piece.PaddleId]))]);
}

internal sealed record PieceFacts(
    int Piece, string Paddle, double LengthIn, double DistanceM, double TimeS, double SpeedMPerS, double? Effort, int? HeartRate,
        double? StrokeRate,
    string Course, double? Soreness, double? FadePct, string? ExcludedBecause, string? Notes)
{
    public static PieceFacts Of(Piece piece, Paddle paddle) => new(
        piece.Order, paddle.Name, JsonOutput.Inches(piece.Length), piece.Distance.Metres, piece.Time.Seconds,
            JsonOutput.Rounded(piece.MetresPerSecond),
        piece.Effort?.Points, piece.HeartRate?.BeatsPerMinute, piece.StrokeRate?.StrokesPerMinute, TextForms.Course.Write(piece.Course),
        piece.Soreness?.Points, piece.FadePercent, piece.ExcludedBecause, piece.Notes);
}

/// <summary>A paddler, for programs.</summary>
internal sealed record PaddlerFacts(
    string Name, string Unit, double StartIn, double StartSpreadIn, string StartBasis, bool SwapsOnWater, string? Goal)
{
    public static PaddlerFacts Of(Paddler paddler, IReadOnlyList<Hull> hulls)
    {
        StartLength start = StartLength.Of(paddler);
        return new PaddlerFacts(
            paddler.Name, paddler.Unit == LengthUnit.Centimetres ? "cm" : "in", JsonOutput.Inches(start.Length),
                JsonOutput.Rounded(start.SpreadInches),
            JsonOutput.Kebab(start.Basis), paddler.SwapsOnWater, GoalText.Of(paddler.Goal, hulls));
    }
}

/// <summary>A hull, for programs.</summary>
internal sealed record HullFacts(string Name, int Crew, double? SeatHeightIn)
{
    public static HullFacts Of(Hull hull) => new(hull.Name, hull.Crew, hull.SeatHeight is { } height ? JsonOutput.Inches(height) : null);
}

/// <summary>A paddle, for programs.</summary>
internal sealed record PaddleFacts(
    string Name, double BladeIn, double? BladeAreaIn2, bool Steering, double ShortestIn, double LongestIn, double StepIn,
        string? Owner, bool Club)
{
    public static PaddleFacts Of(Paddle paddle, IReadOnlyDictionary<Guid, string> paddlers) => new(
        paddle.Name, JsonOutput.Inches(paddle.Blade), paddle.BladeAreaSquareInches, paddle.Steering,
        JsonOutput.Inches(paddle.Shortest), JsonOutput.Inches(paddle.Longest), JsonOutput.Inches(paddle.Step),
        paddle.OwnerId is { } owner ? paddlers.GetValueOrDefault(owner) : null, paddle.BelongsToClub);
}
