using TrialLog.Application.Files;
using TrialLog.Application.Text;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Json;

/// <summary>What a recording shows, for programs: its pieces as they would be saved, and what must be settled first.</summary>
internal sealed record RecordingFacts(
    string StartedAt, string Clock, string Read, bool Saved,
        IReadOnlyList<RecordedPieceFacts> Pieces, IReadOnlyList<string> Questions, IReadOnlyList<double> CurrentsMS)
{
    public static RecordingFacts Of(RecordedOuting recording, IReadOnlyList<Length> lengths, bool saved)
    {
        int next = 0;
        return new RecordingFacts(
            recording.StartedAt.ToString("yyyy-MM-dd'T'HH:mm:sszzz", System.Globalization.CultureInfo.InvariantCulture),
            recording.ClockNote,
            Application.Files.RecordingWords.Of(recording.Shape),
            saved,
            [.. recording.Proposals.Select(
                (piece, i) => RecordedPieceFacts.Of(i + 1, piece, piece.Kept && next++ < lengths.Count ? lengths[next - 1] : null))],
            [.. recording.Questions.Select(question => question.Says)],
            [.. recording.Currents.Select(current => Math.Round(current, 3))]);
    }
}

/// <summary>One piece found in a recording.</summary>
internal sealed record RecordedPieceFacts(
    int Number, double FromS, double ToS, double DistanceM, double TimeS, double SpeedMS, double SpeedErrorPct, string Course,
        double? LengthIn, string? LeftOutBecause,
    int? HeartRate, double? StrokeRate, double? MetresPerStroke, double? FadePct,
        IReadOnlyList<double> QuartersPct, string? Step, IReadOnlyList<string> Remarks)
{
    public static RecordedPieceFacts Of(int number, PieceProposal piece, Length? length) => new(
        number, piece.Start.TotalSeconds, piece.End.TotalSeconds, Math.Round(piece.Distance.Metres, 1), Math.Round(piece.Time.Seconds, 1),
            Math.Round(piece.MetresPerSecond, 4),
        Math.Round(piece.SpeedErrorPercent, 2), TextForms.Course.Write(piece.Course), length?.Inches, piece.LeftOutBecause,
        piece.HeartRate?.BeatsPerMinute, piece.StrokeRate?.StrokesPerMinute,
            piece.MetresPerStroke is { } metres ? Math.Round(metres, 2) : null, piece.FadePercent, piece.QuarterPercent,
        piece.StepName, piece.Remarks);
}
