using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Pictures;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Curves;

/// <summary>Where is the best length, and how sure is that?</summary>
internal sealed class CurveScreen(Session session) : Screen(session)
{
    private const int WidestPlot = 170;

    public override (string Wide, string Narrow) Names => ("Curve", "Curve");

    public override IReadOnlyList<KeyHint> Keys => [.. Choosing.Work(Session), .. Choosing.Keys(Session)];

    public override string Explanation =>
        "Speed against paddle length, all else equal, in percent of the speed at the best length. The higher, the faster.\n\n" +
        "# The line and its band\n" +
        "The line is the middle estimate. The dotted band around it holds the truth with 90 % probability. It is narrow near the best " +
            "length because everything is compared with the speed there.\n\n" +
        "# The small squares\n" +
        "Your pieces in this hull, adjusted for everything but length: wind and water of the outing, order, effort, distance, season. " +
            "Two small dots one above the other are pieces " +
        "that hardly count, because something slowed them that length does not explain. That pieces scatter by a percent or more while " +
            "the curve bends by tenths is why one comparison says little and many say much.\n\n" +
        "# The bars\n" +
        "For each setting of the shaft, the probability that it is the best one. The number beside them is that of the tallest bar.\n\n" +
        "# ◆ best, ▲ now, the thick line\n" +
        "The best length, where you paddle now, and the likely range, which holds the truly best length with 90 % probability.\n\n" +
        "# The shaded strip\n" +
        "The lengths that are within a worthwhile change of the best: among these, take the one that is easiest on the joints.";

    public override void Refresh()
    {
        Session.Want(FindingKind.Analysis);
        SetNeedsDraw();
    }

    protected override void Paint(Brush brush)
    {
        if (Session.Chosen is not { } chosen)
            return;
        if (Session.Found.Analysis(chosen) is not { } analysis)
        {
            brush.Text(
                2, 1, Session.Found.Stopped ? "Stopped before there was an answer." : "Working out the curve from the log …", Tone.Dim);
            return;
        }

        int words = brush.Rows >= 34 ? 6 : 3;
        int rows = Math.Clamp(brush.Rows - words, CurvePlot.FewestRows, 46);
        int columns = Math.Min(WidestPlot, brush.Columns - 2);
        brush.Picture(1, 0, CurvePlot.Draw(analysis, columns, rows, brush.Strokes));
        LengthUnit unit = Session.Unit;
        int row = rows;
        brush.Runs(1, row++,
            ("◆ ", Tone.Best), ($"likely {Say.Range(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit)}", Tone.Plain),
            ($"; {Answer.WithinAQuarter(analysis.Best.WithinQuarterInch, unit)}", Tone.Plain));
        brush.Runs(1, row++,
            ("▲ ", Tone.Now),
                (Answer.Going(analysis) ?? $"{(analysis.CurrentIsUsual ? "usual" : "start")} length {Say.Length(analysis.Current, unit)}",
                Tone.Plain));
        brush.Text(1, row++, "▘ pieces, adjusted   ░ no worthwhile difference   █ chance of each setting", Tone.Dim);
        if (words > 3)
            brush.Words(1, row, Math.Min(110, brush.Columns - 2), Verdict.Of(analysis),
                analysis.DiminishingReturns ? Tone.Best : Tone.Strong, most: 3);
    }
}
