using System.Diagnostics.CodeAnalysis;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>What a paddler, hull, paddle or outing may be called: up to 80 characters, none of them invisible controls.</summary>
public static class NameRule
{
    /// <summary>The longest name, in UTF-16 code units.</summary>
    public const int Longest = 80;

    /// <summary>The name without blanks around it.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="kind">What is named, for the message: <c>paddler</c>.</param>
    /// <exception cref="InvalidValueException">Empty, too long, or with control characters.</exception>
    public static string Checked(string? text, string kind) =>
        TryCheck(text, kind, out string? name, out string? problem) ? name : throw new InvalidValueException(problem);

    /// <summary>As <see cref="Checked"/>, without the exception; <paramref name="problem"/> says what is wrong.</summary>
    public static bool TryCheck(
        string? text, string kind, [NotNullWhen(true)] out string? name, [NotNullWhen(false)] out string? problem)
    {
        name = text?.Trim();
        problem = string.IsNullOrEmpty(name) ? $"A {kind} needs a name."
            : name.Length > Longest ? $"The {kind}'s name “{Quoted.Brief(name)}” is longer than {Longest} characters; shorten it."
            : Quoted.Visible(name) != name ? $"The {kind}'s name “{Quoted.Brief(name)}” has control characters; type it anew."
            : null;
        return problem is null;
    }
}
