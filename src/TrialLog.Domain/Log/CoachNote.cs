namespace TrialLog.Domain.Log;

/// <summary>What a coach wrote about a paddler, an outing or a card.</summary>
public sealed record CoachNote
{
    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>The paddler, outing or card it is about.</summary>
    public required Guid AboutId { get; init; }

    /// <summary>What kind of thing it is about.</summary>
    public required NoteSubject About { get; init; }

    /// <summary>Who wrote it.</summary>
    public required string Author { get; init; }

    /// <summary>When (UTC).</summary>
    public required DateTimeOffset WrittenAt { get; init; }

    /// <summary>The text, 1 to 4,000 characters.</summary>
    public required string Text { get; init; }
}

/// <summary>What a coach's note is about.</summary>
public enum NoteSubject
{
    /// <summary>A paddler.</summary>
    Paddler,

    /// <summary>An outing.</summary>
    Outing,

    /// <summary>A trial card.</summary>
    Card,
}
