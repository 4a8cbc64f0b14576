using System.Globalization;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Plots;

/// <summary>What was paddled when: each length of each outing over its day, blind outings as rings.</summary>
internal static class SeasonPlot
{
    private const int Gutter = 8;

    /// <summary>Draws it.</summary>
    /// <param name="outings">The outings; none for an empty picture.</param>
    /// <param name="unit">The paddler's unit.</param>
    /// <param name="columns">Width in cells.</param>
    /// <param name="rows">Height in cells.</param>
    /// <param name="strokes">The glyphs that the terminal has.</param>
    public static Sketch Draw(IReadOnlyList<Outing> outings, LengthUnit unit, int columns, int rows, Strokes strokes)
    {
        var sketch = new Sketch(Math.Max(24, columns), Math.Max(5, rows), strokes);
        Outing[] paddled = [.. outings.Where(outing => outing.Pieces.Count > 0)];
        if (paddled.Length == 0)
        {
            sketch.Text(0, 0, "No outing yet.", Ink.Label);
            return sketch;
        }

        int axisRow = sketch.Rows - 2;
        DateOnly first = paddled.Min(outing => outing.Date), last = paddled.Max(outing => outing.Date);
        var across = new Scale(first.DayNumber, Math.Max(first.DayNumber + 6, last.DayNumber), (Gutter + 2) * 2, sketch.Columns * 2 - 5);
        double shortest = paddled.SelectMany(outing => outing.Pieces).Min(piece => piece.Length.Inches);
        double longest = paddled.SelectMany(outing => outing.Pieces).Max(piece => piece.Length.Inches);
        var up = new Scale(longest + 0.3, shortest - 0.3, 0, axisRow * 4 - 1);
        for (int row = 0; row < axisRow; row++)
            sketch.Text(Gutter, row, "│", Ink.Axis);
        foreach ((double inches, string label) in up.Lengths(unit, 5))
        {
            sketch.Text(Gutter - 1 - label.Length, up.Dot(inches) / 4, label, Ink.Label);
            sketch.Text(Gutter, up.Dot(inches) / 4, "┤", Ink.Axis);
        }

        foreach (Outing outing in paddled)
        {
            foreach (Length length in outing.Pieces.Select(piece => piece.Length).Distinct())
            {
                (int x, int y) = (across.Dot(outing.Date.DayNumber), up.Dot(length.Inches));
                if (outing.Blind)
                    sketch.Text(x / 2, y / 4, "○", Ink.Piece);
                else
                    sketch.Mark(x, y, Ink.Piece);
            }
        }

        Days(sketch, across, first, last, axisRow);
        sketch.Text(0, 0, Say.Symbol(unit), Ink.Label);
        return sketch;
    }

    // The first of each month, or of each year where the months have no room; days where there is no month's end between.
    private static void Days(Sketch sketch, Scale across, DateOnly first, DateOnly last, int axisRow)
    {
        sketch.Text(Gutter, axisRow, "└" + new string('─', sketch.Columns - Gutter - 1), Ink.Axis);
        bool years = last.DayNumber - first.DayNumber > 800;
        int free = Gutter;
        for (DateOnly day = first; day <= last; day = day.AddDays(1))
        {
            bool end = day == first || day == last, tick = end || (day.Day == 1 && (!years || day.Month == 1));
            string label = years ? day.ToString("yyyy", CultureInfo.InvariantCulture)
                : day.ToString(day.Day == 1 && !end ? "MMM" : "d MMM", CultureInfo.InvariantCulture);
            int column = across.Dot(day.DayNumber) / 2, start = Math.Min(column, sketch.Columns - label.Length);
            if (!tick || start - 1 <= free)
                continue;
            sketch.Text(column, axisRow, "┴", Ink.Axis);
            sketch.Text(start, axisRow + 1, label, Ink.Label);
            free = start + label.Length;
        }
    }
}
