using TrialLog.Application.Files;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary>The pieces found in a recording as a table, over a small picture of its speed.</summary>
internal static class RecordingText
{
    public static void Write(TextWriter to, RecordedOuting recording, RecordingLengths lengths, LengthUnit unit, int width)
    {
        to.WriteLine($"{recording.FileName}: {recording.Date:yyyy-MM-dd} {recording.Time:HH:mm}, {Clock(recording.Duration)}. " +
            $"{recording.ClockNote}");
        if (!recording.Mended.IsNothing)
            to.WriteLine(recording.Mended.ToString());
        to.WriteLine();
        int columns = Math.Min(width - 2, 100);
        (string bars, double fastest) = SpeedBars.Draw(recording, columns, Strokes.Fine);
        to.WriteLine("  " + bars);
        if (SpeedBars.Presses(recording, columns) is { Length: > 0 } presses)
            to.WriteLine("  " + presses);
        to.WriteLine($"  speed from start to end, up to {fastest:0.0} m/s{(recording.Presses.Count > 0 ? "; ▲ the lap button" : "")}");
        to.WriteLine();
        to.WriteLine("   #  from      to        distance  time      pace       error  course      length");
        int next = 0;
        for (int i = 0; i < recording.Proposals.Count; i++)
        {
            PieceProposal piece = recording.Proposals[i];
            string length = piece.Kept ? lengths.Of(next++, unit) ?? "?" : $"left out: {piece.LeftOutBecause}";
            to.WriteLine($"  {i + 1,2}  {Clock(piece.Start),-8}  {Clock(piece.End),-8}  {piece.Distance.Metres,6:0} m  " +
                $"{Say.Clock(piece.Time.Seconds),-8}  "
                + $"{Say.Pace(piece.MetresPerSecond),-9}  {piece.SpeedErrorPercent,4:0.0}%  "
                + $"{TextForms.Course.Write(piece.Course),-10}  {length}");
            foreach (string remark in piece.Remarks)
                Wrapped.Write(to, remark, width, "      ", 6);
        }

        Wrapped.Write(to, RecordingWords.WhoseTime, width);
        foreach (string line in RecordingSummary.Lines(recording, lengths, unit))
            Wrapped.Write(to, line, width);
        foreach (RecordingQuestion question in recording.Questions)
            Wrapped.Write(to, question.Says, width);
        to.WriteLine();
    }

    internal static string Clock(TimeSpan time) =>
        time.TotalSeconds < 1 ? "0:00" : PieceTime.FromSeconds(Math.Floor(time.TotalSeconds)).ToString();
}
