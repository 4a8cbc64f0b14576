namespace TrialLog.Recordings.Files;

/// <summary>
/// A recording that cannot be read. The message is one sentence for the user: what is wrong and what to do. Nothing was taken from the
/// file.
/// </summary>
public sealed class RecordingException : Exception
{
    /// <summary>Creates the exception with a sentence for the user.</summary>
    public RecordingException(string message) : base(message) { }

    /// <summary>Whether the file could be read as far as it goes if that were asked for.</summary>
    public bool CanTakeWhatIsWhole { get; init; }

    /// <summary>Creates the exception with a sentence for the user and what lay behind it.</summary>
    public RecordingException(string message, Exception inner) : base(message, inner) { }
}
