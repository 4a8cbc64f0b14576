using CsCheck;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Screens.Base;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Logbook;

/// <summary>Random records that hold everything a record may hold, over a few ids so that they meet.</summary>
internal static class RandomRecords
{
    private static readonly Gen<string> AnyText = Gen.OneOf(
        "", "flat", "gusty, from the north", "say \"when\"", "=cmd()", "Ōtau 🛶", "one\ntwo\tthree", "'; DROP TABLE pieces; --", "ß İ ı");

    public static readonly Gen<Length> PaddleLength = Gen.Long[30 * 25_400_000L, 80 * 25_400_000L].Select(Length.FromNanometres);

    private static readonly Gen<Length?> BodyLength = OrNone(Gen.Long[0, 3_000_000_000].Select(Length.FromNanometres));
    private static readonly Gen<double> Real = Gen.Double[-29.9, 29.9];
    private static readonly Gen<Distance> AnyDistance = Gen.Long[100_000_000, 2_000_000_000].Select(Distance.FromMicrometres);
    private static readonly Gen<DateOnly> Date = Gen.Int[0, 4000].Select(days => new DateOnly(2020, 1, 1).AddDays(days));
    private static readonly Gen<DateTimeOffset> Moment = Gen.Long[0, 10_000_000_000_000_000]
        .Select(ticks => new DateTimeOffset(2020, 1, 1, 0, 0, 0, TimeSpan.Zero).AddTicks(ticks));

    public static Gen<T?> OrNone<T>(Gen<T> gen) where T : struct => Gen.Select(Gen.Bool, gen, (there, value) => there ? value : (T?)null);

    private static Gen<string?> OrNone(Gen<string> gen) => Gen.Select(Gen.Bool, gen, (there, value) => there ? value : null);

    /// <summary>One of a few ids of a kind.</summary>
    public static Guid Id(int kind, int number) => new(kind, 0, 0x4000, 0x80, 0, 0, 0, 0, 0, 0, (byte)number);

    public static Gen<Hull> Hull(Gen<Guid> id) => Gen.Select(id, Gen.Int[1, 24], BodyLength,
        (id, crew, seat) => new Hull { Id = id, Name = $"Hull {id}", Crew = crew, SeatHeight = seat });

    /// <summary>A paddle that is one of those paddlers', the club's or nobody's.</summary>
    public static Gen<Paddle> Paddle(Gen<Guid> id, Gen<Guid> owner) => Gen.Select(
        Gen.Select(id, owner, Gen.Int[0, 2]), PaddleLength, PaddleLength, Gen.Long[203_200_000, 700_000_000], OrNone(Gen.Double[20, 250]),
            Gen.Bool, Gen.Long[1, 100_000_000],
        (who, one, other, blade, area, steering, step) => new Paddle
        {
            Id = who.Item1,
            OwnerId = who.Item3 == 1 ? who.Item2 : null,
            BelongsToClub = who.Item3 == 2,
            Name = $"Paddle {who.Item1}",
            Shortest = one < other ? one : other,
            Longest = one < other ? other : one,
            Blade = Length.FromNanometres(blade),
            BladeAreaSquareInches = area,
            Steering = steering,
            Step = Length.FromNanometres(step),
        });

    public static Gen<Paddler> Paddler(Gen<Guid> id, Gen<Guid> hull) => Gen.Select(
        Gen.Select(id, Gen.Bool, Gen.Bool, OrNone(Gen.Double[0.01, 5])), BodyLength.Array[12],
        Gen.Select(Gen.Int[0, 2], hull, AnyDistance, Gen.Long[1000, 100_000_000]),
        Gen.Select(OrNone(Gen.Int[2, 8]), OrNone(AnyDistance), OrNone(Gen.Int[15, 300]), OrNone(Gen.Enum<TimedBy>()),
            OrNone(Gen.Double[0.0005, 1])),
        (who, body, goal, trials) => new Paddler
        {
            Id = who.Item1,
            Name = $"Ilse “{who.Item1}” Märo",
            Unit = who.Item2 ? LengthUnit.Inches : LengthUnit.Centimetres,
            SwapsOnWater = who.Item3,
            WorthwhilePercent = who.Item4,
            Body = new BodyMeasures
            {
                SeatedReach = body[0],
                Stature = body[1],
                SittingShoulderHeight = body[2],
                ShoulderElbow = body[3],
                ElbowGrip = body[4],
                EyeHeight = body[5],
                ShoulderBreadth = body[6],
                ArmSpan = body[8],
                OverheadReach = body[9],
                HandLength = body[10],
                PalmLength = body[11],
            },
            KnownLength = body[7],
            Trials = new TrialHabits
            {
                Pieces = trials.Item1 * 2, Distance = trials.Item2, Minutes = trials.Item3, TimedBy = trials.Item4,
                PricePercent = trials.Item5
            },
            Goal = goal.Item1 == 0 ? null : new GoalEvent
            {
                HullId = goal.Item2,
                Distance = goal.Item1 == 1 ? goal.Item3 : null,
                Time = goal.Item1 == 2 ? PieceTime.FromMilliseconds(goal.Item4) : null,
            },
        });

    // A speed from 1 to 6 m/s, so that it can be believed.
    public static Gen<Piece> Piece(Gen<Guid> id, Gen<Guid> paddle) => Gen.Select(
        Gen.Select(id, paddle, PaddleLength, AnyDistance, Gen.Double[1, 6]),
        Gen.Select(OrNone(Gen.Int[0, 20]), OrNone(Gen.Int[25, 250]), OrNone(Gen.Int[50, 1500]), Gen.Enum<Course>(), OrNone(Gen.Int[0, 20])),
        Gen.Select(OrNone(Real), OrNone(AnyText), OrNone(AnyText), OrNone(AnyText), OrNone(Gen.Enum<TimedBy>()),
            OrNone(Gen.Double[0.01, 20])),
        (what, body, rest) => new Piece
        {
            Id = what.Item1,
            Order = 1,
            PaddleId = what.Item2,
            Length = what.Item3,
            Distance = what.Item4,
            Time = PieceTime.FromSeconds(what.Item4.Metres / what.Item5),
            Effort = body.Item1 is int effort ? Effort.FromPoints(effort / 2.0) : null,
            HeartRate = body.Item2 is int beats ? HeartRate.FromBeatsPerMinute(beats) : null,
            StrokeRate = body.Item3 is int strokes ? StrokeRate.FromStrokesPerMinute(strokes / 10.0) : null,
            Course = body.Item4,
            Soreness = body.Item5 is int soreness ? Soreness.FromPoints(soreness / 2.0) : null,
            FadePercent = rest.Item1,
            ExcludedBecause = rest.Item2,
            Notes = rest.Item3,
            Origin = rest.Item4,
            TimedBy = rest.Item5,
            SpeedErrorPercent = rest.Item6,
        });

    public static Gen<Outing> Outing(Gen<Guid> id, Gen<Guid> paddler, Gen<Guid> hull, Gen<Guid> paddle) => Gen.Select(
        Gen.Select(id, paddler, hull, Date, OrNone(Gen.Long[0, TimeSpan.TicksPerDay - 1])),
        Gen.Select(AnyText, OrNone(AnyText), OrNone(AnyText), OrNone(AnyText), OrNone(Gen.Int[0, 12]), Gen.Bool),
        Piece(Gen.Guid, paddle).Array[0, 5],
        (whose, how, pieces) => new Outing
        {
            Id = whose.Item1,
            PaddlerId = whose.Item2,
            HullId = whose.Item3,
            Date = whose.Item4,
            Time = whose.Item5 is long ticks ? new TimeOnly(ticks) : null,
            Label = how.Item1,
            Place = how.Item2,
            Water = how.Item3,
            Notes = how.Item4,
            Blind = how.Item6,
            Wind = how.Item5 is int wind ? Beaufort.FromNumber(wind) : null,
            Pieces = [.. pieces.Select((piece, i) => piece with { Order = i + 1 })],
        });

    public static Gen<GivenCard> Card(Gen<Guid> id, Gen<Guid> paddler, Gen<Guid> hull, Gen<Guid> paddle) => Gen.Select(
        Gen.Select(id, paddler, hull, paddle, Moment),
        Gen.Select(PaddleLength.Array[1, 6], AnyDistance, Gen.Int[0, 20], Gen.Long[1000, 1_000_000], AnyText),
        Gen.Select(PaddleLength, PaddleLength, Gen.Double[0, 5], Gen.Bool, Gen.Int[0, 99]),
        Gen.Select(Gen.Bool, OrNone(Gen.Const("Bram Okello")), OrNone(AnyText), PaddleLength.Array[0, 4], OrNone(Gen.Int[0, 9])),
        (whose, card, known, coach) => new GivenCard
        {
            Id = whose.Item1,
            PaddlerId = whose.Item2,
            HullId = whose.Item3,
            PaddleId = whose.Item4,
            GivenAt = whose.Item5,
            Card = new TrialCard
            {
                Lengths = card.Item1,
                Distance = card.Item2,
                Effort = Effort.FromPoints(card.Item3 / 2.0),
                Rest = PieceTime.FromMilliseconds(card.Item4),
            },
            Reason = card.Item5,
            Best = known.Item1,
            LikelyLow = known.Item1 < known.Item2 ? known.Item1 : known.Item2,
            LikelyHigh = known.Item1 < known.Item2 ? known.Item2 : known.Item1,
            GainLeftPercent = known.Item3,
            DiminishingReturns = known.Item4,
            Outings = known.Item5,
            Pieces = known.Item5 * 4,
            AsOfChange = known.Item5,
            Blind = coach.Item1,
            By = coach.Item2,
            Because = coach.Item3,
            OwnLengths = coach.Item4,
            OutingsToGo = coach.Item5 is int toGo ? (toGo + 1, toGo, toGo + 5) : null,
        });

    public static Gen<TechniqueCheck> Check(Gen<Guid> id, Gen<Guid> paddler, Gen<Guid> hull, Gen<Guid> paddle) => Gen.Select(
        Gen.Select(id, paddler, hull, paddle), Gen.Select(PaddleLength, Real, OrNone(Gen.Double[0, 60]), Gen.Bool, Date),
        (whose, what) => new TechniqueCheck
        {
            Id = whose.Item1,
            PaddlerId = whose.Item2,
            HullId = whose.Item3,
            PaddleId = whose.Item4,
            Length = what.Item1,
            HandAboveEyeInches = what.Item2,
            ShaftLeanDegrees = what.Item3,
            FromPhoto = what.Item4,
            Date = what.Item5,
        });

    public static Gen<SorenessClearance> Clearance(Gen<Guid> id, Gen<Guid> paddler) => Gen.Select(id, paddler, Date, OrNone(AnyText),
        (id, paddler, date, because) =>
            new SorenessClearance { Id = id, PaddlerId = paddler, Date = date, By = "Bram Okello", Because = because });

    public static Gen<Decision> Decision(Gen<Guid> id, Gen<Guid> paddler, Gen<Guid> hull, Gen<Guid> paddle) => Gen.Select(
        Gen.Select(id, paddler, hull, paddle), PaddleLength, Gen.Enum<DecisionKind>(), Date, OrNone(Gen.Const("Bram Okello")),
            OrNone(AnyText),
        (whose, length, kind, date, by, because) => new Decision
        {
            Id = whose.Item1,
            PaddlerId = whose.Item2,
            HullId = whose.Item3,
            PaddleId = whose.Item4,
            Length = length,
            Kind = kind,
            Date = date,
            By = by,
            Because = because,
        });

    public static Gen<CoachNote> Note(Gen<Guid> id, Gen<Guid> about, NoteSubject subject) => Gen.Select(id, about, Moment, AnyText,
        (id, about, at, text) =>
            new CoachNote { Id = id, AboutId = about, About = subject, Author = "Bram Okello", WrittenAt = at, Text = "Seen: " + text });
}
