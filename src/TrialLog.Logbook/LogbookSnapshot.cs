using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Logbook;

/// <summary>Everything in a logbook at one moment.</summary>
public sealed record LogbookSnapshot
{
    /// <summary>By name.</summary>
    public IReadOnlyList<Paddler> Paddlers { get; init; } = [];

    /// <summary>By name.</summary>
    public IReadOnlyList<Hull> Hulls { get; init; } = [];

    /// <summary>By name.</summary>
    public IReadOnlyList<Paddle> Paddles { get; init; } = [];

    /// <summary>With their pieces, by date, time and label.</summary>
    public IReadOnlyList<Outing> Outings { get; init; } = [];

    /// <summary>In the order given.</summary>
    public IReadOnlyList<GivenCard> Cards { get; init; } = [];

    /// <summary>By date.</summary>
    public IReadOnlyList<TechniqueCheck> TechniqueChecks { get; init; } = [];

    /// <summary>Words that soreness is gone, by date.</summary>
    public IReadOnlyList<SorenessClearance> SorenessClearances { get; init; } = [];

    /// <summary>By date.</summary>
    public IReadOnlyList<Decision> Decisions { get; init; } = [];

    /// <summary>In the order written.</summary>
    public IReadOnlyList<CoachNote> Notes { get; init; } = [];

    /// <summary>The number of the change after which the logbook was like this.</summary>
    public long LastChange { get; init; }
}

/// <summary>That somebody paddled with a paddle.</summary>
/// <param name="PaddleId">The paddle.</param>
/// <param name="PaddlerId">Who.</param>
/// <param name="Pieces">How many pieces.</param>
public readonly record struct PaddleUse(Guid PaddleId, Guid PaddlerId, int Pieces);
