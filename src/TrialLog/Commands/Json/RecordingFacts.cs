using TrialLog.Application.Files;
using TrialLog.Application.Text;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Bodies;

namespace TrialLog.Commands.Json;

/// <summary>
/// What a recording shows, for programs: its pieces as they would be saved, and what must be settled first. Of a blind card letters stand
/// in place of lengths until they are saved.
/// </summary>
internal sealed record RecordingFacts(
    string StartedAt, string Clock, string Read, bool Saved,
        IReadOnlyList<RecordedPieceFacts> Pieces, IReadOnlyList<string> Questions, IReadOnlyList<double> PressesS,
        IReadOnlyList<double> CurrentsMPerS, bool TideTurned, IReadOnlyList<RecordedLengthFacts> ByLength)
{
    public static RecordingFacts Of(RecordedOuting recording, RecordingLengths lengths, LengthUnit unit, bool saved)
    {
        int next = 0;
        return new RecordingFacts(
            recording.StartedAt.ToString("yyyy-MM-dd'T'HH:mm:sszzz", System.Globalization.CultureInfo.InvariantCulture),
            recording.ClockNote,
            Application.Files.RecordingWords.Of(recording.Shape),
            saved,
            [.. recording.Proposals.Select(
                (piece, i) => RecordedPieceFacts.Of(i + 1, piece, lengths, piece.Kept ? next++ : int.MaxValue, unit))],
            [.. recording.Questions.Select(question => question.Says)],
            [.. recording.Presses.Select(press => press.TotalSeconds)],
            [.. recording.Currents.Select(current => Math.Round(current, 3))],
            RecordingSummary.TideTurned(recording.Currents),
            [.. RecordingSummary.ByLength(recording, lengths).Select(of => new RecordedLengthFacts(
                lengths.Blind ? null : of.Length.Inches, lengths.Blind ? lengths.Shown(of.Length, unit) : null,
                Rounded(of.StrokeRate), Rounded(of.MetresPerStroke), Rounded(of.HeartRateAtEqualSpeed)))]);
    }

    private static double? Rounded(double? value) => value is { } known ? Math.Round(known, 2) : null;
}

/// <summary>What a recording knows of the pieces of one length: their means.</summary>
internal sealed record RecordedLengthFacts(
    double? LengthIn, string? Letter, double? StrokeRate, double? MetresPerStroke, double? HeartRateAtEqualSpeed);

/// <summary>One piece found in a recording.</summary>
internal sealed record RecordedPieceFacts(
    int Number, double FromS, double ToS, double DistanceM, double TimeS, double SpeedMPerS, double SpeedErrorPct, string Course,
        double? LengthIn, string? Letter, string? LeftOutBecause,
    int? HeartRate, double? StrokeRate, double? MetresPerStroke, double? FadePct,
        IReadOnlyList<double> QuartersPct, string? Step, IReadOnlyList<string> Remarks)
{
    public static RecordedPieceFacts Of(int number, PieceProposal piece, RecordingLengths lengths, int order, LengthUnit unit) => new(
        number, piece.Start.TotalSeconds, piece.End.TotalSeconds, Math.Round(piece.Distance.Metres, 1), Math.Round(piece.Time.Seconds, 1),
            Math.Round(piece.MetresPerSecond, 4),
        Math.Round(piece.SpeedErrorPercent, 2), TextForms.Course.Write(piece.Course),
            order < lengths.All.Count && !lengths.Blind ? lengths.All[order].Inches : null,
        lengths.Blind ? lengths.Of(order, unit) : null, piece.LeftOutBecause,
        piece.HeartRate?.BeatsPerMinute, piece.StrokeRate?.StrokesPerMinute,
            piece.MetresPerStroke is { } metres ? Math.Round(metres, 2) : null, piece.FadePercent, piece.QuarterPercent,
        piece.StepName, piece.Remarks);
}
