using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook.Shared;

/// <summary>A given trial card in a shared file.</summary>
internal sealed record SharedCard : SharedItem
{
    public required Guid Paddler { get; init; }
    public required Guid Hull { get; init; }
    public required Guid Paddle { get; init; }
    public required DateTimeOffset GivenAt { get; init; }
    public required IReadOnlyList<decimal> LengthsIn { get; init; }
    public required decimal DistanceM { get; init; }
    public required decimal Effort { get; init; }
    public required string Rest { get; init; }
    public required string Reason { get; init; }
    public required decimal BestIn { get; init; }
    public required decimal LikelyLowIn { get; init; }
    public required decimal LikelyHighIn { get; init; }
    public required double GainLeftPct { get; init; }
    public required bool DiminishingReturns { get; init; }
    public required int Outings { get; init; }
    public required int Pieces { get; init; }
    public Guid? PaddledAs { get; init; }
    public bool? Blind { get; init; }
    public string? By { get; init; }
    public string? Because { get; init; }
    public IReadOnlyList<decimal>? OwnLengthsIn { get; init; }
    public IReadOnlyList<int>? OutingsToGo { get; init; }

    public override string Kind() => "trial card";

    public override string Table() => "cards";

    public override Guid? Container() => Paddler;

    public static SharedCard Of(GivenCard given) => new()
    {
        Id = given.Id,
        Paddler = given.PaddlerId,
        Hull = given.HullId,
        Paddle = given.PaddleId,
        GivenAt = given.GivenAt,
        LengthsIn = [.. given.Card.Lengths.Select(Written.Inches)],
        DistanceM = Written.Metres(given.Card.Distance),
        Effort = given.Card.Effort.Halves / 2m,
        Rest = given.Card.Rest.ToString(),
        Reason = given.Reason,
        BestIn = Written.Inches(given.Best),
        LikelyLowIn = Written.Inches(given.LikelyLow),
        LikelyHighIn = Written.Inches(given.LikelyHigh),
        GainLeftPct = given.GainLeftPercent,
        DiminishingReturns = given.DiminishingReturns,
        Outings = given.Outings,
        Pieces = given.Pieces,
        PaddledAs = given.PaddledAs,
        Blind = given.Blind ? true : null,
        By = given.By,
        Because = given.Because,
        OwnLengthsIn = given.OwnLengths.Count == 0 ? null : [.. given.OwnLengths.Select(Written.Inches)],
        OutingsToGo = given.OutingsToGo is { } toGo ? [toGo.Median, toGo.Low, toGo.High] : null,
    };

    /// <summary>
    /// The card; <paramref name="asOfChange"/> is the change it was given after in this logbook, 0 if it was given in another.
    /// </summary>
    public GivenCard ToRecord(long asOfChange) => RecordRules.Checked(new GivenCard
    {
        Id = Id,
        PaddlerId = Paddler,
        HullId = Hull,
        PaddleId = Paddle,
        GivenAt = GivenAt,
        Card = new TrialCard
        {
            Lengths = [.. LengthsIn.Select(Written.ToLength)],
            Distance = Written.ToDistance(DistanceM),
            Effort = Domain.Values.Effort.FromPoints((double)Effort),
            Rest = PieceTime.Parse(Rest),
        },
        Reason = Reason,
        Best = Written.ToLength(BestIn),
        LikelyLow = Written.ToLength(LikelyLowIn),
        LikelyHigh = Written.ToLength(LikelyHighIn),
        GainLeftPercent = GainLeftPct,
        DiminishingReturns = DiminishingReturns,
        Outings = Outings,
        Pieces = Pieces,
        AsOfChange = asOfChange,
        PaddledAs = PaddledAs,
        Blind = Blind ?? false,
        By = By,
        Because = Because,
        OwnLengths = [.. (OwnLengthsIn ?? []).Select(Written.ToLength)],
        OutingsToGo = OutingsToGo switch
        {
            null => null,
            [int median, int low, int high] => (median, low, high),
            _ => throw new InvalidValueException("The outings to go are a median, a low and a high number."),
        },
    });
}

/// <summary>A technique check in a shared file.</summary>
internal sealed record SharedTechniqueCheck : SharedItem
{
    public required Guid Paddler { get; init; }
    public required Guid Hull { get; init; }
    public required Guid Paddle { get; init; }
    public required DateOnly Date { get; init; }
    public required decimal LengthIn { get; init; }
    public required double HandAboveEyeIn { get; init; }
    public double? ShaftLeanDegrees { get; init; }
    public bool FromPhoto { get; init; }

    public override string Kind() => "technique check";

    public override string Table() => "technique_checks";

    public override Guid? Container() => Paddler;

    public static SharedTechniqueCheck Of(TechniqueCheck check) => new()
    {
        Id = check.Id,
        Paddler = check.PaddlerId,
        Hull = check.HullId,
        Paddle = check.PaddleId,
        Date = check.Date,
        LengthIn = Written.Inches(check.Length),
        HandAboveEyeIn = check.HandAboveEyeInches,
        ShaftLeanDegrees = check.ShaftLeanDegrees,
        FromPhoto = check.FromPhoto,
    };

    public TechniqueCheck ToRecord() => RecordRules.Checked(new TechniqueCheck
    {
        Id = Id,
        PaddlerId = Paddler,
        HullId = Hull,
        PaddleId = Paddle,
        Date = Date,
        Length = Written.ToLength(LengthIn),
        HandAboveEyeInches = HandAboveEyeIn,
        ShaftLeanDegrees = ShaftLeanDegrees,
        FromPhoto = FromPhoto,
    });
}

/// <summary>A coach's note in a shared file.</summary>
internal sealed record SharedNote : SharedItem
{
    public required string About { get; init; }
    public required Guid AboutId { get; init; }
    public required string Author { get; init; }
    public required DateTimeOffset WrittenAt { get; init; }
    public required string Text { get; init; }

    public override string Kind() => "coach's note";

    public override string Table() => "notes";

    public override Guid? Container() => AboutId;

    public static SharedNote Of(CoachNote note) => new()
    {
        Id = note.Id,
        About = Rows.Stored.Subject(note.About),
        AboutId = note.AboutId,
        Author = note.Author,
        WrittenAt = note.WrittenAt,
        Text = note.Text,
    };

    public CoachNote ToRecord() => RecordRules.Checked(new CoachNote
    {
        Id = Id,
        About = Rows.Stored.ToSubject(About),
        AboutId = AboutId,
        Author = Author,
        WrittenAt = WrittenAt,
        Text = Text,
    });
}

/// <summary>Word that soreness is gone, in a shared file.</summary>
internal sealed record SharedSorenessClearance : SharedItem
{
    public required Guid Paddler { get; init; }
    public required DateOnly Date { get; init; }
    public required string By { get; init; }
    public string? Because { get; init; }

    public override string Kind() => "word that soreness is gone";

    public override string Table() => "soreness_clearances";

    public override Guid? Container() => Paddler;

    public static SharedSorenessClearance Of(SorenessClearance clearance) => new()
    {
        Id = clearance.Id,
        Paddler = clearance.PaddlerId,
        Date = clearance.Date,
        By = clearance.By,
        Because = clearance.Because,
    };

    public SorenessClearance ToRecord() =>
        RecordRules.Checked(new SorenessClearance { Id = Id, PaddlerId = Paddler, Date = Date, By = By, Because = Because });
}

/// <summary>A decision in a shared file.</summary>
internal sealed record SharedDecision : SharedItem
{
    public required Guid Paddler { get; init; }
    public required Guid Hull { get; init; }
    public required Guid Paddle { get; init; }
    public required DateOnly Date { get; init; }
    public required string Decided { get; init; }
    public required decimal LengthIn { get; init; }
    public string? By { get; init; }
    public string? Because { get; init; }

    public override string Kind() => "decision";

    public override string Table() => "decisions";

    public override Guid? Container() => Paddler;

    public static SharedDecision Of(Decision decision) => new()
    {
        Id = decision.Id,
        Paddler = decision.PaddlerId,
        Hull = decision.HullId,
        Paddle = decision.PaddleId,
        Date = decision.Date,
        Decided = Rows.Stored.DecisionName(decision.Kind),
        LengthIn = Written.Inches(decision.Length),
        By = decision.By,
        Because = decision.Because,
    };

    public Decision ToRecord() => RecordRules.Checked(new Decision
    {
        Id = Id,
        PaddlerId = Paddler,
        HullId = Hull,
        PaddleId = Paddle,
        Date = Date,
        Kind = Rows.Stored.ToDecisionKind(Decided),
        Length = Written.ToLength(LengthIn),
        By = By,
        Because = Because,
    });
}
