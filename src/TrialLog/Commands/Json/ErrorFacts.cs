using TrialLog.Domain.Values;

namespace TrialLog.Commands.Json;

/// <summary>What <c>--json</c> prints on the error stream where a request cannot be met.</summary>
/// <param name="Error">What is wrong.</param>
/// <param name="Hint">What to do next; empty where nothing is known.</param>
internal sealed record ErrorFacts(string Error, string Hint)
{
    /// <summary>The message parted where it begins to say what to do.</summary>
    public static ErrorFacts Of(string message)
    {
        int at = message.IndexOf("; ", StringComparison.Ordinal) is > 0 and var semicolon ? semicolon
            : message.IndexOfAny(['.', '?']) is > 0 and var end && end + 1 < message.Length
                && char.IsWhiteSpace(message[end + 1]) ? end : -1;
        return at < 0 ? new(message, "") : new(message[..at].TrimEnd('.') + ".", message[(at + 1)..].Trim());
    }
}
