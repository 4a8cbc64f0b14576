namespace TrialLog.Application.Wording;

/// <summary>To whom a sentence speaks: <c>you</c> to the paddler, the name in what a coach reads.</summary>
/// <param name="Name">The paddler's name for a coach's eyes; null speaks to the paddler.</param>
internal readonly record struct Voice(string? Name)
{
    /// <summary>Speaks to the paddler.</summary>
    public static readonly Voice ToThePaddler;

    /// <summary><c>you</c>, or the name.</summary>
    public string You => Name ?? "you";

    /// <summary><c>You</c>, or the name.</summary>
    public string YouFirst => Name ?? "You";

    /// <summary><c>your</c>, or <c>the</c> once the name was said.</summary>
    public string Your => Name is null ? "your" : "the";

    /// <summary><c>Your</c>, or <c>The</c>.</summary>
    public string YourFirst => Name is null ? "Your" : "The";

    /// <summary><c>you have</c>, <c>Tova has</c>.</summary>
    public string YouHave => Name is null ? "you have" : Name + " has";

    /// <summary><c>you are</c>, <c>Tova is</c>.</summary>
    public string YouAre => Name is null ? "you are" : Name + " is";

    /// <summary><c>you were</c>, <c>Tova was</c>.</summary>
    public string YouWere => Name is null ? "you were" : Name + " was";
}
