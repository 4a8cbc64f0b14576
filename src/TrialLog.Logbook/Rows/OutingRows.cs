using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;

namespace TrialLog.Logbook.Rows;

/// <summary>An outing as it lies in the database.</summary>
internal sealed class OutingRow
{
    public string Id { get; init; } = "";
    public string PaddlerId { get; init; } = "";
    public string HullId { get; init; } = "";
    public string Date { get; init; } = "";
    public string? Time { get; init; }
    public string Label { get; init; } = "";
    public string? Place { get; init; }
    public int? Wind { get; init; }
    public string? Water { get; init; }
    public string? Notes { get; init; }
    public bool Blind { get; init; }

    public Outing ToRecord(IReadOnlyList<Piece> pieces) => new()
    {
        Id = Guid.Parse(Id),
        PaddlerId = Guid.Parse(PaddlerId),
        HullId = Guid.Parse(HullId),
        Date = Stored.ToDate(Date),
        Time = Stored.ToTime(Time),
        Label = Label,
        Place = Place,
        Wind = Wind is int wind ? Beaufort.FromNumber(wind) : null,
        Water = Water,
        Notes = Notes,
        Blind = Blind,
        Pieces = pieces,
    };
}

/// <summary>A piece as it lies in the database.</summary>
internal sealed class PieceRow
{
    public string Id { get; init; } = "";
    public string OutingId { get; init; } = "";
    public int PieceOrder { get; init; }
    public string PaddleId { get; init; } = "";
    public long LengthNm { get; init; }
    public long DistanceUm { get; init; }
    public long TimeMs { get; init; }
    public int? EffortHalves { get; init; }
    public int? HeartRate { get; init; }
    public int? StrokeRateTenths { get; init; }
    public string Course { get; init; } = "";
    public int? SorenessHalves { get; init; }
    public double? FadePercent { get; init; }
    public string? ExcludedBecause { get; init; }
    public string? Notes { get; init; }
    public string? Origin { get; init; }
    public string? TimedBy { get; init; }
    public double? SpeedErrorPercent { get; init; }

    public Piece ToRecord() => new()
    {
        Id = Guid.Parse(Id),
        Order = PieceOrder,
        PaddleId = Guid.Parse(PaddleId),
        Length = Length.FromNanometres(LengthNm),
        Distance = Distance.FromMicrometres(DistanceUm),
        Time = PieceTime.FromMilliseconds(TimeMs),
        Effort = EffortHalves is int effort ? Effort.FromPoints(effort / 2.0) : null,
        HeartRate = HeartRate is int beats ? Domain.Values.HeartRate.FromBeatsPerMinute(beats) : null,
        StrokeRate = StrokeRateTenths is int tenths ? StrokeRate.FromStrokesPerMinute(tenths / 10.0) : null,
        Course = Stored.ToCourse(Course),
        Soreness = SorenessHalves is int soreness ? Soreness.FromPoints(soreness / 2.0) : null,
        FadePercent = FadePercent,
        ExcludedBecause = ExcludedBecause,
        Notes = Notes,
        Origin = Origin,
        TimedBy = Stored.ToTimedBy(TimedBy),
        SpeedErrorPercent = SpeedErrorPercent,
    };
}
