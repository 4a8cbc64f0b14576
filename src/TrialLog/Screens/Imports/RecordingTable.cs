using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Imports;

/// <summary>The lines of a recording's pieces.</summary>
internal static class RecordingTable
{
    /// <summary>The widths of the columns.</summary>
    private const int NumberWidth = 3, TimeWidth = 8, DistanceWidth = 9, PaceWidth = 10, CourseWidth = 12;

    public static readonly string Headings =
        $"   {"#",-NumberWidth}{"from",-TimeWidth}{"to",-TimeWidth}{"distance",-DistanceWidth}{"time",-TimeWidth}{"pace",-PaceWidth}" +
            $"{"course",-CourseWidth}length";

    /// <summary>Writes the line of one piece.</summary>
    public static void Row(Brush brush, int row, RecordingInHand hand, int piece, LengthUnit unit)
    {
        PieceProposal proposal = hand.Recording.Proposals[piece];
        bool here = piece == hand.At;
        string length = proposal.LeftOutBecause is { } reason ? $"✗ {reason}" : hand.LengthOf(piece) is { } known
            ? Say.Length(known, unit) : "?";
        string line = (here ? " ▸ " : "   ") + brush.Cell($"{piece + 1}", NumberWidth)
            + brush.Cell(Clock(proposal.Start), TimeWidth) + brush.Cell(Clock(proposal.End), TimeWidth)
            + brush.Cell($"{proposal.Distance.Metres:0} m", DistanceWidth) + brush.Cell(Say.Clock(proposal.Time.Seconds), TimeWidth)
            + brush.Cell(Say.Clock(1000 / proposal.MetresPerSecond) + " /km", PaceWidth)
            + brush.Cell(TextForms.Course.Write(proposal.Course), CourseWidth) + length;
        brush.Text(0, row, line, here ? Tone.Selected : proposal.Kept ? Tone.Plain : Tone.Dim);
    }

    /// <summary>What was answered so far, in a line.</summary>
    public static string Answers(RecordingInHand hand) =>
        $"effort {Or(hand.Effort)} · soreness {Or(hand.Soreness)} · wind " +
            $"{Or(hand.Wind)}{(hand.Place is { } place ? $" · {place}" : "")}{(hand.Typed is null ? "" : " · lengths as typed")}";

    /// <summary>Lengths apart by commas; null for none.</summary>
    /// <exception cref="InvalidValueException">One of them is not a length.</exception>
    public static IReadOnlyList<Length>? Lengths(string text, LengthUnit unit) =>
        text.Length == 0 ? null : [.. text.Split(',').Select(one => Length.Parse(one, unit))];

    /// <summary>A time since the start, in whole seconds.</summary>
    public static string Clock(TimeSpan time) =>
        time.TotalSeconds < 1 ? "0:00" : PieceTime.FromSeconds(Math.Floor(time.TotalSeconds)).ToString();

    private static string Or<T>(T? value)
        where T : struct => value?.ToString() ?? "–";
}
