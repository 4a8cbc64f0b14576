using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook.Shared;

/// <summary>A paddler in a shared file.</summary>
internal sealed record SharedPaddler : NamedItem
{
    public required string Unit { get; init; }
    public decimal? KnownLengthIn { get; init; }
    public Guid? GoalHull { get; init; }
    public decimal? GoalDistanceM { get; init; }
    public string? GoalTime { get; init; }
    public required bool SwapsOnWater { get; init; }
    public double? WorthwhilePct { get; init; }
    public int? TrialPieces { get; init; }
    public decimal? TrialDistanceM { get; init; }
    public int? TrialMinutes { get; init; }
    public string? TrialTimedBy { get; init; }
    public double? TrialPricePct { get; init; }
    public SharedBody? Body { get; init; }

    public override string Kind() => "paddler";

    public override string Table() => "paddlers";

    public static SharedPaddler Of(Paddler paddler) => new()
    {
        Id = paddler.Id,
        Name = paddler.Name,
        Unit = Rows.Stored.Unit(paddler.Unit),
        KnownLengthIn = Written.Inches(paddler.KnownLength),
        GoalHull = paddler.Goal?.HullId,
        GoalDistanceM = Written.Metres(paddler.Goal?.Distance),
        GoalTime = paddler.Goal?.Time?.ToString(),
        SwapsOnWater = paddler.SwapsOnWater,
        WorthwhilePct = paddler.WorthwhilePercent,
        TrialPieces = paddler.Trials.Pieces,
        TrialDistanceM = Written.Metres(paddler.Trials.Distance),
        TrialMinutes = paddler.Trials.Minutes,
        TrialTimedBy = Rows.Stored.TimedByName(paddler.Trials.TimedBy),
        TrialPricePct = paddler.Trials.PricePercent,
        Body = paddler.Body == BodyMeasures.Unknown ? null : SharedBody.Of(paddler.Body),
    };

    public Paddler ToRecord() => RecordRules.Checked(new Paddler
    {
        Id = Id,
        Name = Name,
        Unit = Unit is "in" or "cm" ? Rows.Stored.ToUnit(Unit)
            : throw new InvalidValueException($"“{Quoted.Brief(Unit)}” is not a unit of length; it is in or cm."),
        KnownLength = Written.ToLength(KnownLengthIn),
        Goal = GoalHull is not Guid hull ? null : new GoalEvent
        {
            HullId = hull,
            Distance = GoalDistanceM is decimal metres ? Written.ToDistance(metres) : null,
            Time = GoalTime is null ? null : PieceTime.Parse(GoalTime),
        },
        SwapsOnWater = SwapsOnWater,
        WorthwhilePercent = WorthwhilePct,
        Trials = new TrialHabits
        {
            Pieces = TrialPieces,
            Distance = TrialDistanceM is decimal trial ? Written.ToDistance(trial) : null,
            Minutes = TrialMinutes,
            TimedBy = Rows.Stored.ToTimedBy(TrialTimedBy),
            PricePercent = TrialPricePct,
        },
        Body = Body?.ToRecord() ?? BodyMeasures.Unknown,
    });
}

/// <summary>A paddler's body measures in a shared file.</summary>
internal sealed record SharedBody
{
    public decimal? SeatedReachIn { get; init; }
    public decimal? StatureIn { get; init; }
    public decimal? SittingShoulderHeightIn { get; init; }
    public decimal? ShoulderElbowIn { get; init; }
    public decimal? ElbowGripIn { get; init; }
    public decimal? EyeHeightIn { get; init; }
    public decimal? ShoulderBreadthIn { get; init; }
    public decimal? ArmSpanIn { get; init; }
    public decimal? OverheadReachIn { get; init; }
    public decimal? HandLengthIn { get; init; }
    public decimal? PalmLengthIn { get; init; }

    public static SharedBody Of(BodyMeasures body) => new()
    {
        SeatedReachIn = Written.Inches(body.SeatedReach),
        StatureIn = Written.Inches(body.Stature),
        SittingShoulderHeightIn = Written.Inches(body.SittingShoulderHeight),
        ShoulderElbowIn = Written.Inches(body.ShoulderElbow),
        ElbowGripIn = Written.Inches(body.ElbowGrip),
        EyeHeightIn = Written.Inches(body.EyeHeight),
        ShoulderBreadthIn = Written.Inches(body.ShoulderBreadth),
        ArmSpanIn = Written.Inches(body.ArmSpan),
        OverheadReachIn = Written.Inches(body.OverheadReach),
        HandLengthIn = Written.Inches(body.HandLength),
        PalmLengthIn = Written.Inches(body.PalmLength),
    };

    public BodyMeasures ToRecord() => new()
    {
        SeatedReach = Written.ToLength(SeatedReachIn),
        Stature = Written.ToLength(StatureIn),
        SittingShoulderHeight = Written.ToLength(SittingShoulderHeightIn),
        ShoulderElbow = Written.ToLength(ShoulderElbowIn),
        ElbowGrip = Written.ToLength(ElbowGripIn),
        EyeHeight = Written.ToLength(EyeHeightIn),
        ShoulderBreadth = Written.ToLength(ShoulderBreadthIn),
        ArmSpan = Written.ToLength(ArmSpanIn),
        OverheadReach = Written.ToLength(OverheadReachIn),
        HandLength = Written.ToLength(HandLengthIn),
        PalmLength = Written.ToLength(PalmLengthIn),
    };
}
