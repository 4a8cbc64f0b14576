using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook.Rows;

/// <summary>A paddler as they lie in the database.</summary>
internal sealed class PaddlerRow
{
    public string Id { get; init; } = "";
    public string Name { get; init; } = "";
    public string Unit { get; init; } = "";
    public long? SeatedReachNm { get; init; }
    public long? StatureNm { get; init; }
    public long? SittingShoulderHeightNm { get; init; }
    public long? ShoulderElbowNm { get; init; }
    public long? ElbowGripNm { get; init; }
    public long? EyeHeightNm { get; init; }
    public long? ShoulderBreadthNm { get; init; }
    public long? ArmSpanNm { get; init; }
    public long? OverheadReachNm { get; init; }
    public long? HandLengthNm { get; init; }
    public long? PalmLengthNm { get; init; }
    public long? KnownLengthNm { get; init; }
    public string? GoalHullId { get; init; }
    public long? GoalDistanceUm { get; init; }
    public long? GoalTimeMs { get; init; }
    public bool SwapsOnWater { get; init; }
    public double? WorthwhilePercent { get; init; }
    public int? TrialPieces { get; init; }
    public long? TrialDistanceUm { get; init; }
    public int? TrialMinutes { get; init; }
    public string? TrialTimedBy { get; init; }
    public double? TrialPricePercent { get; init; }

    public Paddler ToRecord() => new()
    {
        Id = Guid.Parse(Id),
        Name = Name,
        Unit = Stored.ToUnit(Unit),
        Body = new BodyMeasures
        {
            SeatedReach = Stored.ToLength(SeatedReachNm),
            Stature = Stored.ToLength(StatureNm),
            SittingShoulderHeight = Stored.ToLength(SittingShoulderHeightNm),
            ShoulderElbow = Stored.ToLength(ShoulderElbowNm),
            ElbowGrip = Stored.ToLength(ElbowGripNm),
            EyeHeight = Stored.ToLength(EyeHeightNm),
            ShoulderBreadth = Stored.ToLength(ShoulderBreadthNm),
            ArmSpan = Stored.ToLength(ArmSpanNm),
            OverheadReach = Stored.ToLength(OverheadReachNm),
            HandLength = Stored.ToLength(HandLengthNm),
            PalmLength = Stored.ToLength(PalmLengthNm),
        },
        KnownLength = Stored.ToLength(KnownLengthNm),
        Goal = GoalHullId is null ? null : new GoalEvent
        {
            HullId = Guid.Parse(GoalHullId),
            Distance = GoalDistanceUm is long um ? Distance.FromMicrometres(um) : null,
            Time = GoalTimeMs is long ms ? PieceTime.FromMilliseconds(ms) : null,
        },
        SwapsOnWater = SwapsOnWater,
        WorthwhilePercent = WorthwhilePercent,
        Trials = new TrialHabits
        {
            Pieces = TrialPieces,
            Distance = TrialDistanceUm is long distance ? Distance.FromMicrometres(distance) : null,
            Minutes = TrialMinutes,
            TimedBy = Stored.ToTimedBy(TrialTimedBy),
            PricePercent = TrialPricePercent,
        },
    };
}
