using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Shell;

/// <summary>The line above the keys: what was just done, what went wrong, what is being worked on.</summary>
internal sealed class MessageLine : Canvas
{
    private readonly Func<(string Text, Tone Tone)> _message;

    public MessageLine(Look look, Func<(string Text, Tone Tone)> message)
        : base(look)
    {
        _message = message;
        Height = 1;
        CanFocus = false;
    }

    protected override void Paint(Brush brush)
    {
        (string text, Tone tone) = _message();
        brush.Text(1, 0, tone == Tone.Problem ? "✗ " + text : text, tone);
    }
}
