using Terminal.Gui.Input;
using Terminal.Gui.Views;
using TrialLog.Application.Text;
using TrialLog.Domain.Values;

namespace TrialLog.Screens.Forms;

/// <summary>A line to type that knows what is wrong with it.</summary>
internal sealed class Field : TextField, IInput
{
    private readonly Func<string, string?> _check;

    /// <summary>A field whose text is checked elsewhere.</summary>
    public Field()
        : this("", _ => null)
    {
    }

    /// <param name="text">What stands there at first.</param>
    /// <param name="check">What is wrong with a text that is not empty, in words; null if it will do.</param>
    /// <param name="missing">What to say where nothing is typed; null where it may stay empty.</param>
    public Field(string text, Func<string, string?> check, string? missing = null)
    {
        (_check, Missing) = (check, missing);
        Text = text;
        Height = 1;
        TextChanged += (_, _) => Edited?.Invoke();
    }

    /// <summary>The text changed.</summary>
    public event Action? Edited;

    /// <summary>Sees each key before the field does; true where it took it.</summary>
    public Func<Key, bool>? KeyFirst { get; set; }

    /// <summary>What to say where nothing is typed; null where it may stay empty.</summary>
    public string? Missing { get; set; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Text);

    public string? Typo => IsEmpty ? null : _check(Text.Trim());

    public string? Problem => IsEmpty ? Missing : Typo;

    /// <summary>The text in the terminal's glyphs, so that it can be typed again there.</summary>
    public static Field ForLength(Length? length, LengthUnit unit, string? missing = null) => new(
        length is { } known ? known.Typed(unit) : "",
        text => Length.TryParse(text, unit, out _, out string? problem) ? null : problem,
        missing);

    /// <summary>The length that stands there, if any.</summary>
    public Length? AsLength(LengthUnit unit) => !IsEmpty && Length.TryParse(Text, unit, out Length length, out _) ? length : null;

    protected override bool OnKeyDown(Key key) => KeyFirst?.Invoke(key) == true || base.OnKeyDown(key);
}

/// <summary>Something in a form that can be filled in.</summary>
internal interface IInput
{
    /// <summary>What was changed.</summary>
    event Action? Edited;

    /// <summary>Sees each key before the input does; true where it took it.</summary>
    Func<Key, bool>? KeyFirst { get; set; }

    /// <summary>What is wrong with what was typed, shown at once; null if nothing.</summary>
    string? Typo { get; }

    /// <summary>What stands in the way of going on; null if nothing.</summary>
    string? Problem { get; }
}
