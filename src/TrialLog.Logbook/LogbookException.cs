namespace TrialLog.Logbook;

/// <summary>
/// A logbook or a shared record that cannot be read or written. The message says in one sentence what is wrong and
/// what to do; whatever was on disk before is still there unchanged.
/// </summary>
public sealed class LogbookException : Exception
{
    /// <summary>Creates the exception with a sentence for the user.</summary>
    public LogbookException(string message) : base(message) { }

    /// <summary>Creates the exception with a sentence for the user and what lies behind it.</summary>
    public LogbookException(string message, Exception cause) : base(message, cause) { }
}
