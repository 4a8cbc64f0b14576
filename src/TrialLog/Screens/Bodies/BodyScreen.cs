using Terminal.Gui.Input;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Sizing;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Model;

namespace TrialLog.Screens.Bodies;

/// <summary>Start length, hulls, blades, technique, and what to order.</summary>
internal sealed class BodyScreen(Session session) : Screen(session), ISearched
{
    private const int TwoColumnsFrom = 126;

    private int _top;
    private int _lines;
    private IReadOnlyList<string> _words = [];

    public override (string Wide, string Narrow) Names => ("Body and boats", "Body");

    public override IReadOnlyList<KeyHint> Keys =>
    [
        new('e', "edit", () => EditSheets.Lay(Session)),
        new('m', "measures", () => BodySheets.Measures(Session)),
        new('t', "technique", () => BodySheets.Technique(Session)),
        new('o', "order sheet", () => BodySheets.Order(Session)),
        new('g', "seat height", () => BodySheets.SeatHeight(Session)),
        new('a', "add paddle", () => BodySheets.AddPaddle(Session)),
        .. Session.Chosen is { } looked ? [InWords(() => Everything(looked, 200).Select(line => line.Text))] : Array.Empty<KeyHint>(),
        .. Choosing.Work(Session),
        new(Key.CursorDown, "↓", "on", () => Scroll(1)) { Also = [Key.PageDown, Key.Space] },
        new(Key.CursorUp, "↑", "up", () => Scroll(-1)) { Also = [Key.PageUp] },
        .. Choosing.Keys(Session),
    ];

    public override string Explanation =>
        "What is known of your body, hulls and paddles, and the same best length carried over to all of them.\n\n" +
        "# Start length\n" +
        "The length the search started from, before any outing, and how sure it was. A measured seated reach is the best start (common " +
            "practice, no source).\n\n" +
        "# In every hull, for every blade\n" +
        "Your own paddles and the club's. Lengths “from pieces” rest on pieces in that hull; the others are carried over by the " +
            "two rules " +
            "below. A length outside what the paddle can be set to is marked.\n\n" +
        "# Seat-height rule\n" +
        "An inch more seat height wants an inch more paddle. Where no seat was measured: six seats an inch longer than solo, two seats " +
            "an inch shorter (common practice, no source).\n\n" +
        "# Exposed-shaft rule\n" +
        "Between blades, keep the shaft above the waterline the same: a blade that is an inch longer wants a paddle that is an inch " +
            "longer (common practice, no source).\n\n" +
        "# Technique check\n" +
        "With the whole blade just buried at the catch, the top hand is at about eye level. Higher: shorten; lower: lengthen. It is weak " +
            "evidence, and counts as such. " +
        "A hand well above the head cannot take body weight and loads the shoulder.\n\n" +
        "# Order sheet\n" +
        "What to tell the maker, with how sure each length is. A shaft can be cut, not grown: order long, cut later.";

    public override void Refresh()
    {
        Session.Want(FindingKind.Analysis);
        Session.Want(FindingKind.Carried);
        SetNeedsDraw();
    }

    protected override void Paint(Brush brush)
    {
        if (Session.Chosen is not { } chosen)
            return;
        bool two = brush.Columns >= TwoColumnsFrom;
        int width = two ? (brush.Columns - 6) / 2 : brush.Columns - 2;
        var body = new BodyText(Session, chosen, width);
        IReadOnlyList<Assessment>? carried = Session.Found.Carried(chosen);
        List<(string Text, Tone Tone)> left = two ? [.. body.StartLength(), .. body.Decisions(), .. body.Technique()]
            : Everything(chosen, width);
        List<(string Text, Tone Tone)> right = two ? [.. body.Everywhere(carried), .. body.SeatHeights(), .. body.Blades()] : [];
        _words = [.. Enumerable.Range(0, Math.Max(left.Count, right.Count))
            .Select(line => $"{left.ElementAtOrDefault(line).Text} {right.ElementAtOrDefault(line).Text}")];

        _lines = Math.Max(left.Count, right.Count);
        _top = Math.Clamp(_top, 0, Math.Max(0, _lines - brush.Rows));
        Column(brush, 1, width, left);
        Column(brush, 4 + width, width, right);
        if (_top + brush.Rows < _lines)
            brush.TextTo(brush.Columns - 1, brush.Rows - 1, "more ↓", Tone.Key);
    }

    private List<(string Text, Tone Tone)> Everything(Chosen chosen, int width)
    {
        var body = new BodyText(Session, chosen, width);
        return
        [
            .. body.StartLength(), .. body.Decisions(), .. body.Everywhere(Session.Found.Carried(chosen)), .. body.SeatHeights(),
            .. body.Blades(), .. body.Technique(),
        ];
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (mouse.Flags.HasFlag(MouseFlags.WheeledDown))
            Scroll(1);
        else if (mouse.Flags.HasFlag(MouseFlags.WheeledUp))
            Scroll(-1);
        else
            return false;
        return true;
    }

    private void Column(Brush brush, int column, int width, List<(string Text, Tone Tone)> lines)
    {
        for (int row = 0; row < brush.Rows && _top + row < lines.Count; row++)
            brush.Text(column, row, brush.Fit(lines[_top + row].Text, width), lines[_top + row].Tone);
    }

    /// <inheritdoc/>
    public bool Find(string text, bool next)
    {
        int line = Searching.Line(_words.Count, _top, text, next, at => _words[at]);
        if (line < 0)
            return false;
        _top = line;
        SetNeedsDraw();
        return true;
    }

    private void Scroll(int by)
    {
        _top = Math.Max(0, _top + by * Math.Max(1, Viewport.Height / 2));
        SetNeedsDraw();
    }
}
