namespace TrialLog.Recordings.Pieces;

/// <summary>One way over the water, inside a piece.</summary>
public sealed record Leg
{
    /// <summary>When it began, since the recording's start.</summary>
    public required TimeSpan Start { get; init; }

    /// <summary>When it ended, since the recording's start.</summary>
    public required TimeSpan End { get; init; }

    /// <summary>Metres over ground between its edges.</summary>
    public required double Metres { get; init; }

    /// <summary>Mean speed over ground of its steady part, without the getting going and the easing off at its edges; m/s.</summary>
    public required double MetresPerSecond { get; init; }

    /// <summary>Whether it goes the other way than the piece's first leg.</summary>
    public bool Returns { get; init; }

    /// <summary>How long it took.</summary>
    public TimeSpan Duration => End - Start;
}
