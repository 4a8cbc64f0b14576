using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Plots;

/// <summary>Best length with its likely range after each outing, above the gain left falling towards the worthwhile line.</summary>
internal static class ProgressPlot
{
    private const int Gutter = 8;

    /// <summary>Draws it.</summary>
    /// <param name="points">The search, oldest first; none for an empty picture.</param>
    /// <param name="unit">The paddler's unit.</param>
    /// <param name="worthwhilePercent">The smallest change of speed that matters.</param>
    /// <param name="columns">Width in cells.</param>
    /// <param name="rows">Height in cells.</param>
    /// <param name="strokes">The glyphs that the terminal has.</param>
    public static Sketch Draw(IReadOnlyList<ProgressPoint> points, LengthUnit unit, double worthwhilePercent, int columns, int rows,
        Strokes strokes)
    {
        var sketch = new Sketch(Math.Max(24, columns), Math.Max(10, rows), strokes);
        if (points.Count == 0)
        {
            sketch.Text(0, 0, "No outing yet.", Ink.Label);
            return sketch;
        }

        int gainRows = Math.Max(3, (sketch.Rows - 3) / 3), lengthRows = sketch.Rows - 3 - gainRows;
        var across = new Scale(0, Math.Max(1, points.Count - 1), (Gutter + 2) * 2, sketch.Columns * 2 - 3);
        Lengths(sketch, points, across, lengthRows, unit);
        Gains(sketch, points, across, lengthRows + 1, gainRows, worthwhilePercent);
        Outings(sketch, points, across, lengthRows + 1 + gainRows);
        return sketch;
    }

    private static void Lengths(Sketch sketch, IReadOnlyList<ProgressPoint> points, Scale across, int rows, LengthUnit unit)
    {
        double low = points.Min(point => point.LikelyLow.Inches), high = points.Max(point => point.LikelyHigh.Inches);
        double room = Math.Max(0.25, (high - low) * 0.06);
        var up = new Scale(high + room, low - room, 0, rows * 4 - 1);
        Upright(sketch, 0, rows);
        foreach ((double inches, string label) in up.Lengths(unit, 8))
            Tick(sketch, up.Dot(inches) / 4, label);
        sketch.Text(0, 0, unit == LengthUnit.Centimetres ? "cm" : "in", Ink.Label);

        for (int index = 0; index < points.Count; index++)
        {
            ProgressPoint point = points[index];
            int x = across.Dot(index);
            sketch.Line(x, up.Dot(point.LikelyLow.Inches), x, up.Dot(point.LikelyHigh.Inches), Ink.Band);
        }

        for (int index = 0; index < points.Count; index++)
            sketch.Mark(across.Dot(index), up.Dot(points[index].Best.Inches), points[index].DiminishingReturns ? Ink.Best : Ink.Piece);
    }

    private static void Gains(Sketch sketch, IReadOnlyList<ProgressPoint> points, Scale across, int firstRow, int rows, double worthwhile)
    {
        double high = Math.Max(worthwhile * 1.3, points.Max(point => point.GainLeftPercent) * 1.1);
        var up = new Scale(high, 0, firstRow * 4, (firstRow + rows) * 4 - 1);
        Upright(sketch, firstRow, rows);
        for (int x = across.FirstDot; x <= across.LastDot; x += 3)
            sketch.Dot(x, up.Dot(worthwhile), Ink.Zone);
        Tick(sketch, up.Dot(worthwhile) / 4, string.Create(CultureInfo.InvariantCulture, $"{worthwhile:0.0#} %"));
        string line = "worthwhile change";
        if (sketch.Columns > 50)
            sketch.Text(sketch.Columns - line.Length - 1, Math.Max(firstRow, up.Dot(worthwhile) / 4 - 1), line, Ink.Zone);
        Tick(sketch, firstRow + rows - 1, "0 %");

        for (int index = 0; index + 1 < points.Count; index++)
        {
            sketch.Line(across.Dot(index), up.Dot(points[index].GainLeftPercent),
                across.Dot(index + 1), up.Dot(points[index + 1].GainLeftPercent), Ink.Curve);
        }

        if (points.Count == 1)
            sketch.Mark(across.Dot(0), up.Dot(points[0].GainLeftPercent), Ink.Curve);
    }

    private static void Outings(Sketch sketch, IReadOnlyList<ProgressPoint> points, Scale across, int axisRow)
    {
        sketch.Text(Gutter, axisRow, "└" + new string('─', sketch.Columns - Gutter - 1), Ink.Axis);
        int free = 0;
        for (int index = 0; index < points.Count; index++)
        {
            string label = points[index].Outings == 0 ? "start" : points[index].Outings.ToString(CultureInfo.InvariantCulture);
            int start = across.Dot(index) / 2 - label.Length / 2;
            if (start <= free || start + label.Length > sketch.Columns)
                continue;
            sketch.Text(across.Dot(index) / 2, axisRow, "┴", Ink.Axis);
            sketch.Text(start, axisRow + 1, label, Ink.Label);
            free = start + label.Length + 1;
        }

        sketch.Text(0, axisRow + 1, "outing", Ink.Label);
    }

    private static void Upright(Sketch sketch, int firstRow, int rows)
    {
        for (int row = firstRow; row < firstRow + rows; row++)
            sketch.Text(Gutter, row, "│", Ink.Axis);
    }

    private static void Tick(Sketch sketch, int row, string label)
    {
        sketch.Text(Gutter - 1 - label.Length, row, label, Ink.Label);
        sketch.Text(Gutter, row, "┤", Ink.Axis);
    }
}
