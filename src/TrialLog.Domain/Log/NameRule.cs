using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>
/// What a paddler, hull, paddle or outing may be called: up to 80 characters, something to be seen among them, no controls. Accents
/// are joined to their letters and invisible characters dropped, so that what looks alike is alike.
/// </summary>
public static class NameRule
{
    /// <summary>The longest name, in UTF-16 code units.</summary>
    public const int Longest = 80;

    /// <summary>The name without blanks around it, its accents joined to their letters, without invisible characters.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="kind">What is named, for the message: <c>paddler</c>.</param>
    /// <exception cref="InvalidValueException">Empty, nothing to be seen, too long, or with control characters.</exception>
    public static string Checked(string? text, string kind) =>
        TryCheck(text, kind, out string? name, out string? problem) ? name : throw new InvalidValueException(problem);

    /// <summary>As <see cref="Checked"/>, without the exception; <paramref name="problem"/> says what is wrong.</summary>
    public static bool TryCheck(
        string? text, string kind, [NotNullWhen(true)] out string? name, [NotNullWhen(false)] out string? problem)
    {
        name = Accents.Compose(WithoutInvisible(text ?? "")).Trim();
        problem = !name.EnumerateRunes().Any(IsSeen) ? $"A {kind} needs a name."
            : name.Length > Longest ? $"The {kind}'s name “{Quoted.Brief(name)}” is longer than {Longest} characters; shorten it."
            : Quoted.Visible(name) != name ? $"The {kind}'s name “{Quoted.Brief(name)}” has control characters; type it anew."
            : null;
        return problem is null;
    }

    // The two that join and part letters belong to the spelling of some scripts; directions are refused with the controls.
    private static string WithoutInvisible(string text) => string.Concat(text.Where(c =>
        !Blank.Contains(c)
            && (c is '\u200C' or '\u200D' || Quoted.Visible(c.ToString()) == "\uFFFD"
            || char.GetUnicodeCategory(c) != UnicodeCategory.Format)));

    // Letters and signs to Unicode, nothing to the eye: the Hangul fillers and the empty Braille cell.
    private const string Blank = "\u115F\u1160\u3164\uFFA0\u2800";

    private static bool IsSeen(Rune rune) =>
        Rune.IsLetterOrDigit(rune) || Rune.IsSymbol(rune) || Rune.IsPunctuation(rune) || Rune.IsNumber(rune);
}
