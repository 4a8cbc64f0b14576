using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Which end of a leg.</summary>
public enum LegEdge
{
    /// <summary>Where it begins.</summary>
    Start,

    /// <summary>Where it ends.</summary>
    End,
}

/// <summary>Corrections by the user. Pieces are numbered from 0 as in <see cref="RecordedOuting.Proposals"/>.</summary>
public sealed partial record RecordedOuting
{
    /// <summary>The shortest leg that the user may make.</summary>
    public static readonly TimeSpan ShortestLeg = TimeSpan.FromSeconds(10);

    private const int LongestBridgeBetweenParts = 30;

    /// <summary>Moves one edge of one leg to that time since the start, to the nearest second.</summary>
    /// <exception cref="InvalidValueException">It would cross another edge, leave the recording or a gap in it, or leave less than ten
    /// seconds.</exception>
    public RecordedOuting MoveEdge(int piece, int leg, LegEdge edge, TimeSpan to)
    {
        List<Stretch> legs = Stretches(piece);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)leg, (uint)legs.Count, nameof(leg));
        int at = Index(to);
        legs[leg] = edge == LegEdge.Start ? legs[leg] with { First = at } : legs[leg] with { Last = at };
        return Replace(piece, 1, [legs], Proposals[piece].LeftOutBecause);
    }

    /// <summary>Makes one piece of a piece and the next: a round trip if one goes back over the other, one leg if they follow on.</summary>
    /// <exception cref="InvalidValueException">There is no next piece.</exception>
    public RecordedOuting Merge(int piece)
    {
        List<Stretch> legs = Stretches(piece);
        if (piece + 1 >= Proposals.Count)
            throw new InvalidValueException("There is no piece after it to merge with.");
        List<Stretch> next = Stretches(piece + 1);
        Stretch last = legs[^1], follows = next[0];
        bool sameWay = Track.Between(last.First, last.Last).Cosine(Track.Between(follows.First, follows.Last)) > 0;
        if (sameWay && follows.First - last.Last <= LongestBridgeBetweenParts && Track.Unbroken(last.First, follows.Last))
        {
            legs[^1] = new Stretch(last.First, follows.Last);
            next.RemoveAt(0);
        }

        return Replace(piece, 2, [[.. legs, .. next]], null);
    }

    /// <summary>Makes two pieces of one, cut at that time since the start.</summary>
    /// <exception cref="InvalidValueException">Less than ten seconds would be left on one side.</exception>
    public RecordedOuting Split(int piece, TimeSpan at)
    {
        List<Stretch> legs = Stretches(piece);
        int cut = Index(at);
        List<Stretch> before = [], after = [];
        foreach (Stretch leg in legs)
        {
            if (leg.First < cut)
                before.Add(leg with { Last = Math.Min(leg.Last, cut) });
            if (leg.Last > cut)
                after.Add(leg with { First = Math.Max(leg.First, cut) });
        }

        if (before.Count == 0 || after.Count == 0)
            throw new InvalidValueException("The cut must lie inside the piece.");
        return Replace(piece, 1, [before, after], Proposals[piece].LeftOutBecause);
    }

    /// <summary>
    /// Where a piece that is two would be cut: at the longest pause between its legs, else at its turn, else where it was clearly slowest;
    /// null where nothing tells.
    /// </summary>
    public TimeSpan? CutOf(int piece)
    {
        List<Stretch> legs = Stretches(piece);
        int? at = legs.Count > 1
            ? legs.Zip(legs.Skip(1)).MaxBy(pair => pair.Second.First - pair.First.Last) is var pause
                ? (pause.First.Last + pause.Second.First) / 2 : null
            : finder.SeamOf(legs[0]);
        return at is { } point ? TimeSpan.FromSeconds(Track.Seconds[point]) : null;
    }

    /// <summary>Leaves a piece out; it stays in the list with the reason.</summary>
    public RecordedOuting Drop(int piece, string because = "dropped by hand") =>
        With(piece, Proposals[Checked(piece)] with { LeftOutBecause = because });

    /// <summary>Counts a piece that was left out.</summary>
    public RecordedOuting Keep(int piece) => With(piece, Proposals[Checked(piece)] with { LeftOutBecause = null });

    /// <summary>Adds a one-way piece or a loop between two times since the start, where none was found.</summary>
    /// <exception cref="InvalidValueException">It overlaps another piece, leaves the recording or a gap in it, or is shorter than ten
    /// seconds.</exception>
    public RecordedOuting Add(TimeSpan start, TimeSpan end)
    {
        int place = Proposals.TakeWhile(p => p.Start < start).Count();
        return Replace(place, 0, [[new Stretch(Index(start), Index(end))]], null);
    }

    /// <summary>Pieces between these times and no others; a leg out and a leg back found between them make a round trip.</summary>
    /// <exception cref="InvalidValueException">They overlap, leave the recording or a gap in it, or are shorter than ten
    /// seconds.</exception>
    public RecordedOuting Only(IReadOnlyList<(TimeSpan Start, TimeSpan End)> pieces)
    {
        List<List<Stretch>> legs = [.. pieces.Select(p => finder.Between(new Stretch(Index(p.Start), Index(p.End))))];
        return legs.Count == 0 ? throw new InvalidValueException("Say at least one piece.")
            : (this with { Proposals = [] }).Replace(0, 0, legs, null) with { Before = this };
    }

    private int Checked(int piece)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)piece, (uint)Proposals.Count, nameof(piece));
        return piece;
    }

    private List<Stretch> Stretches(int piece) =>
        [.. Proposals[Checked(piece)].Legs.Select(l => new Stretch(Index(l.Start), Index(l.End)))];

    private int Index(TimeSpan at)
    {
        double seconds = Math.Round(at.TotalSeconds);
        if (seconds < 0 || seconds > Track.Seconds[^1])
            throw new InvalidValueException("That time lies outside the recording.");
        return Track.IndexAt(seconds);
    }

    private RecordedOuting With(int piece, PieceProposal proposal) =>
        Corrected([.. Proposals.Take(piece), proposal, .. Proposals.Skip(piece + 1)]);

    private RecordedOuting Corrected(IReadOnlyList<PieceProposal> proposals) =>
        this with { Proposals = Outward.Named(Track, proposals), corrected = true, Before = this };

    private RecordedOuting Replace(int piece, int count, IReadOnlyList<List<Stretch>> by, string? leftOutBecause)
    {
        foreach (List<Stretch> legs in by)
            Check(legs);
        List<PieceProposal> all =
        [
            .. Proposals.Take(piece),
            .. by.Select(legs => PieceMeasures.Measure(Track, legs, leftOutBecause)),
            .. Proposals.Skip(piece + count),
        ];
        for (int i = 1; i < all.Count; i++)
        {
            if (all[i].Start < all[i - 1].End)
                throw new InvalidValueException("It would overlap the piece beside it; move or drop that one first.");
        }

        return Corrected(all);
    }

    private void Check(List<Stretch> legs)
    {
        for (int i = 0; i < legs.Count; i++)
        {
            if (i > 0 && legs[i].First < legs[i - 1].Last)
                throw new InvalidValueException("It would overlap the other leg of the piece.");
            if (legs[i].Last - legs[i].First < ShortestLeg.TotalSeconds)
                throw new InvalidValueException($"That would leave less than {ShortestLeg.TotalSeconds:0} seconds to measure.");
            if (!Track.Unbroken(legs[i].First, legs[i].Last))
                throw new InvalidValueException("The recording has a gap there that is too long to bridge; end the piece before it.");
        }
    }
}
