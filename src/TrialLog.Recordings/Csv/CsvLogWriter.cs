using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Writes a log as rows. What describes a paddler, hull or paddle itself stands on the first row that names it.</summary>
internal sealed class CsvLogWriter(KnownLog log)
{
    private readonly Dictionary<Guid, Paddler> _paddlers = log.Paddlers.ToDictionary(paddler => paddler.Id);
    private readonly Dictionary<Guid, Hull> _hulls = log.Hulls.ToDictionary(hull => hull.Id);
    private readonly Dictionary<Guid, Paddle> _paddles = log.Paddles.ToDictionary(paddle => paddle.Id);
    private readonly HashSet<Guid> _described = [];

    /// <summary>The text of a value in a cell; bare numbers are in the unit of the column's name.</summary>
    public static string Cell(object value) => value switch
    {
        string text => FormulaGuard.Guard(text),
        Length length => length.ToDecimalInches(),
        Distance distance => distance.ToDecimalMetres(),
        Course course => CellParsers.Write(course),
        TimedBy timedBy => timedBy == TimedBy.Hand ? "hand" : "watch",
        LengthUnit unit => unit == LengthUnit.Inches ? "in" : "cm",
        bool yes => yes ? "yes" : "no",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        TimeOnly time =>
            time.ToString(time.Ticks % TimeSpan.TicksPerMinute == 0 ? "HH:mm" : "HH:mm:ss.FFFFFFF", CultureInfo.InvariantCulture),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
    };

    /// <summary>Writes everything, outings by day.</summary>
    public void Write(Stream to)
    {
        List<string?[]> rows = [.. Rows().Select(Cells)];
        bool[] filled = new bool[CsvColumns.All.Count];
        foreach (string?[] row in rows)
        {
            for (int i = 0; i < row.Length; i++)
                filled[i] |= row[i] is not null;
        }

        // The columns of the format are always there; the further ones only where they say something.
        List<CsvColumn> columns = [.. CsvColumns.All.Where(column => filled[(int)column] || (column <= CsvColumn.Notes
            && column is not (CsvColumn.StartTime or CsvColumn.LengthCm or CsvColumn.DistanceKm or CsvColumn.TimeS)))];
        using var text = new StreamWriter(to, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
        using var csv = new CsvWriter(text, CsvQuoting.RowsEndingWith("\n"));
        foreach (CsvColumn column in columns)
            csv.WriteField(column.Name());
        csv.NextRecord();
        foreach (string?[] row in rows)
        {
            foreach (CsvColumn column in columns)
                csv.WriteField(row[(int)column]);
            csv.NextRecord();
        }
    }

    private IEnumerable<Dictionary<CsvColumn, object?>> Rows()
    {
        IReadOnlyDictionary<Guid, string> labels = OutingLabels.Of(log.Outings);
        foreach (Outing outing in log.Outings.OrderBy(outing => outing.Date).ThenBy(outing => outing.Time)
            .ThenBy(outing => labels[outing.Id], StringComparer.Ordinal).ThenBy(outing => outing.Id))
        {
            if (outing.Pieces.Count == 0)
                yield return OutingRow(outing, labels[outing.Id], new() { [CsvColumn.Piece] = 0 });
            foreach (Piece piece in outing.Pieces)
                yield return OutingRow(outing, labels[outing.Id], PieceCells(piece));
        }

        foreach (Paddler paddler in log.Paddlers.Where(paddler => !_described.Contains(paddler.Id)))
            yield return Describe(new() { [CsvColumn.Piece] = 0 }, paddler, null, null);
        foreach (Hull hull in log.Hulls.Where(hull => !_described.Contains(hull.Id) && !StandardHulls.All.Contains(hull)))
            yield return Describe(new() { [CsvColumn.Piece] = 0 }, null, hull, null);
        foreach (Paddle paddle in log.Paddles.Where(paddle => !_described.Contains(paddle.Id)))
            yield return Describe(new() { [CsvColumn.Piece] = 0 }, null, null, paddle);
    }

    private Dictionary<CsvColumn, object?> OutingRow(Outing outing, string label, Dictionary<CsvColumn, object?> cells)
    {
        cells[CsvColumn.Date] = outing.Date;
        cells[CsvColumn.StartTime] = outing.Time;
        cells[CsvColumn.Outing] = label;
        cells[CsvColumn.Wind] = outing.Wind;
        cells[CsvColumn.Place] = outing.Place;
        cells[CsvColumn.Water] = outing.Water;
        cells[CsvColumn.OutingNotes] = outing.Notes;
        cells[CsvColumn.Blind] = outing.Blind ? true : null;
        return Describe(cells, _paddlers[outing.PaddlerId], _hulls[outing.HullId],
            cells.TryGetValue(CsvColumn.Paddle, out object? id) ? _paddles[(Guid)id!] : null);
    }

    private static Dictionary<CsvColumn, object?> PieceCells(Piece piece) => new()
    {
        [CsvColumn.Paddle] = piece.PaddleId,
        [CsvColumn.Piece] = piece.Order,
        [CsvColumn.LengthIn] = piece.Length,
        [CsvColumn.DistanceM] = piece.Distance,
        [CsvColumn.Time] = piece.Time,
        [CsvColumn.Effort] = piece.Effort,
        [CsvColumn.HeartRate] = piece.HeartRate,
        [CsvColumn.StrokeRate] = piece.StrokeRate,
        [CsvColumn.Course] = piece.Course,
        [CsvColumn.Soreness] = piece.Soreness,
        [CsvColumn.Notes] = piece.Notes,
        [CsvColumn.ExcludedBecause] = piece.ExcludedBecause,
        [CsvColumn.FadePct] = piece.FadePercent,
        [CsvColumn.Timed] = piece.TimedBy,
        [CsvColumn.SpeedErrorPct] = piece.SpeedErrorPercent,
        [CsvColumn.Origin] = piece.Origin,
    };

    private Dictionary<CsvColumn, object?> Describe(Dictionary<CsvColumn, object?> cells, Paddler? paddler, Hull? hull, Paddle? paddle)
    {
        cells[CsvColumn.Paddler] = paddler?.Name;
        cells[CsvColumn.Hull] = hull?.Name;
        cells[CsvColumn.Paddle] = paddle?.Name;
        if (paddler is not null && _described.Add(paddler.Id))
            State(CsvThings.Facts(paddler, id => _hulls.GetValueOrDefault(id)?.Name));
        if (hull is not null && _described.Add(hull.Id) && !StandardHulls.All.Contains(hull))
            State(CsvThings.Facts(hull));
        if (paddle is not null && _described.Add(paddle.Id))
            State(CsvThings.Facts(paddle, id => _paddlers.GetValueOrDefault(id)?.Name));
        return cells;

        void State(CsvFacts facts)
        {
            foreach (CsvColumn column in facts.Columns)
                cells[column] = facts[column];
        }
    }

    private static string?[] Cells(Dictionary<CsvColumn, object?> values)
    {
        string?[] cells = new string?[CsvColumns.All.Count];
        foreach ((CsvColumn column, object? value) in values)
            cells[(int)column] = value is null or "" ? null : Cell(value);
        return cells;
    }
}
