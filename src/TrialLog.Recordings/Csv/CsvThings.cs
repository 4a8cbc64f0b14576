using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Turns paddlers, hulls and paddles into what a file states about them, and back.</summary>
internal static class CsvThings
{
    public static CsvFacts Facts(Hull hull) => Of(
        (CsvColumn.HullCrew, hull.Crew), (CsvColumn.SeatHeightIn, hull.SeatHeight));

    /// <summary>What stands in the column <c>owner</c> for a paddle that everybody may use. No paddler is called so in a file.</summary>
    public const string Club = "club";

    public static CsvFacts Facts(Paddle paddle, Func<Guid, string?> paddlerName) => Of(
        (CsvColumn.BladeLengthIn, paddle.Blade), (CsvColumn.BladeAreaIn2, paddle.BladeAreaSquareInches),
            (CsvColumn.Steering, paddle.Steering),
        (CsvColumn.PaddleShortestIn, paddle.Shortest), (CsvColumn.PaddleLongestIn, paddle.Longest), (CsvColumn.PaddleStepIn, paddle.Step),
        (CsvColumn.Owner, paddle.BelongsToClub ? Club : paddle.OwnerId is Guid owner ? paddlerName(owner) : null));

    public static CsvFacts Facts(Paddler paddler, Func<Guid, string?> hullName) => Of([
        (CsvColumn.PaddlerUnit, paddler.Unit), (CsvColumn.SwapsOnWater, paddler.SwapsOnWater),
        (CsvColumn.WorthwhilePct, paddler.WorthwhilePercent), (CsvColumn.KnownLengthIn, paddler.KnownLength),
        (CsvColumn.GoalHull, paddler.Goal is { } goal ? hullName(goal.HullId) : null),
        (CsvColumn.GoalDistanceM, paddler.Goal?.Distance), (CsvColumn.GoalTime, paddler.Goal?.Time),
        (CsvColumn.TrialPieces, paddler.Trials.Pieces), (CsvColumn.TrialDistanceM, paddler.Trials.Distance),
        (CsvColumn.TrialMinutes, paddler.Trials.Minutes), (CsvColumn.TrialTimed, paddler.Trials.TimedBy),
        (CsvColumn.TrialPricePct, paddler.Trials.PricePercent),
        .. CsvColumns.OfBody.Select(body => (body.Column, (object?)paddler.Body[body.Measure]))]);

    public static Hull Hull(string name, CsvFacts stated, Func<Guid> newId)
    {
        Hull? standard = StandardHulls.All.FirstOrDefault(hull => hull.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
        return new Hull
        {
            Id = standard?.Id ?? newId(),
            Name = standard?.Name ?? name,
            Crew = stated.Value<int>(CsvColumn.HullCrew) ?? standard?.Crew ?? CrewInName(name),
            SeatHeight = stated.Value<Length>(CsvColumn.SeatHeightIn),
        };
    }

    /// <summary>The number that ends the name (OC4, V12) where it can be a crew, else 1.</summary>
    private static int CrewInName(string name)
    {
        string digits = name[(name.TrimEnd("0123456789".ToCharArray()).Length)..];
        return digits.Length < name.Length && int.TryParse(digits, out int crew) && crew is >= 1 and <= 24 ? crew : 1;
    }

    /// <summary>The paddler with what is stated: a new one, or one of the logbook.</summary>
    public static Paddler Paddler(Paddler paddler, CsvFacts stated, Func<string, Guid> hullId) => paddler with
    {
        Unit = stated.Value<LengthUnit>(CsvColumn.PaddlerUnit) ?? paddler.Unit,
        SwapsOnWater = stated.Value<bool>(CsvColumn.SwapsOnWater) ?? true,
        WorthwhilePercent = stated.Value<double>(CsvColumn.WorthwhilePct),
        KnownLength = stated.Value<Length>(CsvColumn.KnownLengthIn),
        Goal = stated.Text(CsvColumn.GoalHull) is not { } hull ? null : new GoalEvent
        {
            HullId = hullId(hull),
            Distance = stated.Value<Distance>(CsvColumn.GoalDistanceM),
            Time = stated.Value<PieceTime>(CsvColumn.GoalTime),
        },
        Trials = new TrialHabits
        {
            Pieces = stated.Value<int>(CsvColumn.TrialPieces),
            Distance = stated.Value<Distance>(CsvColumn.TrialDistanceM),
            Minutes = stated.Value<int>(CsvColumn.TrialMinutes),
            TimedBy = stated.Value<TimedBy>(CsvColumn.TrialTimed),
            PricePercent = stated.Value<double>(CsvColumn.TrialPricePct),
        },
        Body = CsvColumns.OfBody.Aggregate(
            paddler.Body, (measured, body) => measured.With(body.Measure, stated.Value<Length>(body.Column))),
    };

    /// <summary>
    /// A paddle of that name. What is not stated is assumed: the reference blade, steps of a quarter inch (half a
    /// centimetre), and a range that leaves two inches (five centimetres) beyond the lengths seen. Chosen, no source.
    /// </summary>
    public static Paddle Paddle(string name, CsvFacts stated, Length? least, Length? most, LengthUnit unit,
        Func<string, Guid> paddlerId, Func<Guid> newId)
    {
        (Length whole, Length step, double beyond) = unit == LengthUnit.Inches
            ? (Length.FromInches(1), Length.FromInches(0.25), 2.0)
            : (Length.FromMillimetres(10), Length.FromMillimetres(5), 50 / 25.4);
        Length shortest = stated.Value<Length>(CsvColumn.PaddleShortestIn) ?? Down(least ?? Length.FromInches(48), whole, beyond);
        Length longest = stated.Value<Length>(CsvColumn.PaddleLongestIn) ?? Up(most ?? Length.FromInches(52), whole, beyond);
        return new Paddle
        {
            Id = newId(),
            Name = name,
            Shortest = shortest,
            Longest = longest < shortest ? shortest : longest,
            Blade = stated.Value<Length>(CsvColumn.BladeLengthIn) ?? ExposedShaftRule.ReferenceBlade,
            BladeAreaSquareInches = stated.Value<double>(CsvColumn.BladeAreaIn2),
            Steering = stated.Value<bool>(CsvColumn.Steering) ?? false,
            Step = stated.Value<Length>(CsvColumn.PaddleStepIn) ?? step,
            OwnerId = OwnerIn(stated) is { } owner ? paddlerId(owner) : null,
            BelongsToClub = stated.Text(CsvColumn.Owner) is not null && OwnerIn(stated) is null,
        };
    }

    /// <summary>The paddler whose paddle it is, by what is stated; null where it is the club's or nobody said.</summary>
    public static string? OwnerIn(CsvFacts stated) =>
        stated.Text(CsvColumn.Owner) is { } owner && !owner.Equals(Club, StringComparison.OrdinalIgnoreCase) ? owner : null;

    private static Length Down(Length least, Length whole, double beyond)
    {
        long down = (long)((least.Nanometres - beyond * 25_400_000) / whole.Nanometres) * whole.Nanometres;
        return Length.FromNanometres(Math.Max(down, Plausible.ShortestPaddle.Nanometres));
    }

    private static Length Up(Length most, Length whole, double beyond)
    {
        long up = (long)Math.Ceiling((most.Nanometres + beyond * 25_400_000) / whole.Nanometres) * whole.Nanometres;
        return Length.FromNanometres(Math.Min(up, Plausible.LongestPaddle.Nanometres));
    }

    private static CsvFacts Of(params (CsvColumn Column, object? Value)[] facts) =>
        new(facts.Where(fact => fact.Value is not null).ToDictionary(fact => fact.Column, fact => fact.Value!));
}
