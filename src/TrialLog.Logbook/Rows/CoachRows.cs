using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook.Rows;

/// <summary>A given card as it lies in the database.</summary>
internal sealed class CardRow
{
    public string Id { get; init; } = "";
    public string PaddlerId { get; init; } = "";
    public string HullId { get; init; } = "";
    public string PaddleId { get; init; } = "";
    public string GivenAt { get; init; } = "";
    public string LengthsNm { get; init; } = "";
    public long DistanceUm { get; init; }
    public int EffortHalves { get; init; }
    public long RestMs { get; init; }
    public string Reason { get; init; } = "";
    public long BestNm { get; init; }
    public long LikelyLowNm { get; init; }
    public long LikelyHighNm { get; init; }
    public double GainLeftPercent { get; init; }
    public bool DiminishingReturns { get; init; }
    public int Outings { get; init; }
    public int Pieces { get; init; }
    public long AsOfChange { get; init; }
    public string? PaddledAs { get; init; }
    public bool Blind { get; init; }
    public string? GivenBy { get; init; }
    public string? GivenBecause { get; init; }
    public string? OwnLengthsNm { get; init; }
    public int? ToGoMedian { get; init; }
    public int? ToGoLow { get; init; }
    public int? ToGoHigh { get; init; }

    public static string Lengths(IReadOnlyList<Length> lengths) =>
        "[" + string.Join(",", lengths.Select(length => length.Nanometres.ToString(CultureInfo.InvariantCulture))) + "]";

    private static IReadOnlyList<Length> ToLengths(string text) =>
        [.. text.Trim('[', ']').Split(',').Select(length => Length.FromNanometres(long.Parse(length, CultureInfo.InvariantCulture)))];

    public GivenCard ToRecord() => new()
    {
        Id = Guid.Parse(Id),
        PaddlerId = Guid.Parse(PaddlerId),
        HullId = Guid.Parse(HullId),
        PaddleId = Guid.Parse(PaddleId),
        GivenAt = Stored.ToMoment(GivenAt),
        Card = new TrialCard
        {
            Lengths = ToLengths(LengthsNm),
            Distance = Distance.FromMicrometres(DistanceUm),
            Effort = Effort.FromPoints(EffortHalves / 2.0),
            Rest = PieceTime.FromMilliseconds(RestMs),
        },
        Reason = Reason,
        Best = Length.FromNanometres(BestNm),
        LikelyLow = Length.FromNanometres(LikelyLowNm),
        LikelyHigh = Length.FromNanometres(LikelyHighNm),
        GainLeftPercent = GainLeftPercent,
        DiminishingReturns = DiminishingReturns,
        Outings = Outings,
        Pieces = Pieces,
        AsOfChange = AsOfChange,
        PaddledAs = Stored.ToId(PaddledAs),
        Blind = Blind,
        By = GivenBy,
        Because = GivenBecause,
        OwnLengths = OwnLengthsNm is null ? [] : ToLengths(OwnLengthsNm),
        OutingsToGo = ToGoMedian is int median && ToGoLow is int low && ToGoHigh is int high ? (median, low, high) : null,
    };
}

/// <summary>A technique check as it lies in the database.</summary>
internal sealed class TechniqueCheckRow
{
    public string Id { get; init; } = "";
    public string PaddlerId { get; init; } = "";
    public string HullId { get; init; } = "";
    public string PaddleId { get; init; } = "";
    public long LengthNm { get; init; }
    public double HandAboveEyeInches { get; init; }
    public double? ShaftLeanDegrees { get; init; }
    public bool FromPhoto { get; init; }
    public string Date { get; init; } = "";

    public TechniqueCheck ToRecord() => new()
    {
        Id = Guid.Parse(Id),
        PaddlerId = Guid.Parse(PaddlerId),
        HullId = Guid.Parse(HullId),
        PaddleId = Guid.Parse(PaddleId),
        Length = Length.FromNanometres(LengthNm),
        HandAboveEyeInches = HandAboveEyeInches,
        ShaftLeanDegrees = ShaftLeanDegrees,
        FromPhoto = FromPhoto,
        Date = Stored.ToDate(Date),
    };
}

/// <summary>A coach's note as it lies in the database.</summary>
internal sealed class NoteRow
{
    public string Id { get; init; } = "";
    public string AboutId { get; init; } = "";
    public string About { get; init; } = "";
    public string Author { get; init; } = "";
    public string WrittenAt { get; init; } = "";
    public string Text { get; init; } = "";

    public CoachNote ToRecord() => new()
    {
        Id = Guid.Parse(Id),
        AboutId = Guid.Parse(AboutId),
        About = Stored.ToSubject(About),
        Author = Author,
        WrittenAt = Stored.ToMoment(WrittenAt),
        Text = Text,
    };
}

/// <summary>Word that soreness is gone, as it lies in the database.</summary>
internal sealed class SorenessClearanceRow
{
    public string Id { get; init; } = "";
    public string PaddlerId { get; init; } = "";
    public string Date { get; init; } = "";
    public string SaidBy { get; init; } = "";
    public string? Because { get; init; }

    public SorenessClearance ToRecord() => new()
    {
        Id = Guid.Parse(Id),
        PaddlerId = Guid.Parse(PaddlerId),
        Date = Stored.ToDate(Date),
        By = SaidBy,
        Because = Because,
    };
}

/// <summary>A decision as it lies in the database.</summary>
internal sealed class DecisionRow
{
    public string Id { get; init; } = "";
    public string PaddlerId { get; init; } = "";
    public string HullId { get; init; } = "";
    public string PaddleId { get; init; } = "";
    public long LengthNm { get; init; }
    public string Kind { get; init; } = "";
    public string Date { get; init; } = "";
    public string? DecidedBy { get; init; }
    public string? Because { get; init; }

    public Decision ToRecord() => new()
    {
        Id = Guid.Parse(Id),
        PaddlerId = Guid.Parse(PaddlerId),
        HullId = Guid.Parse(HullId),
        PaddleId = Guid.Parse(PaddleId),
        Length = Length.FromNanometres(LengthNm),
        Kind = Stored.ToDecisionKind(Kind),
        Date = Stored.ToDate(Date),
        By = DecidedBy,
        Because = Because,
    };
}
