using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook.Rows;

/// <summary>A hull as it lies in the database.</summary>
internal sealed class HullRow
{
    public string Id { get; init; } = "";
    public string Name { get; init; } = "";
    public int Crew { get; init; }
    public long? SeatHeightNm { get; init; }

    public Hull ToRecord() => new() { Id = Guid.Parse(Id), Name = Name, Crew = Crew, SeatHeight = Stored.ToLength(SeatHeightNm) };
}

/// <summary>A paddle as it lies in the database.</summary>
internal sealed class PaddleRow
{
    public string Id { get; init; } = "";
    public string Name { get; init; } = "";
    public long BladeNm { get; init; }
    public double? BladeIn2 { get; init; }
    public bool Steering { get; init; }
    public long ShortestNm { get; init; }
    public long LongestNm { get; init; }
    public long StepNm { get; init; }
    public string? OwnerId { get; init; }
    public bool BelongsToClub { get; init; }

    public Paddle ToRecord() => new()
    {
        Id = Guid.Parse(Id),
        Name = Name,
        Blade = Length.FromNanometres(BladeNm),
        BladeAreaSquareInches = BladeIn2,
        Steering = Steering,
        Shortest = Length.FromNanometres(ShortestNm),
        Longest = Length.FromNanometres(LongestNm),
        Step = Length.FromNanometres(StepNm),
        OwnerId = Stored.ToId(OwnerId),
        BelongsToClub = BelongsToClub,
    };
}
