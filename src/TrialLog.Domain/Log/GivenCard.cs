using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

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

    /// <summary>Why these lengths, as it was said then; empty where nothing was said.</summary>
    public string Reason { get; init; } = "";

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

    /// <summary>Whether the lengths are kept from the paddler until the times are in.</summary>
    public bool Blind { get; init; }

    /// <summary>The coach whose card this is; null where it is the program's own.</summary>
    public string? By { get; init; }

    /// <summary>Why the coach chose it; null where nothing was said.</summary>
    public string? Because { get; init; }

    /// <summary>What the program would have given instead of a coach's card; empty for its own cards.</summary>
    public IReadOnlyList<Length> OwnLengths { get; init; } = [];

    /// <summary>What was said then of the outings still to go: median, and the ends of its range; null where nothing was said.</summary>
    public (int Median, int Low, int High)? OutingsToGo { get; init; }

    /// <summary>The outing that was paddled by it, once known.</summary>
    public Guid? PaddledAs { get; init; }
}
