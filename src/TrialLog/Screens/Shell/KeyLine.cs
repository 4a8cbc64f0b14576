using System.Drawing;
using Terminal.Gui.Input;
using TrialLog.Domain.Values;
using TrialLog.Screens.Base;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Shell;

/// <summary>The last line: every key that works now, each of which can be clicked.</summary>
internal sealed class KeyLine : Canvas
{
    private readonly Func<IReadOnlyList<KeyHint>> _hints;
    private readonly Func<IReadOnlyList<KeyHint>> _always;
    private readonly List<(int From, int To, KeyHint Hint)> _places = [];

    /// <param name="look">The terminal's glyphs and looks.</param>
    /// <param name="hints">The keys of what is up, the most wanted first; those that do not fit are left to the explanation.</param>
    /// <param name="always">Keys that are never left out.</param>
    public KeyLine(Look look, Func<IReadOnlyList<KeyHint>> hints, Func<IReadOnlyList<KeyHint>> always)
        : base(look)
    {
        (_hints, _always) = (hints, always);
        Height = 1;
        CanFocus = false;
    }

    protected override void Paint(Brush brush)
    {
        _places.Clear();
        IReadOnlyList<KeyHint> last = _always();
        List<KeyHint> hints = [.. _hints().Where(hint => hint.Label.Length > 0)];
        int gap = hints.Concat(last).Sum(hint => WidthOf(hint) + 2) <= brush.Columns ? 2 : 1;
        int room = brush.Columns - last.Sum(hint => WidthOf(hint) + gap), column = 1;
        foreach (KeyHint hint in hints.TakeWhile(hint => column + WidthOf(hint) <= room))
            column = Draw(brush, column, hint) + gap;
        foreach (KeyHint hint in last)
            column = Draw(brush, column, hint) + gap;
    }

    private int Draw(Brush brush, int column, KeyHint hint)
    {
        int after = brush.Runs(column, 0, (hint.Label, Tone.Key), (" " + hint.What, Tone.Plain));
        _places.Add((column, after, hint));
        return after;
    }

    private static int WidthOf(KeyHint hint) => hint.Label.Length + 1 + hint.What.Length;

    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (!mouse.IsSingleDoubleOrTripleClicked || mouse.Position is not { } at)
            return false;
        if (_places.Find(place => at.X >= place.From && at.X < place.To).Hint is { } hint)
            hint.Do();
        return true;
    }
}
