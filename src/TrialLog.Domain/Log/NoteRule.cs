using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>
/// What free text (notes, a place, the reason for leaving a piece out) may hold: up to 4,000 characters, line breaks and tabs but no other
/// controls.
/// </summary>
public static class NoteRule
{
    /// <summary>The longest text, in UTF-16 code units.</summary>
    public const int Longest = 4000;

    private static readonly SearchValues<char> Refused = SearchValues.Create(
        [.. Enumerable.Range(0, 0xA0).Select(code => (char)code).Where(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'))]);

    /// <summary>Checks a text; blank text is no text (<paramref name="note"/> is null).</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="kind">What it is, for the message: <c>note</c>.</param>
    /// <param name="note">The text as it stands, or null where it is blank.</param>
    /// <param name="problem">What is wrong.</param>
    /// <returns>Whether the text may stand.</returns>
    public static bool TryCheck(string? text, string kind, out string? note, [NotNullWhen(false)] out string? problem)
    {
        note = string.IsNullOrWhiteSpace(text) ? null : text;
        problem = note is null ? null
            : note.Length > Longest ? $"The {kind} “{Quoted.Brief(note)}” is longer than {Longest} characters; shorten it."
            : note.AsSpan().ContainsAny(Refused) ? $"The {kind} “{Quoted.Brief(note)}” has control characters; type it anew."
            : null;
        return problem is null;
    }
}
