using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Logging;

/// <summary>Which outings to show, and in which order.</summary>
internal sealed record OutingSelection
{
    /// <summary>Everything, the latest first.</summary>
    public static readonly OutingSelection All = new();

    public Guid? HullId { get; init; }

    /// <summary>Outings with at least one piece with that paddle.</summary>
    public Guid? PaddleId { get; init; }

    /// <summary>The first day, inclusive.</summary>
    public DateOnly? From { get; init; }

    /// <summary>The last day, inclusive.</summary>
    public DateOnly? To { get; init; }

    public OutingOrder Order { get; init; }

    /// <summary>Whether anything is left out.</summary>
    public bool IsNarrowed => HullId is not null || PaddleId is not null || From is not null || To is not null;

    /// <summary>The outings that are meant, in the order that is meant.</summary>
    public IReadOnlyList<Outing> Of(IReadOnlyList<Outing> outings)
    {
        IEnumerable<Outing> meant = outings.Where(outing =>
            (HullId is null || outing.HullId == HullId)
            && (PaddleId is null || outing.Pieces.Any(piece => piece.PaddleId == PaddleId))
            && (From is null || outing.Date >= From)
            && (To is null || outing.Date <= To));
        return Order switch
        {
            OutingOrder.LatestFirst => [.. meant.Reverse()],
            OutingOrder.OldestFirst => [.. meant],
            OutingOrder.LongestPaddleFirst => [.. meant.OrderByDescending(outing => outing.Pieces.Max(piece => (Length?)piece.Length))],
            _ => [.. meant.OrderByDescending(outing => outing.Pieces.Max(piece => (double?)piece.MetresPerSecond))],
        };
    }
}

/// <summary>In which order outings are shown.</summary>
internal enum OutingOrder
{
    LatestFirst,
    OldestFirst,
    LongestPaddleFirst,
    FastestPieceFirst,
}
