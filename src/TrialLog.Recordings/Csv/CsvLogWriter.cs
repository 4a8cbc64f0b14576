using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Writes a log as rows. What describes a paddler, hull or paddle itself stands on the first row that names it.</summary>
internal sealed class CsvLogWriter(KnownLog log)
{
    // The columns of the format are always there; the further ones only where they say something.
    private static readonly CsvColumn[] Always = [.. CsvColumns.All.Where(column => column <= CsvColumn.Notes
        && column is not (CsvColumn.StartTime or CsvColumn.LengthCm or CsvColumn.DistanceKm or CsvColumn.TimeS))];

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

    /// <summary>Writes everything, in two passes over the outings: one for the columns that are needed, one to write.</summary>
    /// <param name="to">Where to; not closed.</param>
    /// <param name="byDay">The outings, those of a day together, days in their order. Passed over twice, one day of it held at a
    /// time.</param>
    public void Write(TextWriter to, IEnumerable<Outing> byDay)
    {
        bool[] filled = new bool[CsvColumns.All.Count];
        foreach (CsvColumn column in Always)
            filled[(int)column] = true;
        foreach (object?[] row in Rows(byDay))
        {
            for (int i = 0; i < row.Length; i++)
                filled[i] |= row[i] is not (null or "");
        }

        CsvColumn[] columns = [.. CsvColumns.All.Where(column => filled[(int)column])];
        using var csv = new CsvWriter(to, CsvQuoting.RowsEndingWith("\n"), leaveOpen: true);
        foreach (CsvColumn column in columns)
            csv.WriteField(column.Name());
        csv.NextRecord();
        foreach (object?[] row in Rows(byDay))
        {
            foreach (CsvColumn column in columns)
                csv.WriteField(row[(int)column] is null or "" ? null : Cell(row[(int)column]!));
            csv.NextRecord();
        }
    }

    private IEnumerable<object?[]> Rows(IEnumerable<Outing> byDay)
    {
        _described.Clear();
        foreach (List<Outing> day in Days(byDay))
        {
            IReadOnlyDictionary<Guid, string> labels = OutingLabels.Of(day);
            foreach (Outing outing in day.OrderBy(outing => outing.Time)
                .ThenBy(outing => labels[outing.Id], StringComparer.Ordinal).ThenBy(outing => outing.Id))
            {
                if (outing.Pieces.Count == 0)
                    yield return OutingRow(outing, labels[outing.Id], null);
                foreach (Piece piece in outing.Pieces)
                    yield return OutingRow(outing, labels[outing.Id], piece);
            }
        }

        foreach (Paddler paddler in log.Paddlers.Where(paddler => !_described.Contains(paddler.Id)))
            yield return Describe(Empty(), paddler, null, null);
        foreach (Hull hull in log.Hulls.Where(hull => !_described.Contains(hull.Id) && !StandardHulls.All.Contains(hull)))
            yield return Describe(Empty(), null, hull, null);
        foreach (Paddle paddle in log.Paddles.Where(paddle => !_described.Contains(paddle.Id)))
            yield return Describe(Empty(), null, null, paddle);
    }

    private static IEnumerable<List<Outing>> Days(IEnumerable<Outing> byDay)
    {
        List<Outing> day = [];
        foreach (Outing outing in byDay)
        {
            if (day.Count > 0 && outing.Date != day[0].Date)
            {
                yield return day;
                day = [];
            }

            day.Add(outing);
        }

        yield return day;
    }

    private object?[] OutingRow(Outing outing, string label, Piece? piece)
    {
        object?[] cells = Empty();
        Set(CsvColumn.Date, outing.Date);
        Set(CsvColumn.StartTime, outing.Time);
        Set(CsvColumn.Outing, label);
        Set(CsvColumn.Wind, outing.Wind);
        Set(CsvColumn.Place, outing.Place);
        Set(CsvColumn.Water, outing.Water);
        Set(CsvColumn.OutingNotes, outing.Notes);
        Set(CsvColumn.Blind, outing.Blind ? true : null);
        if (piece is not null)
        {
            Set(CsvColumn.Piece, piece.Order);
            Set(CsvColumn.LengthIn, piece.Length);
            Set(CsvColumn.DistanceM, piece.Distance);
            Set(CsvColumn.Time, piece.Time);
            Set(CsvColumn.Effort, piece.Effort);
            Set(CsvColumn.HeartRate, piece.HeartRate);
            Set(CsvColumn.StrokeRate, piece.StrokeRate);
            Set(CsvColumn.Course, piece.Course);
            Set(CsvColumn.Soreness, piece.Soreness);
            Set(CsvColumn.Notes, piece.Notes);
            Set(CsvColumn.ExcludedBecause, piece.ExcludedBecause);
            Set(CsvColumn.FadePct, piece.FadePercent);
            Set(CsvColumn.Timed, piece.TimedBy);
            Set(CsvColumn.SpeedErrorPct, piece.SpeedErrorPercent);
            Set(CsvColumn.Origin, piece.Origin);
        }

        return Describe(cells, _paddlers[outing.PaddlerId], _hulls[outing.HullId], piece is null ? null : _paddles[piece.PaddleId]);

        void Set(CsvColumn column, object? value) => cells[(int)column] = value;
    }

    // A row without a piece says so.
    private static object?[] Empty()
    {
        object?[] cells = new object?[CsvColumns.All.Count];
        cells[(int)CsvColumn.Piece] = 0;
        return cells;
    }

    private object?[] Describe(object?[] cells, Paddler? paddler, Hull? hull, Paddle? paddle)
    {
        cells[(int)CsvColumn.Paddler] = paddler?.Name;
        cells[(int)CsvColumn.Hull] = hull?.Name;
        cells[(int)CsvColumn.Paddle] = paddle?.Name;
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
                cells[(int)column] = facts[column];
        }
    }
}
