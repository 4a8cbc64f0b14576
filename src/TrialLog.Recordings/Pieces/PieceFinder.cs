using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Finds the pieces of an outing: every way in which its stretches can be read as pieces, the likelier first.</summary>
/// <param name="track">The track.</param>
/// <param name="marks">What the watch itself marked.</param>
internal sealed class PieceFinder(Track track, WatchMarks marks)
{
    // No sources: chosen. A current differs by less from one piece to the next, and two legs at one effort by less after it.
    private const double CurrentChanges = 0.25, DriftDiffers = 0.3;
    private const int LongestSeam = 90, MostParts = 5;
    private const double SeamShare = 0.7, EndsWhereItBegan = 0.3;
    private const int HalfTurn = 5;
    private const double ClearlySlower = 0.8;

    private readonly List<Stretch> found = LegFinder.Find(track, marks.Presses);
    private readonly RestEvidence rested = new(track);

    /// <summary>Every reading, the likelier first; none twice.</summary>
    /// <param name="card">What was to be paddled, where it is known: stretches that a fault of the watch cut in two are joined where they
    /// then make a leg of it.</param>
    public IReadOnlyList<PieceReading> Readings(PieceCard? card = null)
    {
        List<Stretch> whole = Joined(found, card?.Distance?.Metres), halves = Joined(found, card?.Distance?.Metres / 2);
        IEnumerable<PieceReading?> all =
        [
            OfSteps(whole),
            OfPresses(whole),
            RoundTrips(halves),
            EasyWayBack(whole),
            OneWay(whole),
        ];
        var readings = new List<PieceReading>();
        foreach (PieceReading reading in all.OfType<PieceReading>().OrderBy(r => r.Against is null ? 0 : 1))
        {
            PieceReading chosen = card is null ? reading : OfCardsDistance(reading, card);
            if (!readings.Exists(chosen.IsSame))
                readings.Add(chosen);
        }

        return readings;
    }

    // A stretch of another distance than the card's, beside as many as the card has, is none of the card's pieces.
    private static PieceReading OfCardsDistance(PieceReading reading, PieceCard card)
    {
        IReadOnlyList<PieceProposal> kept = reading.Kept;
        if (card.Distance is null || kept.Count <= card.Pieces || kept.Count(p => card.Fits(p.Distance)) != card.Pieces)
            return reading;
        return reading with
        {
            Proposals = [
                .. reading.Proposals.Select(
                p => p.Kept && !card.Fits(p.Distance) ? p with { LeftOutBecause = "not the card's distance" } : p)],
        };
    }

    private PieceReading? OfSteps(List<Stretch> legs)
    {
        if (marks.Steps.Count == 0)
            return null;
        var groups = new List<IReadOnlyList<Stretch>>();
        var names = new Dictionary<Stretch, string?>();
        foreach (WatchStep step in marks.Steps)
        {
            if (!track.Unbroken(step.Stretch.First, step.Stretch.Last))
                continue;
            List<Stretch> inside = Between(step.Stretch, legs);
            groups.Add(inside);
            names[inside[0]] = step.Name;
        }

        if (groups.Count == 0)
            return null;
        List<Stretch> rest = legs.FindAll(leg => !groups.Exists(g => leg.First < g[^1].Last && leg.Last > g[0].First));
        return new PieceReading(PieceShape.Intervals, Proposals(groups, LegPairs.Join(track, rest), g => names.GetValueOrDefault(g[0])));
    }

    private PieceReading? OfPresses(List<Stretch> legs)
    {
        var groups = new List<IReadOnlyList<Stretch>>();
        for (int i = 0; i + 1 < marks.Presses.Count; i++)
        {
            var between = new Stretch(marks.Presses[i], marks.Presses[i + 1]);
            List<Stretch> inside = Inside(legs, between);
            if (inside.Count > 0 && inside.Sum(l => l.Seconds) >= 0.7 * between.Seconds)
                groups.Add(inside);
        }

        if (groups.Count == 0)
            return null;
        List<Stretch> work = Work(legs);
        // Presses tell only where each stretch of work lies between two.
        if (!work.TrueForAll(leg => groups.Exists(g => g.Contains(leg))))
            return null;
        return Reading(PieceShape.Intervals, groups, legs);
    }

    private PieceReading? RoundTrips(List<Stretch> legs)
    {
        List<IReadOnlyList<Stretch>> pairs = Pairs(Work(legs));
        if (pairs.Count == 0)
            return null;
        Heading course = Course(pairs[0][0]);
        List<Stretch> there = pairs.ConvertAll(p => Course(p[0]).Cosine(course) > 0 ? p[0] : p[1]),
            home = pairs.ConvertAll(p => Course(p[0]).Cosine(course) > 0 ? p[1] : p[0]);
        double misfit = rested.IfAlike(there, home, course), current = (Median(there) - Median(home)) / 2;
        // Where no sensor tells that both legs were paddled alike, the canoe at rest must drift about as the legs say that the current
        // runs.
        bool unsure = misfit > DriftDiffers && Efforts.Compare(track, there, home) == Harder.Unknown;
        return Reading(PieceShape.RoundTrips, pairs, legs, "one way, where the pieces go out and back") with
        {
            Against = AgainstPairs(there, home),
            LogLikelihood = RestEvidence.OfAlike(misfit) + rested.OfTurns(pairs, RestEvidence.StopsOutAndBack),
            Unsure = unsure
                ? $"Out and back the legs show a current of {Math.Abs(current):0.0} m/s, but at rest the canoe drifted otherwise. Were " +
                    $"the pieces out and back, both ways at one effort?"
                : null,
        };
    }

    /// <summary>What shows that these legs out and back, pair by pair, were not paddled as round trips; null where nothing does.</summary>
    private string? AgainstPairs(List<Stretch> there, List<Stretch> home)
    {
        if (Efforts.Compare(track, there, home) is Harder.First or Harder.Second)
            return "the legs one way were paddled easier than those the other way";
        double[] currents = [.. there.Zip(home, (a, b) => (Speed(a) - Speed(b)) / 2)];
        for (int i = 1; i < currents.Length; i++)
        {
            if (Math.Abs(currents[i] - currents[i - 1]) > CurrentChanges)
                return "the current that the legs out and back would show changes too much from piece to piece";
        }

        return null;
    }

    private PieceReading? EasyWayBack(List<Stretch> legs)
    {
        List<Stretch> work = Work(legs);
        if (work.Count < 2)
            return null;
        Heading course = Course(work.MaxBy(l => l.Seconds));
        (List<Stretch> there, List<Stretch> home) = Ways(work, course);
        if (there.Count == 0 || home.Count == 0)
            return null;
        (List<Stretch> hard, string? against) = HarderWay(there, home, course);
        PieceReading reading = Reading(
            PieceShape.EasyWayBack, [.. hard.Select(l => (IReadOnlyList<Stretch>)[l])], legs, "the way back: the pieces go the other way");
        return reading with
        {
            Against = against,
            LogLikelihood = RestEvidence.OfEasy(rested.IfEasy(hard, hard == there ? home : there))
                + rested.OfTurns(Pairs(work), RestEvidence.StopsBeforeEasy),
        };
    }

    // Which way the pieces went: by sensors, else by the speed through the water, the drift at rest taken for the current.
    private (List<Stretch> Hard, string? Against) HarderWay(List<Stretch> there, List<Stretch> home, Heading course)
    {
        Harder told = Efforts.Compare(track, there, home);
        if (told == Harder.First)
            return (there, null);
        if (told == Harder.Second)
            return (home, null);
        double drift = rested.Along(course) ?? 0;
        double first = Median(there) - drift, second = Median(home) + drift;
        return (first >= second ? there : home, told == Harder.Neither ? "the ways out and back were paddled alike" : null);
    }

    private PieceReading OneWay(List<Stretch> legs)
    {
        List<Stretch> work = Work(legs);
        PieceReading reading = Reading(PieceShape.OneWay, [.. work.Select(l => (IReadOnlyList<Stretch>)[l])], legs);
        if (work.Count < 2)
            return reading;
        Heading course = Course(work.MaxBy(l => l.Seconds));
        (List<Stretch> there, List<Stretch> home) = Ways(work, course);
        return there.Count == 0 || home.Count == 0 ? reading : reading with
        {
            Against = Efforts.Compare(track, there, home) is Harder.First or Harder.Second
                ? "the pieces one way were paddled easier than those the other way" : null,
            LogLikelihood = RestEvidence.OfAlike(rested.IfAlike(there, home, course))
                + rested.OfTurns(Pairs(work), RestEvidence.StopsBetween),
        };
    }

    private List<IReadOnlyList<Stretch>> Pairs(List<Stretch> legs) => LegPairs.Join(track, legs).FindAll(g => g.Count == 2);

    private (List<Stretch> There, List<Stretch> Home) Ways(List<Stretch> legs, Heading course) =>
        (legs.FindAll(l => Course(l).Cosine(course) >= Directions.SameWayCosine),
            legs.FindAll(l => Course(l).Cosine(course) <= -Directions.SameWayCosine));

    private List<Stretch> Work(List<Stretch> legs)
    {
        var directions = new Directions(track, legs);
        return legs.FindAll(directions.IsWork);
    }

    // Of the groups those count that are about as fast as the work; all else stays in the list, left out.
    private PieceReading Reading(PieceShape shape, IReadOnlyList<IReadOnlyList<Stretch>> groups, List<Stretch> legs, string? whyNot = null)
    {
        Heading flow = new Directions(track, legs).Current(groups);
        double[] speeds = [.. groups.Select(g => g.Count > 1
            ? PieceMeasures.MeanOverGround(track, g)
            : Speed(g[0]) - flow.Length * flow.Cosine(Course(g[0])))];
        double level = WorkLevel.Of(groups.Select((g, i) => (speeds[i], (double)g.Sum(l => l.Seconds))));
        var kept = new List<IReadOnlyList<Stretch>>();
        var easy = new List<IReadOnlyList<Stretch>>();
        for (int i = 0; i < groups.Count; i++)
            (speeds[i] >= WorkLevel.Slowest * level ? kept : easy).Add(groups[i]);
        HashSet<Stretch> used = [.. groups.SelectMany(g => g)], work = [.. Work(legs)];
        List<Stretch> rest = legs.FindAll(leg => !used.Contains(leg) && !work.Contains(leg));
        easy.AddRange(LegPairs.Join(track, rest));
        List<IReadOnlyList<Stretch>> other = [
            .. legs.Where(leg => !used.Contains(leg) && work.Contains(leg)).Select(l => (IReadOnlyList<Stretch>)[l])];
        return new PieceReading(shape, Proposals(kept, [.. easy, .. other], _ => null, group => other.Contains(group) ? whyNot : null));
    }

    private IReadOnlyList<PieceProposal> Proposals(
        IReadOnlyList<IReadOnlyList<Stretch>> kept, IReadOnlyList<IReadOnlyList<Stretch>> easy,
        Func<IReadOnlyList<Stretch>, string?> name, Func<IReadOnlyList<Stretch>, string?>? whyNot = null)
    {
        int first = kept.Count > 0 ? kept.Min(g => g[0].First) : int.MaxValue, last = kept.Count > 0 ? kept.Max(g => g[^1].Last) : -1;
        HashSet<IReadOnlyList<Stretch>> counts = [.. kept];
        return Outward.Named(track,
        [
            .. kept.Concat(easy).OrderBy(g => g[0].First)
                .Select(g => PieceMeasures.Measure(track, g, counts.Contains(g) ? null : Why(g)) with { StepName = name(g) }),
        ]);

        string Why(IReadOnlyList<Stretch> group) =>
            whyNot?.Invoke(group) is { } reason ? reason
            : group[^1].Last <= first ? "warm-up: slower than the pieces"
            : group[0].First >= last ? "cool-down: slower than the pieces"
            : "easy paddling: slower than the pieces";
    }

    // Where stretches follow one another the same way without a rest, too short each and together just a leg, a fault cut them.
    private List<Stretch> Joined(List<Stretch> legs, double? metres)
    {
        if (metres is not { } leg)
            return legs;
        var card = new PieceCard(1, Distance.FromMetres(leg));
        var joined = new List<Stretch>();
        for (int i = 0; i < legs.Count; i++)
        {
            int last = i;
            for (int j = i; j < Math.Min(legs.Count, i + MostParts) && !Fits(legs[j]) && (j == i || IsSeam(legs[j - 1], legs[j])); j++)
            {
                if (j > i && Fits(new Stretch(legs[i].First, legs[j].Last)))
                    last = j;
            }

            joined.Add(new Stretch(legs[i].First, legs[last].Last));
            i = last;
        }

        return joined;

        bool Fits(Stretch stretch) => track.Along[stretch.Last] - track.Along[stretch.First] is >= 1 and var way
            && card.Fits(Distance.FromMetres(way));
    }

    private bool IsSeam(Stretch before, Stretch after) =>
        after.First - before.Last <= LongestSeam && track.Unbroken(before.First, after.Last)
        && Course(before).Cosine(Course(after)) >= Directions.SameWayCosine
        && track.Along[after.First] - track.Along[before.Last] >= SeamShare * Math.Min(Speed(before), Speed(after)) * (
            track.Seconds[after.First] - track.Seconds[before.Last]);

    /// <summary>
    /// The legs between two points, from the one to the other: those found, else out and back by the farthest point, else one.
    /// </summary>
    public List<Stretch> Between(Stretch frame) => Between(frame, found);

    private List<Stretch> Between(Stretch frame, List<Stretch> all)
    {
        List<Stretch> legs = Inside(all, frame);
        if (legs.Count < 2)
            return OutAndBack(frame) ?? [frame];
        legs[0] = legs[0] with { First = frame.First };
        legs[^1] = legs[^1] with { Last = frame.Last };
        return legs;
    }

    /// <summary>Where one stretch turns back, else where it was clearly slowest; null where it does neither.</summary>
    public int? SeamOf(Stretch frame)
    {
        if (OutAndBack(frame) is [var there, var back])
            return (there.Last + back.First) / 2;
        int margin = Math.Max((int)RecordedOuting.ShortestLeg.TotalSeconds, frame.Seconds / 10);
        int[] inside = [.. Enumerable.Range(frame.First + margin, Math.Max(0, frame.Seconds - 2 * margin))];
        if (inside.Length == 0)
            return null;
        double Around(int at) => Enumerable.Range(at - HalfTurn, 2 * HalfTurn + 1).Average(i => track.Speed[i]);
        int slowest = inside.MinBy(Around);
        return Around(slowest) < ClearlySlower * inside.Average(i => track.Speed[i]) ? slowest : null;
    }

    // Where noise hid a leg, but the way ends about where it began.
    private List<Stretch>? OutAndBack(Stretch frame)
    {
        if (Course(frame).Length > EndsWhereItBegan * (track.Along[frame.Last] - track.Along[frame.First]))
            return null;
        int turn = Enumerable.Range(frame.First, frame.Seconds + 1).MaxBy(i => track.Between(frame.First, i).Length);
        List<Stretch> legs = [new(frame.First, turn - HalfTurn), new(turn + HalfTurn, frame.Last)];
        return legs.TrueForAll(l => l.Seconds >= RecordedOuting.ShortestLeg.TotalSeconds)
            && Course(legs[0]).Cosine(Course(legs[1])) <= -Directions.SameWayCosine ? legs : null;
    }

    private static List<Stretch> Inside(List<Stretch> legs, Stretch frame) =>
        [.. legs.Where(l => Math.Min(l.Last, frame.Last) - Math.Max(l.First, frame.First) > 0.6 * l.Seconds)
            .Select(l => new Stretch(Math.Max(l.First, frame.First), Math.Min(l.Last, frame.Last)))];

    private double Median(List<Stretch> legs) => legs.Select(Speed).Order().ElementAt(legs.Count / 2);

    private Heading Course(Stretch leg) => track.Between(leg.First, leg.Last);

    private double Speed(Stretch leg) => Steadiness.MeanSpeed(track, Steadiness.SteadyPart(track, leg));
}
