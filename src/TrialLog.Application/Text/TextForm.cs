using System.Diagnostics.CodeAnalysis;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Text;

/// <summary>
/// One value's way into text and back, the same for options, questions, forms and files: what is written reads back as the very same value.
/// </summary>
/// <typeparam name="T">The value.</typeparam>
internal sealed class TextForm<T>(TextForm<T>.Reader read, Func<T, string> write)
    where T : struct
{
    /// <summary>Reads a text; <paramref name="problem"/> says what is wrong with one that cannot be read.</summary>
    public delegate bool Reader(string? text, out T value, [NotNullWhen(false)] out string? problem);

    /// <summary>Reads what a person typed.</summary>
    public bool TryRead(string? text, out T value, [NotNullWhen(false)] out string? problem) => read(text, out value, out problem);

    /// <summary>As <see cref="TryRead"/>.</summary>
    /// <exception cref="InvalidValueException">It cannot be read.</exception>
    public T Read(string text) => read(text, out T value, out string? problem) ? value : throw new InvalidValueException(problem);

    /// <summary>As <see cref="Read"/>; null for nothing typed.</summary>
    /// <exception cref="InvalidValueException">It cannot be read.</exception>
    public T? ReadIfAny(string? text) => string.IsNullOrWhiteSpace(text) ? null : Read(text);

    /// <summary>What is wrong with what was typed; null where it can be read, or nothing was typed.</summary>
    public string? Problem(string? text) => string.IsNullOrWhiteSpace(text) || read(text, out _, out string? problem) ? null : problem;

    /// <summary>The value as it stands in a field to be typed over.</summary>
    public string Write(T value) => write(value);

    /// <summary>As <see cref="Write(T)"/>; empty for none.</summary>
    public string Write(T? value) => value is { } known ? write(known) : "";
}
