using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Sizing;

/// <summary>The best length in every hull with every blade, tuned or carried over.</summary>
internal static class CarryLengths
{
    /// <summary>Normal quantile of the central 90 % range.</summary>
    private const double Ninety = 1.645;

    /// <summary>What the paddler's log says, hull by hull; steering paddles have their own advice and are left out.</summary>
    /// <exception cref="RequestException">There is no paddle to carry to.</exception>
    public static IReadOnlyList<CarriedRow> Tuned(Workspace workspace, Paddler paddler, string? hullName = null, string? paddleName = null)
    {
        (IReadOnlyList<Hull> hulls, IReadOnlyList<Paddle> paddles) = Asked(workspace, hullName, paddleName);
        IReadOnlyList<Outing> outings = workspace.Logbook.Outings(paddler.Id);
        if (paddleName is null)
        {
            paddles = [.. OwnGear.Paddles(workspace, paddler, outings).Where(paddle => !paddle.Steering)];
            if (paddles.Count == 0)
                throw workspace.NoPaddleFor(paddler);
        }

        AnalysisInput question = workspace.Question(new Chosen(paddler, hulls[0], paddles[0]), outings);
        return Rows(workspace, paddler, outings, Tuner.Carry(question, hulls, paddles));
    }

    /// <summary>Carried lengths with what each rests on.</summary>
    public static IReadOnlyList<CarriedRow> Rows(
        Workspace workspace, Paddler paddler, IReadOnlyList<Outing> outings, IReadOnlyList<Assessment> lengths)
    {
        Alignment scale = Scale(workspace, paddler);
        bool any = outings.Any(outing => outing.Pieces.Any(piece => piece.ExcludedBecause is null));
        return
        [
            .. lengths.Select(carried => new CarriedRow
            {
                Hull = carried.Hull,
                Paddle = carried.Paddle,
                Best = carried.Ideal.Length,
                Likely = (carried.Best.LikelyLow, carried.Best.LikelyHigh),
                WithinQuarterInch = carried.Ideal.WithinQuarterInch,
                GainLeftPercent = carried.Ideal.GainLeftPercent,
                DiminishingReturns = carried.DiminishingReturns,
                TooShort = carried.TooShort,
                OnToldEffort = carried.OnToldEffort,
                SorenessCeiling = carried.SorenessLimit,
                ForNow = carried.SorenessLimit is { } limit && carried.Best.Length <= limit ? carried.Best.Length : null,
                Pieces = carried.PiecesInHull,
                SeatHeightOffsetInches = scale.SeatHeightOffsetInches(carried.Hull),
                Evidence = !any ? CarriedEvidence.StartLength
                    : carried.PiecesInHull == 0 ? CarriedEvidence.OtherHulls
                    : outings.Any(outing => outing.HullId == carried.Hull.Id
                        && outing.Pieces.Any(piece => piece.ExcludedBecause is null && piece.PaddleId == carried.Paddle.Id))
                        ? CarriedEvidence.Tuned
                        : CarriedEvidence.OtherBlades,
            }),
        ];
    }

    /// <summary>One length in one hull with one paddle, carried over by the rules alone to every other.</summary>
    /// <exception cref="InvalidValueException">The length cannot be a paddle's.</exception>
    public static IReadOnlyList<CarriedRow> ByHand(Workspace workspace, Paddler? paddler, Length length, Hull goodIn, Paddle goodWith)
    {
        if (Plausible.ProblemWithPaddleLength(length) is { } problem)
            throw new InvalidValueException(problem);
        (IReadOnlyList<Hull> hulls, IReadOnlyList<Paddle> paddles) = Asked(workspace, null, null);
        Alignment scale = Scale(workspace, paddler);
        return
        [
            .. from hull in hulls
               from paddle in paddles
               let carried = scale.Carried(length, goodIn, goodWith.Blade, hull, paddle.Blade)
               let either = Ninety * Alignment.CarriedSpreadInches(goodIn, goodWith.Blade, hull, paddle.Blade)
               select new CarriedRow
               {
                   Hull = hull,
                   Paddle = paddle,
                   Best = carried.RoundedTo(Length.QuarterInch),
                   Likely = either == 0 ? null : (carried.PlusInches(-either), carried.PlusInches(either)),
                   Evidence = CarriedEvidence.ByHand,
                   SeatHeightOffsetInches = scale.SeatHeightOffsetInches(hull),
               },
        ];
    }

    /// <summary>The scale on which a paddler's lengths in all hulls of the logbook are compared.</summary>
    public static Alignment Scale(Workspace workspace, Paddler? paddler) =>
        new(paddler is null ? StartLength.From(BodyMeasures.Unknown, null).Length : StartLength.Of(paddler).Length,
            workspace.Logbook.Hulls());

    private static (IReadOnlyList<Hull> Hulls, IReadOnlyList<Paddle> Paddles) Asked(
        Workspace workspace, string? hullName, string? paddleName)
    {
        if (paddleName is not null && workspace.PaddleNamed(paddleName) is { Steering: true } steering)
            throw new RequestException($"{Quoted.Visible(steering.Name)} is a steering paddle, which is never tuned for speed; see: " +
                $"triallog steering --paddle \"{Quoted.Visible(steering.Name)}\"");
        IReadOnlyList<Paddle> paddles = paddleName is null ? [.. workspace.Logbook.Paddles().Where(paddle => !paddle.Steering)]
            : [workspace.PaddleNamed(paddleName)];
        if (paddles.Count == 0)
            throw new RequestException(
                "The logbook has no paddle yet; add one with: triallog paddle add NAME --blade 18.5in --range 48in..54in");
        IReadOnlyList<Hull> hulls = hullName is not null ? [workspace.HullNamed(hullName)] : workspace.Logbook.Hulls();
        return (hulls, paddles);
    }
}
