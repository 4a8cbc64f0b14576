using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using TrialLog.Recordings.Tracks;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Base;

/// <summary>Something laid over the screen for a moment: an explanation, a choice, a question.</summary>
internal abstract class Sheet : Canvas
{
    protected Sheet(Look look)
        : base(look)
    {
        CanFocus = true;
        TabStop = TabBehavior.TabGroup;
    }

    /// <summary>The keys that work while it lies there.</summary>
    public abstract IReadOnlyList<KeyHint> Keys { get; }

    /// <summary>Whether plain letters are typed into a field.</summary>
    public virtual bool Typing => false;

    /// <summary>What it shows and what its numbers mean, with a heading; null where that is said by the screen below it.</summary>
    public virtual (string Title, string Text)? Explanation => null;

    /// <summary>What would be lost if it were left now, in a sentence; null if nothing would.</summary>
    public virtual string? Unsaved => null;

    /// <summary>Whether another screen may be looked at meanwhile, because it is taken up again with what was done on it.</summary>
    public virtual bool IsTakenUpAgain => false;

    protected override bool OnKeyDown(Key key) => Heed(key);

    /// <summary>Does what the key asks for; false where it asks for nothing here.</summary>
    protected bool Heed(Key key)
    {
        if (Keys.FirstOrDefault(hint => hint.Answers(key)) is not { } known)
            return false;
        known.Do();
        return true;
    }

    /// <summary>Draws the sheet's heading and the line under it.</summary>
    protected static int Heading(Brush brush, string title)
    {
        brush.Text(2, 0, title, Tone.Title);
        brush.Text(2, 1, new string('─', Math.Max(0, brush.Columns - 4)), Tone.Dim);
        return 2;
    }
}
