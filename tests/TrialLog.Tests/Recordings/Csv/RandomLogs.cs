using CsCheck;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.TestData.Recordings.Simulation;

namespace TrialLog.Tests.Recordings.Csv;

/// <summary>Logs as odd as a logbook can hold.</summary>
internal static class RandomLogs
{
    private static readonly Gen<string> Word = Gen.OneOf(
        Gen.Char['a', 'z'].Array[1, 8].Select(letters => new string(letters)),
        Gen.OneOf("🛶",
            "=cmd()", "+1", "＝1", "-x", "@sum", "'=x", "''@", "'Okina", "a,b", "a;b", "\"q\"", "Zoë", "(2)", "ßß", "s", "ſ", "ı",
            "İ", "x\u00A0y"));

    private static readonly Gen<string> Name = Word.Array[1, 3].Select(words => string.Join(' ', words));

    private static readonly Gen<string> Note = Gen.Select(
        Gen.OneOf("", "'", "=", "\t", "\n", " ", "  ", "\""), Name,
            Gen.OneOf("", "\r\n", "\n", "\r", "\r=1+1", "\"", " ", ",", ";\t", "\nline"), Name,
        (a, b, c, d) => a + b + c + d);

    private static readonly Gen<Length> PaddleLength =
        Gen.OneOf(Gen.Int[30 * 64, 80 * 64].Select(n => Length.FromNanometres(n * 25_400_000L / 64)),
            Gen.Int[762, 2032].Select(mm => Length.FromMillimetres(mm)));

    private static readonly Gen<Hull> RandomHull = Gen.Select(
        Gen.Guid, Name, Gen.Int[1, 24], Maybe(Gen.Int[0, 24 * 64].Select(n => Length.FromInches(n / 64.0))), (id, name, crew, seat) =>
            new Hull { Id = id, Name = name, Crew = crew, SeatHeight = seat });

    private static readonly Gen<Paddle> RandomPaddle = Gen.Select(
        Gen.Select(Gen.Guid, Name), PaddleLength, PaddleLength, Gen.Int[8 * 16, 29 * 16], Maybe(Gen.Double[20, 250]), Gen.Bool,
            Gen.Int[500, 25_400],
        (who, a, b, blade, area, steering, step) => new Paddle
        {
            Id = who.Item1,
            Name = who.Item2,
            Shortest = a < b ? a : b,
            Longest = a < b ? b : a,
            Blade = Length.FromInches(blade / 16.0),
            BladeAreaSquareInches = area,
            Steering = steering,
            Step = Length.FromMillimetres(step / 1000.0),
        });

    // The middle of what is believed of each measure.
    private static readonly double[] TypicalInches = [50, 67, 22, 14, 13, 30, 15, 68, 56, 7.75, 4.55];

    private static readonly Gen<BodyMeasures> Body = Maybe(Gen.Long[-45_000_000, 45_000_000]).Array[11].Select(all =>
        CsvColumns.OfBody.Select(body => body.Measure).Aggregate(BodyMeasures.Unknown, (body, measure) => body.With(
            measure, all[(int)measure] is { } more
                ? Length.FromNanometres(Length.FromInches(TypicalInches[(int)measure]).Nanometres + more) : null)));

    private static readonly Gen<Distance> AnyDistance = Gen.Long[1_000_000, 1_000_000_000_000].Select(Distance.FromMicrometres);

    private static readonly Gen<PieceTime> AnyTime = Gen.Long[1000, 172_800_000].Select(PieceTime.FromMilliseconds);

    /// <summary>A whole log: names are unique without regard to case, and lengths are within their paddle's range.</summary>
    public static readonly Gen<KnownLog> Log =
        from hulls in RandomHull.Array[0, 3]
        from paddles in RandomPaddle.Array[1, 3]
        let allHulls = (IReadOnlyList<Hull>)[
            .. StandardHulls.All.Select((hull, i) => i == 0 ? hull with { SeatHeight = Length.FromInches(9) } : hull),
            .. Unique(hulls, hull => hull.Name).Where(hull => StandardHulls.All.All(one => !Same(one.Name, hull.Name)))]
        let allPaddles = Unique(paddles, paddle => paddle.Name)
        from paddlers in RandomPaddler(allHulls).Array[1, 3]
        let allPaddlers = Unique(paddlers, paddler => paddler.Name)
        from owners in Gen.Int[-2, allPaddlers.Count - 1].Array[allPaddles.Count]
        let owned = (IReadOnlyList<Paddle>)[
            .. allPaddles.Select(
            (paddle, i) => paddle with { OwnerId = owners[i] >= 0 ? allPaddlers[owners[i]].Id : null, BelongsToClub = owners[i] == -1 })]
        from outings in RandomOuting(allPaddlers, allHulls, allPaddles).Array[0, 8]
        select new KnownLog(allPaddlers, allHulls, owned, outings);

    private static Gen<Paddler> RandomPaddler(IReadOnlyList<Hull> hulls) => Gen.Select(
        Gen.Guid, Name, Gen.Enum<LengthUnit>(), Body, Maybe(PaddleLength),
        Gen.Select(Gen.Bool, Gen.Int[0, hulls.Count - 1], Maybe(AnyDistance), Maybe(AnyTime)),
            Gen.Select(Gen.Bool, Maybe(Gen.Double[0.01, 5])),
        Gen.Select(Maybe(Gen.Int[2, 8]), Maybe(AnyDistance), Maybe(Gen.Int[15, 300]), Maybe(Gen.Enum<TimedBy>()),
            Maybe(Gen.Double[0.0005, 1])),
        (id, name, unit, body, known, goal, rest, trials) => new Paddler
        {
            Id = id,
            Name = name,
            Unit = unit,
            Body = body,
            KnownLength = known,
            SwapsOnWater = rest.Item1,
            WorthwhilePercent = rest.Item2,
            Trials = new TrialHabits
            {
                Pieces = trials.Item1 * 2, Distance = trials.Item2, Minutes = trials.Item3, TimedBy = trials.Item4,
                PricePercent = trials.Item5
            },
            Goal = goal.Item1 ? new GoalEvent { HullId = hulls[goal.Item2].Id, Distance = goal.Item3, Time = goal.Item4 } : null,
        });

    private static Gen<Outing> RandomOuting(IReadOnlyList<Paddler> paddlers, IReadOnlyList<Hull> hulls, IReadOnlyList<Paddle> paddles) =>
        Gen.Select(
        Gen.Select(Gen.Guid, Gen.Int[0, paddlers.Count - 1], Gen.Int[0, hulls.Count - 1]),

        // Few days, hours and labels, so that outings often look alike.
        Gen.Int[0, 2], Maybe(Gen.Int[0, 2].Select(hour => new TimeOnly(7 + hour, 20 * hour, hour == 2 ? 5 : 0))),
            Gen.OneOf(Gen.OneOf("", "", "am", "AM"), Name),
        Gen.Select(Maybe(Gen.Int[0, 12].Select(Beaufort.FromNumber)), MaybeText(Note), MaybeText(Note), MaybeText(Note), Gen.Bool),
        Gen.Select(RandomPiece(paddles).Array[0, 5], Gen.Int[0, 3]),
        (who, day, time, label, conditions, pieces) => new Outing
        {
            Id = who.Item1,
            PaddlerId = paddlers[who.Item2].Id,
            HullId = hulls[who.Item3].Id,
            Date = new DateOnly(2026, 5, 1).AddDays(day),
            Time = time,
            Label = label,
            Wind = conditions.Item1,
            Place = conditions.Item2,
            Water = conditions.Item3,
            Notes = conditions.Item4,
            Blind = conditions.Item5,
            Pieces = [.. pieces.Item1.Select((piece, i) => piece with { Order = 1 + i + (i >= 2 ? pieces.Item2 : 0) })],
        });

    private static Gen<Piece> RandomPiece(IReadOnlyList<Paddle> paddles) =>
        from id in Gen.Guid
        from paddle in Gen.Int[0, paddles.Count - 1].Select(i => paddles[i])
        from length in Gen.Long[paddle.Shortest.Nanometres, paddle.Longest.Nanometres].Select(Length.FromNanometres)
        from distance in Gen.Long[50_000_000, 40_000_000_000].Select(Distance.FromMicrometres)
        from speed in Gen.Double[0.5, 7.5]
        from rates in Gen.Select(Maybe(Gen.Int[0, 20]), Maybe(Gen.Int[25, 250]), Maybe(Gen.Int[50, 1500]), Maybe(Gen.Int[0, 20]),
            Gen.Enum<Course>())
        from rest in Gen.Select(Maybe(Gen.Double[-20, 20]), MaybeText(Note), MaybeText(Note),
            MaybeText(Gen.OneOf("csv:0123", "gpx:ab#1", "gpx:ab#1")), Maybe(Gen.Enum<TimedBy>()), Maybe(Gen.Double[0.01, 20]))
        select new Piece
        {
            Id = id,
            Order = 1,
            PaddleId = paddle.Id,
            Length = length,
            Distance = distance,
            Time = PieceTime.FromSeconds(distance.Metres / speed),
            Effort = rates.Item1 is { } effort ? Effort.FromPoints(effort / 2.0) : null,
            HeartRate = rates.Item2 is { } beats ? HeartRate.FromBeatsPerMinute(beats) : null,
            StrokeRate = rates.Item3 is { } strokes ? StrokeRate.FromStrokesPerMinute(strokes / 10.0) : null,
            Soreness = rates.Item4 is { } sore ? Soreness.FromPoints(sore / 2.0) : null,
            Course = rates.Item5,
            FadePercent = rest.Item1,
            Notes = rest.Item2,
            ExcludedBecause = rest.Item3,
            Origin = rest.Item4,
            TimedBy = rest.Item5,
            SpeedErrorPercent = rest.Item6,
        };

    private static Gen<T?> Maybe<T>(Gen<T> gen) where T : struct =>
        Gen.Bool.SelectMany(some => some ? gen.Select(value => (T?)value) : Gen.Const((T?)null));

    private static Gen<string?> MaybeText(Gen<string> gen) =>
        Gen.Bool.SelectMany(some => some ? gen.Select(value => (string?)value) : Gen.Const((string?)null));

    private static List<T> Unique<T>(IEnumerable<T> all, Func<T, string> name) =>
        [.. all.DistinctBy(name, StringComparer.OrdinalIgnoreCase)];

    private static bool Same(string a, string b) => a.Equals(b, StringComparison.OrdinalIgnoreCase);
}
