using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Plots;

/// <summary>The marks on a length axis and what they stand for.</summary>
internal static class Legend
{
    /// <summary>From so many columns on the likely range and the shaded strip are named, too.</summary>
    public const int AllFrom = 96;

    /// <summary>Puts the marks on the axis row and names them on the last row.</summary>
    public static void Draw(Sketch sketch, Analysis analysis, Scale across, int axisRow)
    {
        int best = across.Dot(analysis.Best.Length.Inches) / 2, now = across.Dot(analysis.Current.Inches) / 2;
        bool same = analysis.Best.Length == analysis.Current;
        Range(sketch, analysis, across, axisRow);
        if (now >= across.FirstDot / 2 && now <= across.LastDot / 2)
            sketch.Text(now, axisRow, "▲", Ink.Now);
        if (best >= across.FirstDot / 2 && best <= across.LastDot / 2)
            sketch.Text(best, axisRow, "◆", Ink.Best);

        int row = sketch.Rows - 1, column = sketch.Columns < 48 ? 1 : 9;
        LengthUnit unit = analysis.Paddler.Unit;
        column = sketch.Text(
            column, row, $"◆ best {Say.Length(analysis.Best.Length, unit)}{(same ? $", your {Now(analysis)} length" : "")}",
            Ink.Best) + 3;
        if (!same)
            column = sketch.Text(column, row, $"▲ {Now(analysis)} {Say.Length(analysis.Current, unit)}", Ink.Now) + 3;
        if (sketch.Columns >= AllFrom)
            sketch.Text(column, row, "━ likely range   ░ within a worthwhile change", Ink.Label);
    }

    private static string Now(Analysis analysis) => analysis.CurrentIsUsual ? "usual" : "start";

    private static void Range(Sketch sketch, Analysis analysis, Scale across, int axisRow)
    {
        int from = Math.Max(across.FirstDot, across.Dot(analysis.Best.LikelyLow.Inches)) / 2;
        int to = Math.Min(across.LastDot, across.Dot(analysis.Best.LikelyHigh.Inches)) / 2;
        for (int column = from; column <= to; column++)
            sketch.Text(column, axisRow, "━", Ink.Best);
    }
}
