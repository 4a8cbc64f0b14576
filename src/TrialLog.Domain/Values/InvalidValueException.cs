namespace TrialLog.Domain.Values;

/// <summary>
/// A value from outside that cannot be right: what it is, why it is refused and what would be accepted.
/// The message is one sentence for the person who typed it.
/// </summary>
public class InvalidValueException : Exception
{
    /// <summary>Creates the exception with a sentence for the user.</summary>
    public InvalidValueException(string message) : base(message) { }
}
