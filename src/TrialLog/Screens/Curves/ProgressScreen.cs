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
    /// <summary>From so many rows on the season stands below the search.</summary>
    private const int BothFrom = 36;

    private const int SeasonRows = 9;

    private bool _season;

    public override (string Wide, string Narrow) Names => ("Progress", "Progress");

    public override IReadOnlyList<KeyHint> Keys =>
    [
        .. Session.State.Outings.Count > 0 ? [new KeyHint('k', _season ? "the search" : "the season", Turn)] : Array.Empty<KeyHint>(),
        .. Points is null ? Array.Empty<KeyHint>() : [InWords(Words)],
        .. Choosing.Work(Session),
        .. Choosing.Keys(Session),
    ];

    private IReadOnlyList<ProgressPoint>? Points =>
        Session.Chosen is { } chosen && Session.Found.Progress(chosen) is { Count: > 0 } points ? points : null;

    private IEnumerable<string> Words() =>
    [
        .. RestFirst.Page(Session.State.Sore) ?? PictureWords.Progress(Points!, Worthwhile(Session.Chosen!), Session.Unit),
        "", "# The season",
        .. PictureWords.Season(Session.State.Outings, Session.Unit),
    ];

    public override string Explanation =>
        "What the log said after each outing, worked out again from what was known then.\n\n" +
        "# Above: best length and likely range\n" +
        "The square is the best length as it looked after that outing; the upright line is its likely range, which held the true best " +
            "length 9 times in 10. " +
        "A search converges when the lines get shorter and the squares stop moving. At “start” only the start length is known.\n\n" +
        "# Below: what the rule for stopping looks at\n" +
        "The chance that another length is faster by a worthwhile change, and the gain left, on average. Each has its dotted line: the " +
            "chance below which a search ends, and what an outing must win to be worth going out for. The gain left is what testing " +
            "without end would win, and some outings win only part of it: a search may end with its line still above the price. Both " +
            "fall by shares, so the scale is one of tenfolds.\n\n" +
        "# The season\n" +
        "k shows what was paddled when: each length of each outing over its day. Rings are outings paddled blind.";

    public override void Refresh()
    {
        Session.Want(FindingKind.Progress);
        SetNeedsDraw();
    }

    protected override void Paint(Brush brush)
    {
        if (Session.Chosen is not { } chosen)
            return;
        // What was paddled is shown all the same.
        if (!_season && RestFirst.Page(Session.State.Sore) is { } rest)
        {
            brush.Rest(rest);
            return;
        }

        if (Session.Found.Progress(chosen) is not { Count: > 0 } points)
        {
            brush.Text(2, 1, Session.Found.Stopped ? "Stopped before there was an answer."
                : "Working out how the search went, outing by outing …", Tone.Dim);
            return;
        }

        int columns = Math.Min(170, brush.Columns - 2);
        if (_season)
        {
            int words = brush.Words(1, 0, Math.Min(110, brush.Columns - 2),
                PictureWords.Season(Session.State.Outings, Session.Unit).First(),
                Tone.Strong);
            brush.Picture(1, words + 1, SeasonPlot.Draw(Session.State.Outings, Session.Unit, columns,
                Math.Clamp(brush.Rows - words - 1, 5, 24), brush.Strokes));
            return;
        }

        int top = brush.Words(1, 0, Math.Min(110, brush.Columns - 2), SearchWords.Verdict(points, Worthwhile(chosen)),
            points[^1].DiminishingReturns ? Tone.Best : Tone.Strong);
        bool both = brush.Rows >= BothFrom;
        int rows = Math.Clamp(brush.Rows - top - 1 - (both ? SeasonRows + 1 : 0), 10, 46);
        brush.Picture(1, top, ProgressPlot.Draw(points, Session.Unit, columns, rows, brush.Strokes));
        ProgressPoint last = points[^1];
        brush.Runs(1, top + rows, ("now ", Tone.Dim), ($"best {Say.Length(last.Best, Session.Unit)}", Tone.Best),
            ($", likely {Say.Range(last.LikelyLow, last.LikelyHigh, Session.Unit)}, gain left {Say.Percent(last.GainLeftPercent)}",
                Tone.Plain));
        if (both)
            brush.Picture(
                1, top + rows + 2, SeasonPlot.Draw(Session.State.Outings, Session.Unit, columns, SeasonRows, brush.Strokes));
    }

    private static double Worthwhile(Chosen chosen) => chosen.Paddler.WorthwhilePercent ?? TuningSettings.Default.WorthwhilePercent;

    private void Turn()
    {
        _season = !_season;
        SetNeedsDraw();
        Session.Shell.Redraw();
    }
}
