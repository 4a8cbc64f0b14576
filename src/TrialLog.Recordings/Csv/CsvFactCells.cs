using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>The cells that describe a paddler, a hull or a paddle: how each is read and written.</summary>
internal static class CsvFactCells
{
    private static readonly Dictionary<CsvColumn, Func<CsvCells, CsvColumn, object?>> Readers = new(
        CsvColumns.OfBody.Select(body => KeyValuePair.Create(body.Column, Cell<Length>(CellParsers.Inches))))
    {
        [CsvColumn.HullCrew] = Cell(CellParsers.Whole(1, 24, "a crew")),
        [CsvColumn.SeatHeightIn] = Cell<Length>(CellParsers.Inches),
        [CsvColumn.BladeLengthIn] = Cell<Length>(CellParsers.Inches),
        [CsvColumn.BladeAreaIn2] = Cell(CellParsers.Number(20, 250, "a blade area from 20 to 250 square inches")),
        [CsvColumn.Steering] = Cell<bool>(CellParsers.YesNo),
        [CsvColumn.PaddleShortestIn] = Cell<Length>(CellParsers.Inches),
        [CsvColumn.PaddleLongestIn] = Cell<Length>(CellParsers.Inches),
        [CsvColumn.PaddleStepIn] = Cell<Length>(CellParsers.Inches),
        [CsvColumn.Owner] = (cells, column) => NameIn(cells, column, "paddler"),
        [CsvColumn.PaddlerUnit] = Cell<LengthUnit>(CellParsers.Unit),
        [CsvColumn.SwapsOnWater] = Cell<bool>(CellParsers.YesNo),
        [CsvColumn.WorthwhilePct] = Cell(CellParsers.Number(1e-9, 5, "a worthwhile change above 0 and up to 5 %")),
        [CsvColumn.KnownLengthIn] = Cell<Length>(CellParsers.Inches),
        [CsvColumn.GoalHull] = (cells, column) => NameIn(cells, column, "hull"),
        [CsvColumn.GoalDistanceM] = Cell<Distance>(Distance.TryParse),
        [CsvColumn.GoalTime] = Cell<PieceTime>(PieceTime.TryParse),
        [CsvColumn.TrialPieces] = Cell(CellParsers.Whole(4, 16, "a number of pieces")),
        [CsvColumn.TrialDistanceM] = Cell<Distance>(Distance.TryParse),
        [CsvColumn.TrialMinutes] = Cell(CellParsers.Whole(15, 300, "a time in minutes")),
        [CsvColumn.TrialTimed] = Cell<TimedBy>(CellParsers.Timed),
        [CsvColumn.TrialPricePct] = Cell(CellParsers.Number(0.0005, 1, "what an outing is worth, from 0.0005 to 1 % of speed")),
    };

    /// <summary>The columns of that kind that a file has.</summary>
    public static IReadOnlyList<CsvColumn> In(CsvHeader header) => [.. Readers.Keys.Where(header.Has)];

    /// <summary>What a row states in those columns.</summary>
    public static CsvFacts Read(CsvCells cells, IReadOnlyList<CsvColumn> columns)
    {
        Dictionary<CsvColumn, object>? values = null;
        foreach (CsvColumn column in columns)
        {
            if (Readers[column](cells, column) is { } value)
                (values ??= [])[column] = value;
        }

        return values is null ? CsvFacts.None : new CsvFacts(values);
    }

    /// <summary>A name in a cell; null where it is blank, or wrong (and then a problem is noted).</summary>
    public static string? NameIn(CsvCells cells, CsvColumn column, string kind)
    {
        if (cells.Text(column) is not { } text)
            return null;
        if (NameRule.TryCheck(text, kind, out string? name, out string? problem))
            return name;
        cells.Refuse(column, problem);
        return null;
    }

    private static Func<CsvCells, CsvColumn, object?> Cell<T>(CellParser<T> parse) where T : struct =>
        (cells, column) => cells.Value(column, parse);
}
