using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook.Shared;

/// <summary>An outing in a shared file.</summary>
internal sealed record SharedOuting : SharedItem
{
    public required Guid Paddler { get; init; }
    public required Guid Hull { get; init; }
    public required DateOnly Date { get; init; }
    public TimeOnly? Time { get; init; }
    public string? Label { get; init; }
    public string? Place { get; init; }
    public int? Wind { get; init; }
    public string? Water { get; init; }
    public string? Notes { get; init; }
    public bool? Blind { get; init; }
    public IReadOnlyList<SharedPiece>? Pieces { get; init; }

    public override string Kind() => "outing";

    public override string Table() => "outings";

    public override Guid? Container() => Paddler;

    public override SharedItem Plain() => this with { Edits = null, Untold = null, Earlier = null, Pieces = null };

    /// <summary>The outing without its pieces.</summary>
    public static SharedOuting Of(Outing outing) => new()
    {
        Id = outing.Id,
        Paddler = outing.PaddlerId,
        Hull = outing.HullId,
        Date = outing.Date,
        Time = outing.Time,
        Label = outing.Label.Length == 0 ? null : outing.Label,
        Place = outing.Place,
        Wind = outing.Wind?.Number,
        Water = outing.Water,
        Notes = outing.Notes,
        Blind = outing.Blind ? true : null,
    };

    public Outing ToRecord(IReadOnlyList<Piece> pieces) => RecordRules.Checked(new Outing
    {
        Id = Id,
        PaddlerId = Paddler,
        HullId = Hull,
        Date = Date,
        Time = Time,
        Label = Label ?? "",
        Place = Place,
        Wind = Wind is int wind ? Beaufort.FromNumber(wind) : null,
        Water = Water,
        Notes = Notes,
        Blind = Blind ?? false,
        Pieces = pieces,
    });
}

/// <summary>A piece in a shared file.</summary>
internal sealed record SharedPiece : SharedItem
{
    public required int Order { get; init; }
    public required Guid Paddle { get; init; }
    public required decimal LengthIn { get; init; }
    public required decimal DistanceM { get; init; }
    public required string Time { get; init; }
    public decimal? Effort { get; init; }
    public int? HeartRate { get; init; }
    public decimal? StrokeRate { get; init; }
    public required string Course { get; init; }
    public decimal? Soreness { get; init; }
    public double? FadePct { get; init; }
    public string? ExcludedBecause { get; init; }
    public string? Notes { get; init; }
    public string? Origin { get; init; }
    public string? TimedBy { get; init; }
    public double? SpeedErrorPct { get; init; }

    public override string Kind() => "piece";

    public override string Table() => "pieces";

    public static SharedPiece Of(Piece piece) => new()
    {
        Id = piece.Id,
        Order = piece.Order,
        Paddle = piece.PaddleId,
        LengthIn = Written.Inches(piece.Length),
        DistanceM = Written.Metres(piece.Distance),
        Time = piece.Time.ToString(),
        Effort = piece.Effort?.Halves / 2m,
        HeartRate = piece.HeartRate?.BeatsPerMinute,
        StrokeRate = piece.StrokeRate?.Tenths / 10m,
        Course = Rows.Stored.CourseName(piece.Course),
        Soreness = piece.Soreness?.Halves / 2m,
        FadePct = piece.FadePercent,
        ExcludedBecause = piece.ExcludedBecause,
        Notes = piece.Notes,
        Origin = piece.Origin,
        TimedBy = Rows.Stored.TimedByName(piece.TimedBy),
        SpeedErrorPct = piece.SpeedErrorPercent,
    };

    public Piece ToRecord() => new()
    {
        Id = Id,
        Order = Order,
        PaddleId = Paddle,
        Length = Written.ToLength(LengthIn),
        Distance = Written.ToDistance(DistanceM),
        Time = PieceTime.Parse(Time),
        Effort = Effort is decimal effort ? Domain.Values.Effort.FromPoints((double)effort) : null,
        HeartRate = HeartRate is int beats ? Domain.Values.HeartRate.FromBeatsPerMinute(beats) : null,
        StrokeRate = StrokeRate is decimal strokes ? Domain.Values.StrokeRate.FromStrokesPerMinute((double)strokes) : null,
        Course = Rows.Stored.ToCourse(Course),
        Soreness = Soreness is decimal soreness ? Domain.Values.Soreness.FromPoints((double)soreness) : null,
        FadePercent = FadePct,
        ExcludedBecause = ExcludedBecause,
        Notes = Notes,
        Origin = Origin,
        TimedBy = Rows.Stored.ToTimedBy(TimedBy),
        SpeedErrorPercent = SpeedErrorPct,
    };
}
