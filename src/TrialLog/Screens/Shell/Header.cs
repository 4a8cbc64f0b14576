using Terminal.Gui.Input;
using Terminal.Gui.Text;
using TrialLog.Domain.Values;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;
using TrialLog.Tuning.Model;

namespace TrialLog.Screens.Shell;

/// <summary>The screens by number, the one that is up underlined like a waterline, and whose log it is.</summary>
internal sealed class Header : Canvas
{
    private readonly Func<IReadOnlyList<Screen>> _screens;
    private readonly Func<Screen?> _up;
    private readonly Func<string> _whose;
    private readonly Action<int> _open;
    private readonly List<(int From, int To, int Index)> _places = [];

    public Header(Look look, Func<IReadOnlyList<Screen>> screens, Func<Screen?> up, Func<string> whose, Action<int> open)
        : base(look)
    {
        (_screens, _up, _whose, _open) = (screens, up, whose, open);
        Height = 2;
        CanFocus = false;
    }

    protected override void Paint(Brush brush)
    {
        IReadOnlyList<Screen> screens = _screens();
        bool wide = screens.Sum(screen => screen.Names.Wide.Length + 4) + 1 <= brush.Columns;
        brush.Text(0, 1, new string('─', brush.Columns), Tone.Dim);
        _places.Clear();
        int column = 1;
        for (int index = 0; index < screens.Count; index++)
        {
            Screen screen = screens[index];
            string name = wide ? screen.Names.Wide : screen.Names.Narrow;
            bool up = screen == _up();
            int from = column;
            column = brush.Runs(column, 0, ($"{index + 1}", Tone.Key), (" " + name, up ? Tone.Strong : Tone.Plain));
            if (up)
                brush.Text(from, 1, new string('━', column - from), Tone.Title);
            _places.Add((from, column, index));
            column += 2;
        }

        string whose = _whose();
        if (whose.Length == 0)
            return;
        whose = $" {Fit(brush, whose, brush.Columns / 2)} ";
        bool leftIsFree = _places.Find(place => screens[place.Index] == _up()).From > brush.Columns / 2;
        if (leftIsFree)
            brush.Text(1, 1, whose, Tone.Strong);
        else
            brush.TextTo(brush.Columns - 1, 1, whose, Tone.Strong);
    }

    // Of name, hull and paddle the longest gives way, so that each is told.
    private static string Fit(Brush brush, string whose, int width)
    {
        string[] parts = whose.Split(" · ");
        while (string.Join(" · ", parts).GetColumns() > width)
        {
            int longest = Array.IndexOf(parts, parts.MaxBy(part => part.GetColumns()));
            if (parts[longest].GetColumns() < 6)
                break;
            parts[longest] = brush.Fit(parts[longest], parts[longest].GetColumns() - 1);
        }

        return brush.Fit(string.Join(" · ", parts), width);
    }

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (!mouse.IsSingleDoubleOrTripleClicked || mouse.Position is not { Y: 0 } at)
            return false;
        foreach ((int from, int to, int index) in _places)
        {
            if (at.X >= from && at.X < to)
                _open(index);
        }

        return true;
    }
}
