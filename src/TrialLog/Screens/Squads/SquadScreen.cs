using Terminal.Gui.Input;
using TrialLog.Application.Next;
using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Wording;

namespace TrialLog.Screens.Squads;

/// <summary>The coach's view: who is converging, who is sore, who has not been out.</summary>
internal sealed class SquadScreen(Session session) : Screen(session)
{
    private const int NameWidth = 14, HullWidth = 7, BestWidth = 10, LikelyWidth = 20, LeftWidth = 9, TrendWidth = 9, LastWidth = 11, ToGoWidth = 8, SoreWidth = 6;

    private IReadOnlyList<SquadLine> _lines = [];
    private int _ofVersion = -1;
    private bool _worstFirst;
    private int _at;
    private int _top;

    public override (string Wide, string Narrow) Names => ("Squad", "Squad");

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "see as the paddler does", Open),
        new(Key.CursorDown, "↓", "next", () => Move(1)),
        new(Key.CursorUp, "↑", "before", () => Move(-1)),
        .. Choosing.Work(Session),
        new('c', "checks", Checks),
    ];

    public override string Explanation =>
        "One row a paddler, each in the hull and with the paddle they last looked at or last paddled; once all are reckoned, worst first: sore, then what looks wrong, then most gain left.\n\n" +
        "# best, likely\n" +
        "The best length so far and the range that holds the truly best one with 90 % probability.\n\n" +
        "# left\n" +
        "Gain left: the most that more testing could still win on average, in percent of speed. “done” stands where returns have diminished.\n\n" +
        "# trend\n" +
        "Gain left after each of the last outings, a bar each: falling bars are a search that converges.\n\n" +
        "# to go\n" +
        "Outings until diminishing returns, the middle forecast.\n\n" +
        "# sore, !\n" +
        "The worst soreness of the last four weeks, and how many things look wrong with the experiment itself; c lists them.";

    public override void Refresh()
    {
        if (_ofVersion != Session.State.Version)
        {
            _ofVersion = Session.State.Version;
            Session.Ask(Read, Take);
        }

        if (!_worstFirst)
            OrderWorstFirst();
        SetNeedsDraw();
    }

    private static IReadOnlyList<(SquadLine Line, AnalysisInput? Input)> Read(Workspace workspace)
    {
        ILookup<Guid, Outing> outings = workspace.Logbook.Outings().ToLookup(outing => outing.PaddlerId);
        return [.. SquadLine.All(workspace, paddler => [.. outings[paddler.Id]])
            .Select(line => (line, line.Chosen is { } chosen ? workspace.Question(chosen, [.. outings[line.Paddler.Id]]) : null))];
    }

    private void Take(IReadOnlyList<(SquadLine Line, AnalysisInput? Input)> squad)
    {
        _lines = [.. squad.Select(row => row.Line)];
        _worstFirst = false;
        _at = Math.Max(0, _lines.ToList().FindIndex(line => line.Paddler.Id == Session.Chosen?.Paddler.Id));
        foreach (AnalysisInput input in squad.Select(row => row.Input).OfType<AnalysisInput>())
        {
            Session.Found.Want(input, FindingKind.Analysis);
            Session.Found.Want(input, FindingKind.Progress);
        }

        OrderWorstFirst();
        SetNeedsDraw();
    }

    // By name until every analysis is there, so that rows do not jump about under the reader's eye; then once, worst first.
    private void OrderWorstFirst()
    {
        Dictionary<Guid, SquadLine> analysed = [];
        List<SquadMember> members = [];
        foreach (SquadLine line in _lines.Where(line => line.Chosen is not null))
        {
            if (Session.Found.Analysis(line.Chosen!) is not { } analysis)
                return;
            analysed.Add(line.Paddler.Id, line);
            members.Add(new SquadMember(analysis, null, line.Soreness));
        }

        Guid? selected = _at < _lines.Count ? _lines[_at].Paddler.Id : null;
        _lines = [.. SquadOrder.WorstFirst(members).Select(member => analysed[member.Analysis.Paddler.Id]), .. _lines.Where(line => line.Chosen is null)];
        _at = Math.Max(0, _lines.ToList().FindIndex(line => line.Paddler.Id == selected));
        _worstFirst = true;
    }

    protected override void Paint(Brush brush)
    {
        bool wide = brush.Columns >= 100;
        brush.Text(1, 0, $"  {"",-NameWidth}{(wide ? $"{"hull",-HullWidth}" : "")}{"best",-BestWidth}{"likely",-LikelyWidth}{"left",-LeftWidth}{"trend",-TrendWidth}"
            + $"{(wide ? $"{"last out",-LastWidth}" : "")}{"to go",-ToGoWidth}{"sore",-SoreWidth}!", Tone.Dim);
        int room = Math.Max(1, brush.Rows - 1);
        _top = Math.Clamp(_top, Math.Max(0, _at - room + 1), Math.Max(0, _at));
        for (int index = _top; index < Math.Min(_lines.Count, _top + room); index++)
            PaintLine(brush, 1 + index - _top, _lines[index], index == _at, wide);
        if (_lines.Count == 1 && brush.Rows > 5)
            brush.Text(1, 4, "More paddlers: triallog paddler add NAME, or triallog merge FILE", Tone.Dim);
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (mouse.Position is not { } at || at.Y < 1 || _top + at.Y - 1 >= _lines.Count || !(mouse.IsSingleClicked || mouse.IsDoubleClicked))
            return false;
        _at = _top + at.Y - 1;
        SetNeedsDraw();
        if (mouse.IsDoubleClicked)
            Open();
        return true;
    }

    private void PaintLine(Brush brush, int row, SquadLine line, bool here, bool wide)
    {
        LengthUnit unit = line.Paddler.Unit;
        Analysis? analysis = line.Chosen is { } chosen ? Session.Found.Analysis(chosen) : null;
        string text = brush.Cell(line.Paddler.Name, NameWidth - 1) + " ";
        if (wide)
            text += brush.Cell(line.Chosen?.Hull.Name ?? "", HullWidth);
        if (analysis is null)
        {
            brush.Text(1, row, (here ? "▸ " : "  ") + text + (line.Chosen is null ? "no paddle to tune" : Session.Found.Stopped ? "stopped" : "…"), here ? Tone.Selected : Tone.Dim);
            return;
        }

        IReadOnlyList<ProgressPoint> progress = Session.Found.Progress(line.Chosen!) ?? [];
        text += brush.Cell(analysis.Best.Length.Say(unit), BestWidth)
            + brush.Cell(LengthWords.SayRange(analysis.Best.LikelyLow, analysis.Best.LikelyHigh, unit), LikelyWidth - 1) + " "
            + brush.Cell(analysis.DiminishingReturns ? "done ✓" : Saying.Percent(analysis.GainLeftPercent), LeftWidth)
            + brush.Cell(Trend.Draw([.. progress.Select(point => point.GainLeftPercent)], TrendWidth - 1, Math.Max(analysis.WorthwhilePercent, progress.Count > 0 ? progress.Max(point => point.GainLeftPercent) : 0), brush.Strokes), TrendWidth)
            + (wide ? brush.Cell(line.LastOuting, LastWidth) : "")
            + brush.Cell(analysis.DiminishingReturns ? "0" : $"{analysis.OutingsToGo.Median}", ToGoWidth)
            + brush.Cell(line.Soreness?.ToString() ?? "", SoreWidth)
            + (analysis.Checks.Count > 0 ? $"{analysis.Checks.Count}" : "");
        brush.Text(1, row, (here ? "▸ " : "  ") + text, here ? Tone.Selected : RecentSoreness.Hurts(line.Soreness) ? Tone.Caution : analysis.DiminishingReturns ? Tone.Best : Tone.Plain);
    }

    private void Move(int by)
    {
        _at = Math.Clamp(_at + by, 0, Math.Max(0, _lines.Count - 1));
        SetNeedsDraw();
    }

    private void Open()
    {
        if (_at < _lines.Count && _lines[_at].Chosen is { } chosen)
        {
            Session.LookAt(chosen);
            Session.Shell.Open(Place.NextOuting);
        }
    }

    private void Checks()
    {
        if (_at >= _lines.Count || _lines[_at].Chosen is not { } chosen || Session.Found.Analysis(chosen) is not { } analysis)
            return;
        string text = analysis.Checks.Count == 0 ? "Nothing stands out." : string.Join("\n\n", analysis.Checks.Select(check => "! " + check.Says));
        Session.Shell.Lay(new TextSheet(Look, Session.Shell, $"{Quoted.Visible(chosen.Paddler.Name)}: the experiment itself", text));
    }
}
