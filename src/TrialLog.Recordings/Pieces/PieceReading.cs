using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Pieces;

/// <summary>How the stretches of an outing make up pieces.</summary>
public enum PieceShape
{
    /// <summary>By the watch: its workout's steps, or presses at both ends of each piece.</summary>
    Intervals,

    /// <summary>Out and back over the same water, without a rest at the turn.</summary>
    RoundTrips,

    /// <summary>Each stretch a piece of its own.</summary>
    OneWay,

    /// <summary>Each stretch in one direction a piece, the ways back easy.</summary>
    EasyWayBack,
}

/// <summary>One way to read the stretches of an outing as pieces.</summary>
/// <param name="Shape">How.</param>
/// <param name="Proposals">Every piece so found, in order, with those that are left out.</param>
/// <param name="Against">What speaks against it, part of a sentence; null where nothing does.</param>
/// <param name="Unsure">What is to be asked even where the card fits, a sentence; null where nothing is.</param>
public sealed record PieceReading(PieceShape Shape, IReadOnlyList<PieceProposal> Proposals, string? Against = null, string? Unsure = null)
{
    /// <summary>
    /// How likely this reading makes what the canoe did at rest, up to a constant that all readings share; NaN where that tells nothing.
    /// </summary>
    internal double LogLikelihood { get; init; } = double.NaN;

    /// <summary>The pieces that count.</summary>
    public IReadOnlyList<PieceProposal> Kept => [.. Proposals.Where(p => p.Kept)];

    /// <summary>Whether so many pieces of that distance are what counts.</summary>
    public bool Fits(PieceCard card) => Kept is var kept && kept.Count == card.Pieces && kept.All(p => card.Fits(p.Distance));

    /// <summary>Whether the same stretches count in the same groups.</summary>
    internal bool IsSame(PieceReading other) =>
        Kept is var mine && other.Kept is var theirs && mine.Count == theirs.Count
        && mine.Zip(theirs)
            .All(p => p.First.Start == p.Second.Start && p.First.End == p.Second.End && p.First.Legs.Count == p.Second.Legs.Count);
}
