using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>One row of a file, each cell read and found possible in itself; null where a cell was empty.</summary>
public sealed record CsvRow
{
    /// <summary>Line of the file on which the row begins.</summary>
    public required int Line { get; init; }

    /// <summary>Name of the paddler.</summary>
    public string? Paddler { get; init; }

    /// <summary>Name of the hull; present wherever <see cref="Date"/> is.</summary>
    public string? Hull { get; init; }

    /// <summary>Name of the paddle.</summary>
    public string? Paddle { get; init; }

    /// <summary>The day; null only on a row that merely names a paddler, hull or paddle (<c>piece</c> is 0).</summary>
    public DateOnly? Date { get; init; }

    /// <summary>When the outing began.</summary>
    public TimeOnly? StartTime { get; init; }

    /// <summary>Label of the outing, empty where none was given.</summary>
    public string Outing { get; init; } = "";

    /// <summary>Wind.</summary>
    public Beaufort? Wind { get; init; }

    /// <summary>Place of the outing.</summary>
    public string? Place { get; init; }

    /// <summary>Water of the outing.</summary>
    public string? Water { get; init; }

    /// <summary>Notes on the outing as a whole.</summary>
    public string? OutingNotes { get; init; }

    /// <summary>Whether the paddler did not know the lengths.</summary>
    public bool? Blind { get; init; }

    /// <summary>The piece; null where <c>piece</c> is 0.</summary>
    public CsvPiece? Piece { get; init; }

    /// <summary>
    /// Stable hash of what makes the row that row (paddler, date, outing, piece, hull, paddle, length, distance, time, as
    /// stated); the piece's <see cref="CsvPiece.Origin"/> unless the row gives another.
    /// </summary>
    public string Fingerprint => CsvFingerprint.Text(Print);

    /// <summary>The fingerprint as a number, which takes less room.</summary>
    internal UInt128 Print { get; init; }

    /// <summary>What the row says about the paddler, hull and paddle themselves.</summary>
    internal CsvFacts Facts { get; init; } = CsvFacts.None;
}

/// <summary>The piece of a row.</summary>
public sealed record CsvPiece
{
    /// <summary>Order within the outing, from 1; null where the order of the file holds.</summary>
    public int? Order { get; init; }

    /// <summary>Overall paddle length.</summary>
    public required Length Length { get; init; }

    /// <summary>Distance paddled.</summary>
    public required Distance Distance { get; init; }

    /// <summary>Time taken.</summary>
    public required PieceTime Time { get; init; }

    /// <summary>Perceived exertion.</summary>
    public Effort? Effort { get; init; }

    /// <summary>Mean heart rate.</summary>
    public HeartRate? HeartRate { get; init; }

    /// <summary>Mean stroke rate.</summary>
    public StrokeRate? StrokeRate { get; init; }

    /// <summary>The way the piece lay on the water; a round trip unless told.</summary>
    public Course Course { get; init; } = Course.RoundTrip;

    /// <summary>Soreness.</summary>
    public Soreness? Soreness { get; init; }

    /// <summary>Speed of the second half less the first, percent of the mean.</summary>
    public double? FadePercent { get; init; }

    /// <summary>What timed it.</summary>
    public TimedBy? TimedBy { get; init; }

    /// <summary>Standard error of its mean speed as measured, percent.</summary>
    public double? SpeedErrorPercent { get; init; }

    /// <summary>Why the piece does not count; null where it counts.</summary>
    public string? ExcludedBecause { get; init; }

    /// <summary>Notes, with the cells of unknown columns.</summary>
    public string? Notes { get; init; }

    /// <summary>Fingerprint of the row or recording that it first came from, where the file gives one.</summary>
    public string? Origin { get; init; }
}
