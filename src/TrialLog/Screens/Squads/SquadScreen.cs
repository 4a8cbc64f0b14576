using Terminal.Gui.Input;
using TrialLog.Application.Next;
using TrialLog.Application.Squads;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Screens.Squads;

/// <summary>The coach's view: who is converging, who is sore, who has not been out.</summary>
internal sealed class SquadScreen(Session session) : Screen(session), ISearched
{
    private const int NameWidth = 14, HullWidth = 6;

    /// <summary>How wide each column is, the space after it included; 0 for one that is left out.</summary>
    private readonly record struct Widths(int Do, int Best, int Likely, int Win, int Last);

    private static readonly Widths Wide = new(22, 17, 12, 10, 7), Narrow = Wide with { Likely = 0 };

    private IReadOnlyList<SquadRow> _lines = [];
    private int _ofVersion = -1;
    private SquadState _squad = new([]);
    private int _at;
    private int _top;

    public override (string Wide, string Narrow) Names => ("Squad", "Squad");

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new(Key.Enter, "Enter", "see as the paddler does", Open),
        new('w', "why", Checks),
        InWords(Words),
        .. Choosing.Work(Session),
        new(Key.CursorDown, "↓", "next", () => Move(1)),
        new(Key.CursorUp, "↑", "before", () => Move(-1)),
    ];

    public override string Explanation =>
        SquadWords.Order + " Each in the hull and with the paddle they last looked at or paddled.\n\n" +
        "# this week\n" +
        "Where the search stands, and what to do.\n\n" +
        "# now → best, likely\n" +
        "The usual length, the best length, and the range that holds the true best one 9 times in 10.\n\n" +
        "# to win\n" +
        "What the usual length costs on average against the true best length, over their race.\n\n" +
        "# warnings\n" +
        "How many things may be wrong with the trials themselves; w lists them.";

    public override void Refresh()
    {
        if (_ofVersion != Session.State.Version)
        {
            _ofVersion = Session.State.Version;
            Session.Ask(SquadState.Read, squad =>
            {
                _squad = squad;
                foreach (AnalysisInput input in squad.Paddlers.Select(paddler => paddler.Input).OfType<AnalysisInput>())
                    Session.Found.Want(input, FindingKind.Analysis);
                List();
            });
        }

        List();
    }

    private void List()
    {
        Guid? selected = _at < _lines.Count ? _lines[_at].Paddler.Id : Session.Chosen?.Paddler.Id;
        _lines = _squad.Rows(Session.Found.Analysis, Session.Today);
        _at = Math.Max(0, _lines.ToList().FindIndex(line => line.Paddler.Id == selected));
        SetNeedsDraw();
    }

    protected override void Paint(Brush brush)
    {
        bool wide = brush.Columns >= 100;
        Widths widths = wide ? Widened(brush.Columns) : Fitted(brush.Columns);
        brush.Text(1, 0, $"  {"",-NameWidth}{"hull",-HullWidth}"
            + brush.Cell("this week", widths.Do) + brush.Cell("now → best", widths.Best)
            + brush.Cell("likely", widths.Likely) + brush.Cell("to win", widths.Win) + brush.Cell("last", widths.Last)
            + (wide ? "warnings" : "!"), Tone.Dim);
        int room = Math.Max(1, brush.Rows - 1);
        _top = Math.Clamp(_top, Math.Max(0, _at - room + 1), Math.Max(0, _at));
        for (int index = _top; index < Math.Min(_lines.Count, _top + room); index++)
            PaintLine(brush, 1 + index - _top, _lines[index], index == _at, wide, widths);
        if (_lines.Count == 1 && brush.Rows > 5)
            brush.Text(1, 4, "More paddlers: triallog paddler add NAME, or triallog merge FILE", Tone.Dim);
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (mouse.Position is not { } at || at.Y < 1 || _top + at.Y - 1 >= _lines.Count
            || !(mouse.IsSingleClicked || mouse.IsDoubleClicked))
            return false;
        _at = _top + at.Y - 1;
        SetNeedsDraw();
        if (mouse.IsDoubleClicked)
            Open();
        return true;
    }

    private int Needed(string head, Func<SquadRow, string> said) =>
        1 + _lines.Where(static line => line.Analysis is not null).Select(said).Append(head).Max(Look.ColumnsOf);

    // On a wide terminal half of what it is wider goes to what to do, as far as that needs it; the warnings have the other half.
    private Widths Widened(int columns) => Wide with
    {
        Do = Math.Clamp(1 + Needed("this week", SquadWords.StandingAndThisWeek), Wide.Do, Wide.Do + (columns - 100) / 2),
    };

    // Columns as narrow as what stands in them; where they are still too wide, the likely range is left out.
    private Widths Fitted(int columns)
    {
        var fitted = new Widths(Math.Min(Wide.Do, Needed("this week", SquadWords.StandingAndThisWeek)),
            Needed("now → best", SquadWords.NowToBest), Needed("likely", SquadWords.Likely), Needed("to win", SquadWords.ToWin),
            Needed("last", line => SquadWords.Last(line, Session.Today)));
        int spare = columns - 4 - NameWidth - HullWidth - fitted.Do - fitted.Best - fitted.Likely - fitted.Win - fitted.Last;
        return spare < 0 ? Narrow : fitted with { Do = fitted.Do + spare };
    }

    private void PaintLine(Brush brush, int row, SquadRow line, bool here, bool wide, Widths widths)
    {
        string text = brush.Cell(line.Paddler.Name, NameWidth - 1) + " " + brush.Cell(line.Hull?.Name ?? "", HullWidth);
        if (line.Analysis is not { } analysis)
        {
            string waits = line.Paddle is null ? SquadWords.StandingAndThisWeek(line) : Session.Found.Stopped ? "stopped" : "…";
            brush.Text(1, row, (here ? "▸ " : "  ") + text + waits, here ? Tone.Selected : line.IsSore ? Tone.Caution : Tone.Dim);
            return;
        }

        text += brush.Cell(SquadWords.StandingAndThisWeek(line), widths.Do - 1) + " "
            + brush.Cell(SquadWords.NowToBest(line), widths.Best - 1) + " "
            + (widths.Likely > 0 ? brush.Cell(SquadWords.Likely(line), widths.Likely - 1) + " " : "")
            + brush.Cell(SquadWords.ToWin(line), widths.Win - 1) + " "
            + brush.Cell(SquadWords.Last(line, Session.Today), widths.Last - 1) + " "
            + (wide ? SquadWords.Warnings(line) : analysis.Checks.Count > 0 && !line.IsSore ? "!" : "");
        brush.Text(1, row, (here ? "▸ " : "  ") + text, here ? Tone.Selected : line.IsSore ? Tone.Caution : line.IsFinished ? Tone.Best
            : Tone.Plain);
    }

    /// <inheritdoc/>
    public bool Find(string text, bool next)
    {
        int line = Searching.Line(_lines.Count, _at, text, next, at =>
            $"{_lines[at].Paddler.Name} {_lines[at].Hull?.Name} {_lines[at].Paddle?.Name} {SquadWords.StandingAndThisWeek(_lines[at])} " +
                $"{SquadWords.Warnings(_lines[at])}");
        if (line < 0)
            return false;
        _at = line;
        SetNeedsDraw();
        return true;
    }

    private IEnumerable<string> Words() => SquadState.InWords(_lines, Session.Today);

    private void Move(int by)
    {
        _at = Math.Clamp(_at + by, 0, Math.Max(0, _lines.Count - 1));
        SetNeedsDraw();
    }

    private void Open()
    {
        if (_at < _lines.Count && _lines[_at] is { Hull: { } hull, Paddle: { } paddle } line)
        {
            Session.LookAt(new Chosen(line.Paddler, hull, paddle));
            Session.Shell.Open(Place.NextOuting);
        }
    }

    private void Checks()
    {
        if (_at >= _lines.Count || _lines[_at].Analysis is not { } analysis)
            return;
        var voice = new Voice(PlainText.Line(analysis.Paddler.Name));
        IReadOnlyList<string> said = RestFirst.Page(analysis, voice)
            ?? (analysis.Checks.Count == 0 ? [Warnings.None] : [.. Warnings.Of(analysis, voice).Select(warning => "! " + warning)]);
        Session.Shell.Lay(new TextSheet(Look, Session.Shell, $"{Quoted.Visible(analysis.Paddler.Name)}: warnings",
            string.Join("\n\n", said)));
    }
}
