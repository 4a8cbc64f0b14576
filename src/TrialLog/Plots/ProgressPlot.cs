using System.Globalization;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Plots;

/// <summary>
/// Best length with its likely range after each outing, above what the rule for stopping looks at: the chance of a worthwhile gain
/// against the chance to stop below, and the gain left against the price of an outing.
/// </summary>
internal static class ProgressPlot
{
    private const int Gutter = 8;

    /// <summary>From so many rows on the panels have a blank row between them.</summary>
    private const int RoomyFrom = 24;

    /// <summary>Draws it.</summary>
    /// <param name="points">The search, oldest first; none for an empty picture.</param>
    /// <param name="unit">The paddler's unit.</param>
    /// <param name="columns">Width in cells.</param>
    /// <param name="rows">Height in cells.</param>
    /// <param name="strokes">The glyphs that the terminal has.</param>
    public static Sketch Draw(IReadOnlyList<ProgressPoint> points, LengthUnit unit, int columns, int rows, Strokes strokes)
    {
        var sketch = new Sketch(Math.Max(24, columns), Math.Max(10, rows), strokes);
        if (points.Count == 0)
        {
            sketch.Text(0, 0, "No outing yet.", Ink.Label);
            return sketch;
        }

        int gap = sketch.Rows >= RoomyFrom ? 1 : 0, body = sketch.Rows - 2 - 2 * gap;
        int falling = Math.Max(2, body * 3 / 10), lengthRows = body - 2 * falling;
        var across = new Scale(0, Math.Max(1, points.Count - 1), (Gutter + 2) * 2, sketch.Columns * 2 - 3);
        Lengths(sketch, points, across, lengthRows, unit);
        double stop = 100 * TuningSettings.Default.StopBelow, price = points[^1].Then.PricePercent;
        Falling(sketch, points, across, lengthRows + gap, falling, "chance of a worthwhile gain", $"stop below {Percent(stop)}",
            point => Math.Clamp(100 * point.ProbabilityWorthwhileLeft, 0.1, 100), stop);
        Falling(sketch, points, across, lengthRows + falling + 2 * gap, falling, "gain left", $"price of an outing {Percent(price)}",
            point => Math.Clamp(point.GainLeftPercent, 0.001, 10), price);
        Outings(sketch, points, across, sketch.Rows - 2);
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
        sketch.Text(0, 0, Say.Symbol(unit), Ink.Label);

        for (int index = 0; index < points.Count; index++)
        {
            ProgressPoint point = points[index];
            int x = across.Dot(index);
            sketch.Line(x, up.Dot(point.LikelyLow.Inches), x, up.Dot(point.LikelyHigh.Inches), Ink.Band);
        }

        for (int index = 0; index < points.Count; index++)
            sketch.Mark(across.Dot(index), up.Dot(points[index].Best.Inches), points[index].DiminishingReturns ? Ink.Best : Ink.Piece);
        Name(sketch, 0, 1, "best length, likely range");
    }

    // It falls by the same share rather than by the same amount from outing to outing, and its line lies near nought: a logarithmic scale.
    private static void Falling(Sketch sketch, IReadOnlyList<ProgressPoint> points, Scale across, int firstRow, int rows, string name,
        string lineName, Func<ProgressPoint, double> height, double line)
    {
        double[] heights = [.. points.Select(point => Math.Log10(height(point)))];
        double at = Math.Log10(line);
        var up = new Scale(Math.Max(at, heights.Max()) + 0.15, Math.Min(at, heights.Min()) - 0.15, firstRow * 4, (firstRow + rows) * 4 - 1);
        Upright(sketch, firstRow, rows);
        int lineRow = up.Dot(at) / 4;
        for (int power = -3; power <= 2; power++)
        {
            int row = up.Dot(power) / 4;
            if (power < Math.Max(up.From, up.To) && power > Math.Min(up.From, up.To) && row != lineRow)
                Tick(sketch, row, Percent(Math.Pow(10, power)));
        }

        Tick(sketch, lineRow, Percent(line));
        for (int x = across.FirstDot; x <= across.LastDot; x += 3)
            sketch.Dot(x, up.Dot(at), Ink.Zone);
        for (int index = 0; index + 1 < points.Count; index++)
            sketch.Line(across.Dot(index), up.Dot(heights[index]), across.Dot(index + 1), up.Dot(heights[index + 1]), Ink.Curve);
        if (points.Count == 1)
            sketch.Mark(across.Dot(0), up.Dot(heights[0]), Ink.Curve);
        Name(sketch, firstRow, rows, $"{name}; ┄ {lineName}");
    }

    // On the first row on which it lies over nothing drawn.
    private static void Name(Sketch sketch, int firstRow, int rows, string name)
    {
        int from = sketch.Columns - name.Length - 1;
        if (from <= sketch.Columns / 3)
            return;
        int row = Enumerable.Range(firstRow, rows).FirstOrDefault(
            row => Enumerable.Range(from - 1, name.Length + 2).All(column => sketch[column, row].Glyph == ' '), firstRow);
        sketch.Text(from, row, name, Ink.Label);
    }

    // To one digit: no price is known better.
    private static string Percent(double percent)
    {
        double digit = Math.Pow(10, Math.Floor(Math.Log10(percent)));
        return (Math.Round(percent / digit) * digit).ToString("0.####", CultureInfo.InvariantCulture) + "%";
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
