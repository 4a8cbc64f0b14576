using Terminal.Gui.Input;

namespace TrialLog.Screens.Base;

/// <summary>A key that works now, what it does in a word or two, and the doing itself.</summary>
/// <param name="Key">The key.</param>
/// <param name="Label">How the key is written: <c>Enter</c>, <c>e</c>.</param>
/// <param name="What">What it does: <c>type the outing</c>.</param>
/// <param name="Do">Does it.</param>
internal sealed record KeyHint(Key Key, string Label, string What, Action Do)
{
    /// <summary>A hint for a plain letter.</summary>
    public KeyHint(char letter, string what, Action act)
        : this(new Key(letter), letter.ToString(), what, act)
    {
    }

    /// <summary>Other keys that do the same and are not shown.</summary>
    public IReadOnlyList<Key> Also { get; init; } = [];

    public bool Answers(Key key) => key != Key.Empty && (key == Key || Also.Contains(key));
}
