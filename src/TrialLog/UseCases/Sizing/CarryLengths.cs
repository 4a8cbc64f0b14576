using TrialLog.Domain;
using TrialLog.Tuning;

namespace TrialLog.UseCases;

/// <summary>The best length in every hull with every blade, tuned or carried over.</summary>
internal static class CarryLengths
{
    /// <summary>What the paddler's log says, hull by hull; steering paddles have their own advice and are left out.</summary>
    /// <exception cref="RequestException">There is no paddle to carry to.</exception>
    public static IReadOnlyList<CarriedRow> Tuned(Desk desk, Paddler paddler, string? hullName = null, string? paddleName = null)
    {
        (IReadOnlyList<Hull> hulls, IReadOnlyList<Paddle> paddles) = Asked(desk, hullName, paddleName);
        IReadOnlyList<Outing> outings = desk.Logbook.Outings(paddler.Id);
        TuningQuestion question = desk.Question(new Chosen(paddler, hulls[0], paddles[0]), outings);
        return Rows(desk, paddler, outings, Tuner.Carry(question, hulls, paddles));
    }

    /// <summary>Carried lengths with what each rests on.</summary>
    public static IReadOnlyList<CarriedRow> Rows(Desk desk, Paddler paddler, IReadOnlyList<Outing> outings, IReadOnlyList<CarriedLength> lengths)
    {
        Alignment scale = Scale(desk, paddler);
        bool any = outings.Any(outing => outing.Pieces.Any(piece => piece.ExcludedBecause is null));
        return
        [
            .. lengths.Select(carried => new CarriedRow
            {
                Hull = carried.Hull,
                Paddle = carried.Paddle,
                Best = carried.Best,
                Likely = (carried.LikelyLow, carried.LikelyHigh),
                WithinQuarterInch = carried.WithinQuarterInch,
                GainLeftPercent = carried.GainLeftPercent,
                DiminishingReturns = carried.DiminishingReturns,
                SorenessCeiling = carried.SorenessCeiling,
                Pieces = carried.Pieces,
                SeatHeightOffsetInches = scale.SeatHeightOffsetInches(carried.Hull),
                Evidence = !any ? CarriedEvidence.StartLength
                    : carried.Pieces == 0 ? CarriedEvidence.OtherHulls
                    : outings.Any(outing => outing.HullId == carried.Hull.Id
                        && outing.Pieces.Any(piece => piece.ExcludedBecause is null && piece.PaddleId == carried.Paddle.Id))
                        ? CarriedEvidence.Tuned
                        : CarriedEvidence.OtherBlades,
            }),
        ];
    }

    /// <summary>One length in one hull with one paddle, carried over by the rules alone to every other.</summary>
    /// <exception cref="InvalidValueException">The length cannot be a paddle's.</exception>
    public static IReadOnlyList<CarriedRow> ByHand(Desk desk, Paddler? paddler, Length length, Hull goodIn, Paddle goodWith)
    {
        if (Plausible.ProblemWithPaddleLength(length) is { } problem)
            throw new InvalidValueException(problem);
        (IReadOnlyList<Hull> hulls, IReadOnlyList<Paddle> paddles) = Asked(desk, null, null);
        Alignment scale = Scale(desk, paddler);
        return
        [
            .. from hull in hulls
               from paddle in paddles
               select new CarriedRow
               {
                   Hull = hull,
                   Paddle = paddle,
                   Best = scale.Carried(length, goodIn, goodWith.Blade, hull, paddle.Blade).RoundedTo(Spoken.QuarterInch),
                   Evidence = CarriedEvidence.ByHand,
                   SeatHeightOffsetInches = scale.SeatHeightOffsetInches(hull),
               },
        ];
    }

    /// <summary>The scale on which a paddler's lengths in all hulls of the logbook are compared.</summary>
    public static Alignment Scale(Desk desk, Paddler? paddler) =>
        new(paddler is null ? StartLength.From(BodyMeasures.Unknown, null).Length : StartLength.Of(paddler).Length, desk.Logbook.Hulls());

    private static (IReadOnlyList<Hull> Hulls, IReadOnlyList<Paddle> Paddles) Asked(Desk desk, string? hullName, string? paddleName)
    {
        if (paddleName is not null && desk.PaddleNamed(paddleName) is { Steering: true } steering)
            throw new RequestException($"{Quoted.Visible(steering.Name)} is a steering paddle, which is never tuned for speed; see: triallog steering --paddle \"{Quoted.Visible(steering.Name)}\"");
        IReadOnlyList<Paddle> paddles = paddleName is null ? [.. desk.Logbook.Paddles().Where(paddle => !paddle.Steering)] : [desk.PaddleNamed(paddleName)];
        if (paddles.Count == 0)
            throw new RequestException("The logbook has no paddle yet; add one with: triallog paddle add NAME --blade 18.5in --range 48in..54in");
        IReadOnlyList<Hull> hulls = hullName is not null ? [desk.HullNamed(hullName)] : desk.Logbook.Hulls();
        return (hulls, paddles);
    }
}
