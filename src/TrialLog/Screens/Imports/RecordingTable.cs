using System.Globalization;
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
    private const int NumberWidth = 3, TimeWidth = 8, DistanceWidth = 9, PaceWidth = 9, ErrorWidth = 6, CourseWidth = 11;

    private const int RestFrom = 3 + NumberWidth + 3 * TimeWidth + DistanceWidth + PaceWidth;

    public static readonly string Headings =
        $"   {"#",-NumberWidth}{"from",-TimeWidth}{"to",-TimeWidth}{"distance",-DistanceWidth}{"time",-TimeWidth}{"pace",-PaceWidth}" +
            $"{"error",-ErrorWidth}{"course",-CourseWidth}length";

    /// <summary>Writes the line of one piece.</summary>
    public static void Row(Brush brush, int row, RecordingInHand hand, int piece)
    {
        PieceProposal proposal = hand.Recording.Proposals[piece];
        bool here = piece == hand.At;
        // Of a piece that is left out the reason matters more than how it lay.
        string rest = proposal.LeftOutBecause is { } reason
            ? "✗ " + (reason.Length + 2 <= brush.Columns - RestFrom ? reason : reason.Split(':')[0])
            : brush.Cell(string.Create(CultureInfo.InvariantCulture, $"{proposal.SpeedErrorPercent:0.0}%"), ErrorWidth)
                + brush.Cell(TextForms.Course.Write(proposal.Course), CourseWidth) + (hand.LengthOf(piece) ?? "?");
        string line = (here ? " ▸ " : "   ") + brush.Cell($"{piece + 1}", NumberWidth)
            + brush.Cell(Clock(proposal.Start), TimeWidth) + brush.Cell(Clock(proposal.End), TimeWidth)
            + brush.Cell($"{proposal.Distance.Metres:0} m", DistanceWidth) + brush.Cell(Say.Clock(proposal.Time.Seconds), TimeWidth)
            + brush.Cell(Say.Pace(proposal.MetresPerSecond), PaceWidth) + rest;
        brush.Text(0, row, line, here ? Tone.Selected : proposal.Kept ? Tone.Plain : Tone.Dim);
    }

    /// <summary>What was answered so far, in a line.</summary>
    public static string Answers(RecordingInHand hand) =>
        $"times by the watch · effort {(hand.Efforts.Count == 0 ? "–" : string.Join(", ", hand.Efforts))} · soreness " +
            $"{Or(hand.Soreness)} · wind " +
            $"{Or(hand.Wind)}{(hand.Place is { } place ? $" · {place}" : "")}{(hand.HasTypedLengths ? " · lengths as typed" : "")}";

    /// <summary>A time since the start, in whole seconds.</summary>
    public static string Clock(TimeSpan time) =>
        time.TotalSeconds < 1 ? "0:00" : PieceTime.FromSeconds(Math.Floor(time.TotalSeconds)).ToString();

    private static string Or<T>(T? value)
        where T : struct => value?.ToString() ?? "–";
}
