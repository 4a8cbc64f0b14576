using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using TrialLog.Domain.Values;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Paint;

namespace TrialLog.Screens.Base;

/// <summary>One of the screens: what it answers, the keys that work on it now, and its explanation in plain words.</summary>
internal abstract class Screen : Canvas
{
    protected Screen(Session session)
        : base(session.Look)
    {
        Session = session;
        CanFocus = true;
        TabStop = TabBehavior.TabGroup;
    }

    protected Session Session { get; }

    /// <summary>Its name on a wide and on a narrow terminal.</summary>
    public abstract (string Wide, string Narrow) Names { get; }

    /// <summary>The keys that work now, the most wanted first.</summary>
    public abstract IReadOnlyList<KeyHint> Keys { get; }

    /// <summary>What the screen shows and what its numbers mean; paragraphs apart by an empty line.</summary>
    public abstract string Explanation { get; }

    /// <summary>Whether plain letters and digits are typed into a field now.</summary>
    public virtual bool Typing => false;

    /// <summary>Called when the screen comes up, and when the log or the choice changed while it is up.</summary>
    public virtual void Refresh()
    {
    }

    /// <summary>Called when the user comes to the screen, after <see cref="Refresh"/>.</summary>
    public virtual void Begin() => SetFocus();

    /// <summary>The key that says in sentences what the screen shows, for those who cannot see it.</summary>
    /// <param name="words">The paragraphs.</param>
    protected KeyHint InWords(Func<IEnumerable<string>> words) => new('v', "in words", () => Session.Shell.Lay(
        new TextSheet(Look, Session.Shell, $"{Names.Wide} in words{(Session.Whose() is { Length: > 0 } whose ? $": {whose}" : "")}",
            string.Join('\n', words()))));

    protected override bool OnKeyDown(Key key) => Heed(key);

    /// <summary>Does what the key asks for; false where it asks for nothing here.</summary>
    protected bool Heed(Key key)
    {
        if (Keys.FirstOrDefault(hint => hint.Answers(key)) is not { } known)
            return false;
        known.Do();
        return true;
    }
}
