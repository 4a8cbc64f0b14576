namespace TrialLog.Domain;

/// <summary>A trial card as it was given, with what was known then, so that a coach can see what was suggested when.</summary>
public sealed record GivenCard
{
    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>For whom.</summary>
    public required Guid PaddlerId { get; init; }

    /// <summary>For which hull.</summary>
    public required Guid HullId { get; init; }

    /// <summary>For which paddle.</summary>
    public required Guid PaddleId { get; init; }

    /// <summary>When it was given (UTC).</summary>
    public required DateTimeOffset GivenAt { get; init; }

    /// <summary>The card.</summary>
    public required TrialCard Card { get; init; }

    /// <summary>Best length known then.</summary>
    public required Length Best { get; init; }

    /// <summary>Lower end of the likely range then.</summary>
    public required Length LikelyLow { get; init; }

    /// <summary>Upper end of the likely range then.</summary>
    public required Length LikelyHigh { get; init; }

    /// <summary>Gain left then, percent of speed.</summary>
    public required double GainLeftPercent { get; init; }

    /// <summary>Whether returns had diminished then.</summary>
    public required bool DiminishingReturns { get; init; }

    /// <summary>Outings that counted then.</summary>
    public required int Outings { get; init; }

    /// <summary>Pieces that counted then.</summary>
    public required int Pieces { get; init; }

    /// <summary>The logbook's change number then; with it the log can be put back to how it was.</summary>
    public required long AsOfChange { get; init; }

    /// <summary>The outing that was paddled by it, once known.</summary>
    public Guid? PaddledAs { get; init; }
}
