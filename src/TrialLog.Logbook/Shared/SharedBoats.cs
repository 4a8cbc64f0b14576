using TrialLog.Domain.Boats;

namespace TrialLog.Logbook.Shared;

/// <summary>A hull in a shared file.</summary>
internal sealed record SharedHull : NamedItem
{
    public required int Crew { get; init; }
    public decimal? SeatHeightIn { get; init; }

    public override string Kind() => "hull";

    public override string Table() => "hulls";

    public static SharedHull Of(Hull hull) => new()
    {
        Id = hull.Id,
        Name = hull.Name,
        Crew = hull.Crew,
        SeatHeightIn = Written.Inches(hull.SeatHeight),
    };

    public Hull ToRecord() =>
        RecordRules.Checked(new Hull { Id = Id, Name = Name, Crew = Crew, SeatHeight = Written.ToLength(SeatHeightIn) });
}

/// <summary>A paddle in a shared file.</summary>
internal sealed record SharedPaddle : NamedItem
{
    public required decimal BladeIn { get; init; }
    public double? BladeAreaIn2 { get; init; }
    public bool Steering { get; init; }
    public required decimal ShortestIn { get; init; }
    public required decimal LongestIn { get; init; }
    public required decimal StepIn { get; init; }
    public Guid? Owner { get; init; }
    public bool? BelongsToClub { get; init; }

    public override string Kind() => "paddle";

    public override string Table() => "paddles";

    public static SharedPaddle Of(Paddle paddle) => new()
    {
        Id = paddle.Id,
        Name = paddle.Name,
        BladeIn = Written.Inches(paddle.Blade),
        BladeAreaIn2 = paddle.BladeAreaSquareInches,
        Steering = paddle.Steering,
        ShortestIn = Written.Inches(paddle.Shortest),
        LongestIn = Written.Inches(paddle.Longest),
        StepIn = Written.Inches(paddle.Step),
        Owner = paddle.OwnerId,
        BelongsToClub = paddle.BelongsToClub ? true : null,
    };

    public Paddle ToRecord() => RecordRules.Checked(new Paddle
    {
        Id = Id,
        Name = Name,
        Blade = Written.ToLength(BladeIn),
        BladeAreaSquareInches = BladeAreaIn2,
        Steering = Steering,
        Shortest = Written.ToLength(ShortestIn),
        Longest = Written.ToLength(LongestIn),
        Step = Written.ToLength(StepIn),
        OwnerId = Owner,
        BelongsToClub = BelongsToClub ?? false,
    });
}
