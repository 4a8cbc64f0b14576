using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Plots;

/// <summary>
/// The response curve: mean speed against length with its band, the pieces, the probability of each setting as bars,
/// where the paddler is, where the best is, and the lengths between which no difference is worthwhile.
/// </summary>
internal static class CurvePlot
{
    private const int Gutter = 8;

    /// <summary>The narrowest and lowest plot that still says something.</summary>
    public const int FewestColumns = 24, FewestRows = 6;

    /// <summary>A piece whose length the paddler did not know.</summary>
    public const char Blind = '○';

    /// <summary>A piece that stands back behind others.</summary>
    public const char Aside = '.';

    /// <summary>Draws it.</summary>
    /// <param name="analysis">What to show.</param>
    /// <param name="columns">Width in cells.</param>
    /// <param name="rows">Height in cells, legend included.</param>
    /// <param name="strokes">The glyphs that the terminal has.</param>
    /// <param name="pieces">Whether the pieces are shown; without them the scale follows the curve alone.</param>
    /// <param name="glyph">
    /// The glyph of a piece that has one of its own, such as <see cref="Blind"/>; <see cref="Aside"/> for one that only shows as dots; null
    /// for a square.
    /// </param>
    public static Sketch Draw(Analysis analysis, int columns, int rows, Strokes strokes, bool pieces = true,
        Func<AdjustedPiece, char?>? glyph = null)
    {
        var sketch = new Sketch(Math.Max(FewestColumns, columns), Math.Max(FewestRows, rows), strokes);
        LengthUnit unit = analysis.Paddler.Unit;
        IReadOnlyList<CurvePoint> points = analysis.Curve.Points;
        if (points.Count < 2)
        {
            sketch.Text(0, 0, "This paddle has one length: no curve to draw.", Ink.Label);
            return sketch;
        }

        int barRows = sketch.Rows >= 14 ? Math.Min(5, sketch.Rows / 6) : 0;
        int axisRow = sketch.Rows - 3;
        int zoneRow = axisRow - barRows - 1;
        int curveRows = Math.Max(2, zoneRow);
        var across = new Scale(points[0].Length.Inches, points[^1].Length.Inches, (Gutter + 1) * 2, sketch.Columns * 2 - 3);
        Scale up = UpAxis(analysis, pieces, curveRows * 4 - 1);

        DrawBand(sketch, points, across, up, curveRows);
        DrawCurve(sketch, points, across, up, curveRows);
        if (pieces)
            DrawPieces(sketch, analysis.Curve.Pieces, across, up, curveRows, glyph ?? (_ => null));
        DrawZone(sketch, analysis, across, zoneRow);
        if (barRows > 0)
            DrawBars(sketch, analysis.Best.Probabilities, across, axisRow - 1, barRows);
        DrawUpAxis(sketch, up, curveRows, axisRow);
        DrawLengthAxis(sketch, across, axisRow, unit);
        Legend.Draw(sketch, analysis, across, axisRow);
        return sketch;
    }

    private static Scale UpAxis(Analysis analysis, bool pieces, int lastDot)
    {
        List<double> seen =
        [
            .. Near(analysis, 2).Select(point => point.Percent),
            .. Near(analysis, 1).SelectMany(point => new[] { point.Low, point.High }),
        ];
        double low = Math.Max(-6, seen.Min()), high = Math.Min(6, seen.Max());
        if (pieces && analysis.Curve.Pieces.Count > 0)
        {
            double[] sorted = [.. analysis.Curve.Pieces.Select(piece => piece.Percent).Order()];
            low = Math.Min(low, Math.Max(-6, sorted[sorted.Length / 20]));
            high = Math.Max(high, Math.Min(6, sorted[sorted.Length - 1 - sorted.Length / 20]));
        }

        (low, high) = (Math.Min(low, -0.3), Math.Max(high, 0.15));
        double room = (high - low) * 0.05;
        return new Scale(high + room, low - room, 0, lastDot);
    }

    // Far from the best length the curve is steep and the band as wide as ignorance; they must not flatten what is known.
    private static IEnumerable<CurvePoint> Near(Analysis analysis, double inches) =>
        analysis.Curve.Points.Where(point => Math.Abs(point.Length.InchesMoreThan(analysis.Best.Length)) < inches + 0.01)
            .DefaultIfEmpty(analysis.Curve.Points[0]);

    private static IEnumerable<(int X, CurvePoint At)> ByDot(IReadOnlyList<CurvePoint> points, Scale across, int everyDots)
    {
        int next = 0;
        for (int x = across.FirstDot; x <= across.LastDot; x += everyDots)
        {
            double inches = across.Value(x);
            while (next < points.Count - 2 && points[next + 1].Length.Inches < inches)
                next++;
            (CurvePoint a, CurvePoint b) = (points[next], points[next + 1]);
            double share = Math.Clamp((inches - a.Length.Inches) / Math.Max(1e-9, b.Length.InchesMoreThan(a.Length)), 0, 1);
            yield return (x, new CurvePoint(a.Length, Between(a.Percent, b.Percent), Between(a.Low, b.Low), Between(a.High, b.High)));

            double Between(double from, double to) => from + share * (to - from);
        }
    }

    // Its two edges alone: a filled band of dots would drown the pieces, which are dots as well.
    private static void DrawBand(Sketch sketch, IReadOnlyList<CurvePoint> points, Scale across, Scale up, int curveRows)
    {
        foreach (Func<CurvePoint, double> edge in new Func<CurvePoint, double>[] { point => point.Low, point => point.High })
        {
            int? last = null;
            foreach ((int x, CurvePoint at) in ByDot(points, across, 1))
            {
                int y = up.Dot(edge(at));
                bool inside = y >= 0 && y < curveRows * 4;
                // Two dots, a gap: told from the curve without colour.
                if (inside && x % 4 < 2)
                    sketch.Line(x, last is { } before && x % 4 == 1 ? before : y, x, y, Ink.Band);
                last = inside ? y : null;
            }
        }
    }

    private static void DrawCurve(Sketch sketch, IReadOnlyList<CurvePoint> points, Scale across, Scale up, int curveRows)
    {
        (int X, int Y)? last = null;
        foreach ((int x, CurvePoint at) in ByDot(points, across, 1))
        {
            int y = up.Dot(at.Percent);
            bool inside = y >= 0 && y < curveRows * 4;
            if (inside && last is { } from)
                sketch.Line(from.X, from.Y, x, y, Ink.Curve);
            last = inside ? (x, y) : null;
        }
    }

    private static void DrawPieces(Sketch sketch, IReadOnlyList<AdjustedPiece> pieces, Scale across, Scale up, int curveRows,
        Func<AdjustedPiece, char?> glyph)
    {
        foreach (AdjustedPiece piece in pieces)
        {
            (int x, int y) = (across.Dot(piece.Length.Inches), Math.Clamp(up.Dot(piece.Percent), 0, curveRows * 4 - 1));
            if (x < across.FirstDot || x > across.LastDot + 1)
                continue;
            char? own = glyph(piece);
            if (own is { } mark and not Aside)
            {
                sketch.Text(x / 2, y / 4, mark.ToString(), Ink.Piece);
            }
            else if (own is null && piece.Weight >= 0.5)
            {
                sketch.Mark(x, y, Ink.Piece);
            }
            else
            {
                sketch.Dot(x, y, Ink.Faint);
                sketch.Dot(x, y + 1, Ink.Faint);
            }
        }
    }

    private static void DrawZone(Sketch sketch, Analysis analysis, Scale across, int row)
    {
        CurvePoint[] level = [.. analysis.Curve.Points.Where(point => point.Percent >= -analysis.WorthwhilePercent)];
        if (level.Length == 0)
            return;
        int from = across.Dot(level[0].Length.Inches) / 2, to = across.Dot(level[^1].Length.Inches) / 2;
        for (int column = from; column <= to; column++)
            sketch.Text(column, row, "░", Ink.Zone);
        string label = string.Create(CultureInfo.InvariantCulture, $" within {analysis.WorthwhilePercent:0.##}% ");
        if (to - from > label.Length)
            sketch.Text((from + to - label.Length) / 2 + 1, row, label, Ink.Zone);
    }

    private static void DrawBars(Sketch sketch, IReadOnlyList<StepProbability> steps, Scale across, int bottomRow, int barRows)
    {
        if (steps.Count == 0)
            return;
        double most = steps.Max(step => step.Probability);
        double stepDots = steps.Count > 1
            ? (double)(across.Dot(steps[^1].Length.Inches) - across.Dot(steps[0].Length.Inches)) / (steps.Count - 1)
            : 2;
        int wide = Math.Max(1, (int)(stepDots / 2) - (stepDots >= 6 ? 1 : 0));
        foreach (StepProbability step in steps)
        {
            int middle = across.Dot(step.Length.Inches) / 2;
            for (int column = middle - (wide - 1) / 2; column <= middle + wide / 2; column++)
            {
                if (column > Gutter)
                    sketch.Bar(column, bottomRow, step.Probability / most * barRows, Ink.Bar);
            }
        }

        sketch.Text(0, bottomRow - barRows + 1, $"{Math.Round(100 * most),5:0}%", Ink.Label);
    }

    private static void DrawUpAxis(Sketch sketch, Scale up, int curveRows, int axisRow)
    {
        for (int row = 0; row < axisRow; row++)
        {
            if (sketch.IsFree(Gutter, row))
                sketch.Text(Gutter, row, "│", Ink.Axis);
        }

        foreach (double tick in up.RoundValues(Math.Max(2, curveRows / 3)))
        {
            int row = up.Dot(tick) / 4;
            string label = string.Create(CultureInfo.InvariantCulture,
                $"{(tick < -1e-9 ? "−" : tick > 1e-9 ? "+" : "")}{Math.Abs(tick):0.0#}%");
            sketch.Text(Gutter - 1 - label.Length, row, label, Ink.Label);
            sketch.Text(Gutter, row, "┤", Ink.Axis);
        }
    }

    private static void DrawLengthAxis(Sketch sketch, Scale across, int row, LengthUnit unit)
    {
        sketch.Text(Gutter, row, "└" + new string('─', sketch.Columns - Gutter - 1), Ink.Axis);
        int free = Gutter - 2;
        string unitName = unit == LengthUnit.Centimetres ? "cm" : "in";
        foreach ((double inches, string label) in across.Lengths(unit, 14))
        {
            int column = across.Dot(inches) / 2;
            int start = column - label.Split(' ')[0].Length / 2;
            if (start <= free || start + label.Length > sketch.Columns - 3)
                continue;
            sketch.Text(column, row, "┴", Ink.Axis);
            sketch.Text(start, row + 1, label, Ink.Label);
            free = start + label.Length;
        }

        sketch.Text(sketch.Columns - 2, row + 1, unitName, Ink.Label);
    }
}
