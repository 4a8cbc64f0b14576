using TrialLog.Application.Coaching;
using TrialLog.Application.Logging;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Commands.Json;

/// <summary>What <c>report --json</c> prints: what was written, and where.</summary>
internal sealed record ReportFacts(
    string File, string Format, string Paddler, string Hull, string Paddle, int Outings, int Pieces, int Notes);

/// <summary>One note of <c>note list --json</c>.</summary>
internal sealed record NoteFacts(
    int Number, Guid Id, string Paddler, string About, Guid AboutId, string On, string Author, string WrittenAt, string Text)
{
    public static NoteFacts Of(int number, CoachNote note, Paddler paddler, string on) => new(
        number, note.Id, paddler.Name, note.About.ToString().ToLowerInvariant(), note.AboutId, on, note.Author,
            Moment(note.WrittenAt), note.Text);

    /// <summary>A moment in UTC, ISO 8601.</summary>
    public static string Moment(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ");
}

/// <summary>One card of <c>history --advice --json</c>.</summary>
internal sealed record AdviceFacts(
    int Number, Guid Id, string GivenAt, string Paddler, string Hull, string Paddle, int Outings, int Pieces, CardFacts Card,
    double BestIn, double LikelyLowIn, double LikelyHighIn, double GainLeftPct, bool DiminishingReturns, double? BestMovedIn,
    string? PaddledOuting, IReadOnlyList<double>? PaddledLengthsIn, string Followed, long AsOfChange,
    bool Blind, string? By, string? Because, IReadOnlyList<double> OwnLengthsIn, double? TaughtFromIn, double? TaughtToIn, double? TaughtS)
{
    public static AdviceFacts Of(NumberedAdvice advice, Paddler paddler,
        IReadOnlyDictionary<Guid, string> hulls, IReadOnlyDictionary<Guid, string> paddles)
    {
        GivenCard card = advice.Card;
        Outing? paddled = advice.Advice.Paddled;
        return new AdviceFacts(
            advice.Number, card.Id, NoteFacts.Moment(card.GivenAt), paddler.Name, hulls.GetValueOrDefault(card.HullId, ""),
                paddles.GetValueOrDefault(card.PaddleId, ""),
            card.Outings, card.Pieces, CardFacts.Of(card), JsonOutput.Inches(card.Best), JsonOutput.Inches(card.LikelyLow),
                JsonOutput.Inches(card.LikelyHigh),
            JsonOutput.Rounded(card.GainLeftPercent), card.DiminishingReturns,
                advice.MovedInches is { } moved ? JsonOutput.Rounded(moved) : null,
            paddled is null ? null : FindOuting.NameOf(paddled),
            paddled is null ? null : [.. paddled.Pieces.OrderBy(piece => piece.Order).Select(piece => JsonOutput.Inches(piece.Length))],
            advice.Advice.MatchInWords, card.AsOfChange,
            card.Blind, card.By, card.Because, [.. card.OwnLengths.Select(JsonOutput.Inches)],
            advice.Lesson is { } lesson ? JsonOutput.Inches(lesson.Before) : null,
                advice.Lesson is { } after ? JsonOutput.Inches(after.After) : null,
            advice.Lesson is { } worth ? JsonOutput.Rounded(worth.Seconds) : null);
    }
}

/// <summary>What <c>history --held --json</c> prints.</summary>
internal sealed record HeldFacts(int Ranges, int RangesHeld, double PRangeHolds, int Forecasts, int ForecastsHeld, int ForecastsOpen);

/// <summary>What <c>history --rederive --json</c> prints.</summary>
internal sealed record RederivedFacts(AdviceFacts Given, NextFacts Again, bool Same, IReadOnlyList<DifferenceFacts> Differences)
{
    public static RederivedFacts Of(
        Rederived again, Paddler paddler, IReadOnlyDictionary<Guid, string> hulls, IReadOnlyDictionary<Guid, string> paddles) => new(
        AdviceFacts.Of(again.Given, paddler, hulls, paddles), NextFacts.Of(again.Again), again.Same,
        [.. again.Differences.Select(one => new DifferenceFacts(one.What, one.Given, one.Again))]);
}

/// <summary>One thing that came out different.</summary>
internal sealed record DifferenceFacts(string What, string Given, string Again);
