using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;

namespace TrialLog.Recordings.Csv;

/// <summary>Reads the cells of a row as values and says what cannot be right about them.</summary>
internal sealed class CsvRowReader
{
    private static readonly CellParser<int> Order = CellParsers.Whole(0, 10_000, "a piece's order");
    private static readonly CellParser<double> Fade = CellParsers.Number(-200, 200, "a fade from -200 to 200 %");
    private static readonly CellParser<double> SpeedError = CellParsers.Number(1e-9, 20, "a speed's error above 0 and up to 20 %");

    private readonly CsvHeader _header;
    private readonly CsvCells _cells;
    private readonly DateOnly _today;
    private readonly IReadOnlyList<CsvColumn> _factColumns;
    private readonly Dictionary<string, string> _names = new(StringComparer.Ordinal);

    public CsvRowReader(CsvHeader header, CsvCells cells, DateOnly today) =>
        (_header, _cells, _today, _factColumns) = (header, cells, today, CsvFactCells.In(header));

    /// <summary>The row at hand, or null where the cells' problems say why not.</summary>
    public CsvRow? Read()
    {
        CheckShape();
        int? order = _cells.Value(CsvColumn.Piece, Order);
        string? paddler = Name(CsvColumn.Paddler, "paddler"), hull = Name(CsvColumn.Hull, "hull"),
            paddle = Name(CsvColumn.Paddle, "paddle");
        string outing = Name(CsvColumn.Outing, "outing") ?? "";
        (DateOnly Date, TimeOnly? Time)? when = _cells.Value<(DateOnly, TimeOnly?)>(CsvColumn.Date, CellParsers.DateAndTime);
        DateOnly? date = when?.Date;
        TimeOnly? start = _cells.Value<TimeOnly>(CsvColumn.StartTime, CellParsers.TimeOfDay) ?? when?.Time;
        if (date is { } day && Plausible.ProblemWithDate(day, _today) is { } problem)
            _cells.Refuse(CsvColumn.Date, problem);
        CsvPiece? piece = ReadPiece(order);
        if (order != 0 || date is not null)
        {
            Demand(CsvColumn.Date, "a day, like 2026-05-31");
            Demand(CsvColumn.Hull, "the hull's name");
        }

        CsvFacts facts = CsvFactCells.Read(_cells, _factColumns);
        FactChecks.Check(facts, _cells);
        var row = new CsvRow
        {
            Line = _cells.Line,
            Paddler = paddler,
            Hull = hull,
            Paddle = paddle,
            Date = date,
            StartTime = start,
            Outing = outing,
            Wind = _cells.Value<Beaufort>(CsvColumn.Wind, Beaufort.TryParse),
            Place = Note(CsvColumn.Place, "place"),
            Water = Note(CsvColumn.Water, "water"),
            OutingNotes = Note(CsvColumn.OutingNotes, "outing's note"),
            Blind = _cells.Value<bool>(CsvColumn.Blind, CellParsers.YesNo),
            Piece = piece,
            Facts = facts,
            Print = CsvFingerprint.Of(paddler, date, start, outing, order, hull, paddle, piece?.Length, piece?.Distance, piece?.Time),
        };
        return _cells.Problems.Count == 0 ? row : null;
    }

    private CsvPiece? ReadPiece(int? order)
    {
        Length? length = Either<Length>(CsvColumn.LengthIn, CellParsers.Inches, CsvColumn.LengthCm, CellParsers.Centimetres,
            (a, b) => Math.Abs(a.InchesMoreThan(b)) < 0.04);
        Distance? distance = Either<Distance>(CsvColumn.DistanceM, Distance.TryParse, CsvColumn.DistanceKm, CellParsers.Kilometres,
            (a, b) => Math.Abs(a.Metres - b.Metres) <= 0.01 * a.Metres);
        PieceTime? time = Either<PieceTime>(CsvColumn.Time, PieceTime.TryParse, CsvColumn.TimeS, PieceTime.TryParse,
            (a, b) => Math.Abs(a.Milliseconds - b.Milliseconds) <= 1000);
        if (order == 0)
        {
            if (length is not null || distance is not null || time is not null)
                _cells.Refuse(CsvColumn.Piece,
                    "0 means that the row has no piece, but there is a length, distance or time; number pieces from 1.");
            return null;
        }

        Demand(CsvColumn.LengthIn, "the paddle's length", CsvColumn.LengthCm);
        Demand(CsvColumn.DistanceM, "the distance", CsvColumn.DistanceKm);
        Demand(CsvColumn.Time, "the time", CsvColumn.TimeS);
        if (length is { } set && Plausible.ProblemWithPaddleLength(set) is { } wrongLength)
            _cells.Refuse(Present(CsvColumn.LengthIn, CsvColumn.LengthCm), wrongLength);
        if (distance is { } far && time is { } took && Piece.ProblemWithSpeed(far, took) is { } wrongSpeed)
            _cells.Refuse(Present(CsvColumn.Time, CsvColumn.TimeS), wrongSpeed);
        var piece = new CsvPiece
        {
            Order = order,
            Length = length ?? default,
            Distance = distance ?? default,
            Time = time ?? default,
            Effort = _cells.Value<Effort>(CsvColumn.Effort, Effort.TryParse),
            HeartRate = _cells.Value<HeartRate>(CsvColumn.HeartRate, HeartRate.TryParse),
            StrokeRate = _cells.Value<StrokeRate>(CsvColumn.StrokeRate, StrokeRate.TryParse),
            Course = _cells.Value<Course>(CsvColumn.Course, CellParsers.Course) ?? Course.RoundTrip,
            Soreness = _cells.Value<Soreness>(CsvColumn.Soreness, Soreness.TryParse),
            FadePercent = _cells.Value(CsvColumn.FadePct, Fade),
            TimedBy = _cells.Value<TimedBy>(CsvColumn.Timed, CellParsers.Timed),
            SpeedErrorPercent = _cells.Value(CsvColumn.SpeedErrorPct, SpeedError),
            ExcludedBecause = Note(CsvColumn.ExcludedBecause, "reason"),
            Origin = Name(CsvColumn.Origin, "origin"),
            Notes = Checked(CsvColumn.Notes, "note", WithUnknown(_cells.Text(CsvColumn.Notes))),
        };
        return length is null || distance is null || time is null ? null : piece;
    }

    private void CheckShape()
    {
        if (_cells.All.Any(cell => cell.Contains(CsvEncoding.NoText)))
            _cells.Refuse(null, "The row has bytes that are not text; save the file as “CSV UTF-8”.");
        if (_cells.All.Skip(_header.Count).Any(cell => !string.IsNullOrWhiteSpace(cell)))
            _cells.Refuse(null, $"The row has {_cells.Count} cells and the header {_header.Count}; a separator inside a cell needs " +
                $"quotation marks around the cell.");
    }

    /// <summary>A value that two columns can give in different units; where both do, they must agree.</summary>
    private T? Either<T>(CsvColumn first, CellParser<T> parseFirst, CsvColumn second, CellParser<T> parseSecond, Func<T, T, bool> agree)
        where T : struct
    {
        T? a = _cells.Value(first, parseFirst), b = _cells.Value(second, parseSecond);
        if (a is { } one && b is { } other && !agree(one, other))
            _cells.Refuse(first, $"{one} is not the same as the " +
                $"{(other is Length length ? length.ToText(LengthUnit.Centimetres) : other)} in {second.Name()}; correct one or empty it.");
        return a ?? b;
    }

    private void Demand(CsvColumn column, string what, CsvColumn? or = null)
    {
        if (_cells.Text(column) is null && (or is not { } other || _cells.Text(other) is null))
            _cells.Refuse(or is { } second ? Present(column, second) : column, $"The cell is empty; it needs {what}.");
    }

    private CsvColumn Present(CsvColumn column, CsvColumn or) => _header.Has(column) ? column : or;

    private string? Name(CsvColumn column, string kind)
    {
        string? name = CsvFactCells.NameIn(_cells, column, kind);

        // Few names on many rows: one string each.
        return name is null ? null : _names.TryGetValue(name, out string? same) ? same : _names[name] = name;
    }

    private string? Note(CsvColumn column, string kind) => Checked(column, kind, _cells.Text(column));

    private string? Checked(CsvColumn column, string kind, string? text)
    {
        if (NoteRule.TryCheck(text, kind, out string? note, out string? problem))
            return note;
        _cells.Refuse(column, problem);
        return null;
    }

    private string? WithUnknown(string? notes)
    {
        foreach ((int cell, string name) in _header.Unknown)
        {
            if (_cells.At(cell) is { } text)
                notes = notes is null ? $"{name}: {text}" : $"{notes}; {name}: {text}";
        }

        return notes;
    }
}
