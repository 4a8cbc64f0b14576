using Terminal.Gui.Input;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Pictures;
using TrialLog.Screens.Base;
using TrialLog.Screens.Bodies;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Screens.Curves;

/// <summary>Where is the best length, and how sure is that?</summary>
internal sealed class CurveScreen(Session session) : Screen(session)
{
    private const int WidestPlot = 170, WidestWords = 110;

    /// <summary>From so many rows on the verdict stands below the picture.</summary>
    private const int VerdictFrom = 34;

    /// <summary>The outing whose pieces stand out; null for all.</summary>
    private Guid? _outing;
    private Analysis? _shownOf;
    private List<Outing> _shown = [];
    private HashSet<Guid> _blind = [];

    public override (string Wide, string Narrow) Names => ("Curve", "Curve");

    public override IReadOnlyList<KeyHint> Keys =>
    [
        .. _outing is null ? Array.Empty<KeyHint>() :
        [
            new(Key.CursorLeft, "←", "outing before", () => Step(-1)), new(Key.CursorRight, "→", "next", () => Step(1)),
        ],
        .. Shown.Count > 0 ? [new KeyHint('b', _outing is null ? "by outing" : "all pieces", ByOuting)] : Array.Empty<KeyHint>(),
        .. Session.Analysis is { } analysis ? [InWords(() => Words(analysis))] : Array.Empty<KeyHint>(),
        .. Choosing.Work(Session),
        .. Choosing.Keys(Session),
    ];

    // The outings that have a piece on the curve, oldest first; looked up once an answer, since keys and painting ask for them.
    private List<Outing> Shown
    {
        get
        {
            if (Session.Analysis is not { } analysis)
                return [];
            if (!ReferenceEquals(analysis, _shownOf))
            {
                HashSet<Guid> on = [.. analysis.Curve.Pieces.Select(piece => piece.OutingId)];
                (_shownOf, _shown) = (analysis, [.. Session.State.Outings.Where(outing => on.Contains(outing.Id))
                    .OrderBy(outing => outing.Date)]);
                _blind = [.. _shown.Where(outing => outing.Blind).Select(outing => outing.Id)];
            }

            return _shown;
        }
    }

    private HashSet<Guid> Blind => Shown.Count == 0 ? [] : _blind;

    public override string Explanation =>
        "Speed against paddle length, all else equal, in percent of the speed at the best length. The higher, the faster.\n\n" +
        "# The line and its band\n" +
        "The line is the middle estimate. The two broken lines are the edges of its band, which holds the truth 9 times in 10. It is " +
            "narrow near the best length because everything is compared with the speed there.\n\n" +
        "# The small squares\n" +
        "Your pieces in this hull, adjusted for everything but length: wind and water of the outing, order, effort, distance, season. " +
            "Two small dots one above the other are pieces " +
        "that hardly count, because something slowed them that length does not explain. That pieces scatter by a percent or more while " +
            "the curve bends by tenths is why one comparison says little and many say much. Rings are pieces paddled blind. b shows one " +
            "outing at a time: its pieces by their number, the others as dots.\n\n" +
        "# The bars\n" +
        "For each setting of the shaft, the probability that it is the best one. The number beside them is that of the tallest bar.\n\n" +
        "# ◆ best, ▲ usual, the thick line\n" +
        "The best length, your usual length, and the likely range, which holds the true best length 9 times in 10.\n\n" +
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

        if (RestFirst.Page(analysis) is { } rest)
        {
            brush.Rest(rest);
            return;
        }

        LengthUnit unit = Session.Unit;
        // The picture names the usual length itself.
        IReadOnlyList<string> going = Answer.Going(analysis) is { } gain
            ? WordWrap.Lines(brush.Strokes.Write(gain), brush.Columns - 4) : [];
        IReadOnlyList<string> outing = Shown.Find(outing => outing.Id == _outing) is { } one
            ? WordWrap.Lines(brush.Strokes.Write(PictureWords.OneOuting(one, analysis)), brush.Columns - 2) : [];
        string verdict = Verdict.Of(analysis);
        int widest = Math.Min(WidestWords, brush.Columns - 2);
        int said = brush.Rows >= VerdictFrom ? WordWrap.Lines(brush.Strokes.Write(verdict), widest).Count : 0;
        int words = 1 + Math.Max(1, outing.Count) + said + going.Count;
        int rows = Math.Clamp(brush.Rows - words, CurvePlot.FewestRows, 46);
        int columns = Math.Min(WidestPlot, brush.Columns - 2);
        brush.Picture(1, 0, CurvePlot.Draw(analysis, columns, rows, brush.Strokes, glyph: Glyphs()));
        int row = rows;
        brush.Runs(1, row++,
            ("◆ ", Tone.Best), ($"likely {Say.Range(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit)}", Tone.Plain),
            ($"; {Answer.WithinAQuarter(analysis.Best.WithinQuarterInch, unit)}", Tone.Plain));
        if (going.Count > 0)
            brush.Text(1, row, "▲ ", Tone.Now);
        foreach (string line in going)
            brush.Text(3, row++, line);
        foreach (string line in outing)
            brush.Text(1, row++, line, Tone.Now);
        if (outing.Count == 0)
            brush.Text(1, row++, $"▘ pieces, adjusted{(Blind.Count > 0 ? "   ○ blind" : "")}   " +
                // A wide picture names the shaded strip and the likely range itself.
                $"{(columns >= Legend.AllFrom ? "" : "░ within a worthwhile change   ")}█ chance of each setting", Tone.Dim);
        if (said > 0)
            brush.Words(1, row, widest, verdict, analysis.DiminishingReturns ? Tone.Best : Tone.Strong);
    }

    private IEnumerable<string> Words(Analysis analysis) =>
    [
        .. PictureWords.Curve(analysis, Blind),
        .. Shown.Count == 0 ? [] : new[] { "", "# By outing" }.Concat(Shown.Select(outing => PictureWords.OneOuting(outing, analysis))),
    ];

    private Func<AdjustedPiece, char?> Glyphs()
    {
        HashSet<Guid> blind = Blind;
        if (Shown.Find(outing => outing.Id == _outing) is not { } one)
            return piece => blind.Contains(piece.OutingId) ? CurvePlot.Blind : null;
        Dictionary<Guid, int> orders = one.Pieces.ToDictionary(piece => piece.Id, piece => piece.Order);
        return piece => orders.TryGetValue(piece.PieceId, out int order) ? order < 10 ? (char)('0' + order) : '+' : CurvePlot.Aside;
    }

    private void ByOuting()
    {
        _outing = _outing is null ? Shown[^1].Id : null;
        SetNeedsDraw();
        Session.Shell.Redraw();
    }

    private void Step(int by)
    {
        List<Outing> shown = Shown;
        int at = shown.FindIndex(outing => outing.Id == _outing);
        if (at >= 0)
            _outing = shown[Math.Clamp(at + by, 0, shown.Count - 1)].Id;
        SetNeedsDraw();
    }
}
