using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Pictures;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Curves;

/// <summary>Is it converging?</summary>
internal sealed class ProgressScreen(Session session) : Screen(session)
{
    public override (string Wide, string Narrow) Names => ("Progress", "Progress");

    public override IReadOnlyList<KeyHint> Keys => [.. Choosing.Work(Session), .. Choosing.Keys(Session)];

    public override string Explanation =>
        "What the log said after each outing, worked out again from what was known then.\n\n" +
        "# Above: best length and likely range\n" +
        "The square is the best length as it looked after that outing; the upright line is the range that held the truly best length " +
            "with 90 % probability. " +
        "A search converges when the lines get shorter and the squares stop moving. At “start” only the start length is known.\n\n" +
        "# Below: gain left\n" +
        "The most that more testing could still win on average, falling towards nothing. The dotted line is the worthwhile change: well " +
            "below it there is little left to look for.\n\n" +
        "# Diminishing returns\n" +
        "Once another length is hardly likely to be faster by a worthwhile change, stop testing, race it, order it.";

    public override void Refresh()
    {
        Session.Want(FindingKind.Progress);
        SetNeedsDraw();
    }

    protected override void Paint(Brush brush)
    {
        if (Session.Chosen is not { } chosen)
            return;
        if (Session.Found.Progress(chosen) is not { Count: > 0 } points)
        {
            brush.Text(2, 1, Session.Found.Stopped ? "Stopped before there was an answer."
                : "Working out how the search went, outing by outing …", Tone.Dim);
            return;
        }

        double worthwhile = chosen.Paddler.WorthwhilePercent ?? TuningSettings.Default.WorthwhilePercent;
        int top = brush.Words(1, 0, Math.Min(110, brush.Columns - 2), SearchWords.Verdict(points, worthwhile),
            points[^1].DiminishingReturns ? Tone.Best : Tone.Strong);
        int rows = Math.Clamp(brush.Rows - top - 1, 10, 46);
        brush.Picture(1, top, ProgressPlot.Draw(points, Session.Unit, worthwhile, Math.Min(170, brush.Columns - 2), rows, brush.Strokes));
        ProgressPoint last = points[^1];
        brush.Runs(1, top + rows, ("now ", Tone.Dim), ($"best {Say.Length(last.Best, Session.Unit)}", Tone.Best),
            ($", likely {Say.Range(last.LikelyLow, last.LikelyHigh, Session.Unit)}, gain left {Say.Percent(last.GainLeftPercent)}",
                Tone.Plain));
    }
}
