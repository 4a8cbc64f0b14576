using System.Globalization;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;

namespace TrialLog.Plots;

/// <summary>
/// Speed over ground through a recording, with the pieces found along its time axis, and where the lap button was pressed.
/// </summary>
internal static class SpeedPlot
{
    private const int Gutter = 8;

    /// <summary>Draws it.</summary>
    /// <param name="recording">The recording, its pieces corrected so far.</param>
    /// <param name="here">Which piece is pointed at.</param>
    /// <param name="columns">Width in cells.</param>
    /// <param name="rows">Height in cells.</param>
    /// <param name="strokes">The glyphs that the terminal has.</param>
    public static Sketch Draw(RecordedOuting recording, int here, int columns, int rows, Strokes strokes)
    {
        var sketch = new Sketch(Math.Max(24, columns), Math.Max(5, rows), strokes);
        int axisRow = sketch.Rows - 2;
        var across = new Scale(0, Math.Max(1, recording.Duration.TotalSeconds), (Gutter + 1) * Sketch.DotsAcross,
            sketch.Columns * Sketch.DotsAcross - 3);
        Speeds(sketch, recording.SpeedSeries((sketch.Columns - Gutter - 2) * Sketch.DotsAcross), across, axisRow);
        Times(sketch, recording.Duration, across, axisRow);
        Pieces(sketch, recording.Proposals, here, across, axisRow);
        foreach (TimeSpan press in recording.Presses)
            sketch.Text(across.Dot(press.TotalSeconds) / Sketch.DotsAcross, axisRow, "▲", Ink.Label);
        return sketch;
    }

    // The numbers of the pieces have the top row to themselves.
    private static void Speeds(Sketch sketch, IReadOnlyList<SpeedPoint> speeds, Scale across, int axisRow)
    {
        double fastest = Math.Max(0.5, speeds.Max(point => point.MetresPerSecond ?? 0));
        var up = new Scale(fastest, 0, Sketch.DotsDown, axisRow * Sketch.DotsDown - 1);
        for (int row = 1; row < axisRow; row++)
            sketch.Text(Gutter, row, "│", Ink.Axis);
        foreach (double speed in up.RoundValues(Math.Max(1, (axisRow - 1) / 2)))
        {
            int row = Math.Clamp(up.Dot(speed) / Sketch.DotsDown, 1, axisRow - 1);
            string label = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(speed):0.#}");
            sketch.Text(Gutter - 1 - label.Length, row, label, Ink.Label);
            sketch.Text(Gutter, row, "┤", Ink.Axis);
        }

        sketch.Text(0, 1, "m/s", Ink.Label);
        for (int index = 0; index + 1 < speeds.Count; index++)
        {
            if (speeds[index].MetresPerSecond is { } speed && speeds[index + 1].MetresPerSecond is { } next)
                sketch.Line(across.Dot(speeds[index].At.TotalSeconds), up.Dot(speed), across.Dot(speeds[index + 1].At.TotalSeconds),
                    up.Dot(next), Ink.Curve);
        }
    }

    private static void Times(Sketch sketch, TimeSpan duration, Scale across, int axisRow)
    {
        sketch.Text(Gutter, axisRow, "└" + new string('─', sketch.Columns - Gutter - 1), Ink.Axis);
        double step = new double[] { 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400 }.FirstOrDefault(
            seconds => seconds / Math.Max(1, duration.TotalSeconds) * (sketch.Columns - Gutter) >= 9, 28800);
        for (double seconds = step; seconds <= duration.TotalSeconds; seconds += step)
        {
            string label = Say.Clock(seconds);
            int column = across.Dot(seconds) / Sketch.DotsAcross;
            sketch.Text(column, axisRow, "┴", Ink.Axis);
            if (column + label.Length / 2 < sketch.Columns)
                sketch.Text(column - label.Length / 2, axisRow + 1, label, Ink.Label);
        }

        sketch.Text(0, axisRow + 1, "time", Ink.Label);
    }

    private static void Pieces(Sketch sketch, IReadOnlyList<PieceProposal> pieces, int here, Scale across, int axisRow)
    {
        for (int index = 0; index < pieces.Count; index++)
        {
            PieceProposal piece = pieces[index];
            Ink ink = index == here ? Ink.Now : piece.Kept ? Ink.Best : Ink.Faint;
            foreach (Leg leg in piece.Legs)
            {
                for (int column = across.Dot(leg.Start.TotalSeconds) / 2; column <= across.Dot(leg.End.TotalSeconds) / 2; column++)
                    sketch.Text(column, axisRow, piece.Kept ? "━" : "·", ink);
            }

            string number = index == here ? $"[{index + 1}]" : $"{index + 1}";
            int middle = across.Dot((piece.Start + piece.End).TotalSeconds / 2) / 2 - number.Length / 2;
            if (index == here || Enumerable.Range(middle, number.Length).All(column => sketch.IsFree(column, 0)))
                sketch.Text(middle, 0, number, ink);
        }
    }
}
