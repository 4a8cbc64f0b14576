using Terminal.Gui.Input;
using TrialLog.Application.Next;
using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Pictures;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Next;

/// <summary>What do I paddle this week, and why?</summary>
internal sealed class NextOutingScreen(Session session) : Screen(session)
{
    private Analysis? _given;

    private bool IsSore => RecentSoreness.Hurts(RecentSoreness.Worst(Session.Outings(), Session.Workspace.Today));

    public override (string Wide, string Narrow) Names => ("Next outing", "Next outing");

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "type the outing", () => Session.Shell.Open(Place.EnterOuting)),
        .. Choosing.Work(Session),
        new('w', "why", Why),
        .. Choosing.Keys(Session),
    ];

    public override string Explanation =>
        "This screen plans your next outing. Set the paddle to each length in turn, in the order shown; the paddles drawn beside " +
        "the lengths show which are longer, not true to scale. The order is mirrored, so that getting tired does not favour one length.\n\n" +
        "# Best length\n" +
        "The setting that costs you least on average, given all your pieces, the wind and water of each outing, and what was known beforehand.\n\n" +
        "# Likely range\n" +
        "The truly best length lies in it with 90 % probability.\n\n" +
        "# Gain left\n" +
        "How much faster, on average, you could still get by more testing. Once another length is hardly likely to be faster by a " +
        "worthwhile change, the screen says so: stop testing, race it, order it.\n\n" +
        "# Outings to go\n" +
        "How many more outings until then: the middle forecast and a range that holds four times in five.\n\n" +
        "# The small curve\n" +
        "Speed against length, all else equal, with its 90 % band. Screen 4 shows it large, with your pieces.";

    public override void Refresh() => SetNeedsDraw();

    protected override void Paint(Brush brush)
    {
        if (Session.Chosen is not { } chosen)
            return;
        Analysis? analysis = Session.BackgroundAnalyses.Analysis(chosen);
        Give(analysis);
        if (NextSummary.Of(Session, chosen, analysis) is not { } facts)
        {
            brush.Text(2, 1, Session.BackgroundAnalyses.Stopped ? "Stopped before there was an answer." : "Working out your card from the log …", Tone.Dim);
            return;
        }

        bool curve = analysis is not null && brush.Columns >= 76 && brush.Rows >= 14;
        int left = curve ? Math.Min(58, Math.Max(40, brush.Columns * 5 / 12)) : brush.Columns;
        int row = CardPicture.Draw(brush, facts.Card, chosen, Session.Unit, left, IsSore);
        if (analysis is not null && curve)
            row = Math.Max(row, DrawCurve(brush, analysis, left));
        DrawVerdict(brush, facts, row + 1);
    }

    // What is shown here is given: a coach wants to see later what was suggested when.
    private void Give(Analysis? analysis)
    {
        if (analysis is null || ReferenceEquals(analysis, _given))
            return;
        _given = analysis;
        Session.Shell.Try(() => Session.Version.Aside(() => NextOuting.Record(Session.Workspace, [analysis])));
    }

    private static int DrawCurve(Brush brush, Analysis analysis, int left)
    {
        int rows = Math.Clamp(brush.Rows - 9, 9, 18);
        brush.Picture(left, 0, CurvePlot.Draw(analysis, Math.Min(96, brush.Columns - left - 1), rows, brush.Strokes, pieces: false));
        return rows;
    }

    private void DrawVerdict(Brush brush, NextSummary facts, int row)
    {
        int width = Math.Min(brush.Columns - 3, 110);
        brush.Runs(1, row++, ("◆ best ", Tone.Best), (facts.Best, Tone.Best), ("   likely ", Tone.Dim), (facts.Likely, Tone.Strong));
        brush.Runs(1, row++, ("gain left ", Tone.Dim), (facts.GainLeft, Tone.Plain), (facts.ToGo.Length > 0 ? "   outings to go " : "", Tone.Dim), (facts.ToGo, Tone.Plain));
        brush.Text(1, row++, facts.RestsOn, Tone.Dim);
        if (Session.HasDraft)
            brush.Text(1, row++, "An outing is half typed. Enter goes on with it.", Tone.Now);
        row = brush.Words(1, row, width, facts.Verdict, facts.Stop ? Tone.Best : Tone.Strong, most: 3);
        foreach (string caution in facts.Cautions)
        {
            if (row < brush.Rows)
                row = brush.Words(1, row, width, "! " + caution, Tone.Caution, most: Math.Max(1, brush.Rows - row));
        }
    }

    private void Why()
    {
        if (Session.Chosen is { } chosen && Session.BackgroundAnalyses.Analysis(chosen) is { } analysis)
            Session.Shell.Lay(new TextSheet(Look, Session.Shell, "Why this card", NextSummary.Why(analysis, IsSore)));
    }
}
