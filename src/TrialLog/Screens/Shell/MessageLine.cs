using Terminal.Gui.ViewBase;
using TrialLog.Plots;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Shell;

/// <summary>The line above the keys: what was done, or why it was not. A long one takes rows of the screen until the next key.</summary>
internal sealed class MessageLine : Canvas
{
    private const int MostRows = 4;

    private readonly Func<(string Text, Tone Tone)> _message;

    public MessageLine(Look look, Func<(string Text, Tone Tone)> message)
        : base(look)
    {
        _message = message;
        Y = Pos.Func(_ => Math.Max(0, (SuperView?.Viewport.Height ?? 2) - 1 - Rows));
        Height = Dim.Func(_ => Rows);
        CanFocus = false;
    }

    /// <summary>Rows that it takes now.</summary>
    public int Rows => Math.Clamp(Lines.Count, 1, MostRows);

    private IReadOnlyList<string> Lines
    {
        get
        {
            (string text, Tone tone) = _message();
            return WordWrap.Lines(Look.Strokes.Write(tone == Tone.Problem ? "✗ " + text : text), (SuperView?.Viewport.Width ?? 80) - 1);
        }
    }

    protected override void Paint(Brush brush)
    {
        Tone tone = _message().Tone;
        IReadOnlyList<string> lines = Lines;
        for (int row = 0; row < Math.Min(lines.Count, brush.Rows); row++)
            brush.Text(1, row, lines[row], tone);
    }
}
