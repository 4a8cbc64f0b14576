using System.Diagnostics.CodeAnalysis;

namespace TrialLog.Recordings.Csv;

/// <summary>Reads a cell's text as a value; the problem is one sentence.</summary>
internal delegate bool CellParser<T>(string? text, out T value, [NotNullWhen(false)] out string? problem);

/// <summary>The cells of the row at hand, and what is found wrong with them.</summary>
internal sealed class CsvCells(CsvHeader header)
{
    private IReadOnlyList<string> _cells = [];
    private readonly List<CsvProblem> _problems = [];

    /// <summary>Line on which the row begins.</summary>
    public int Line { get; private set; }

    /// <summary>What is wrong with the row so far.</summary>
    public IReadOnlyList<CsvProblem> Problems => _problems;

    /// <summary>Turns to the next row.</summary>
    public void Take(int line, IReadOnlyList<string> cells)
    {
        Line = line;
        _cells = cells;
        _problems.Clear();
    }

    /// <summary>How many cells the row has.</summary>
    public int Count => _cells.Count;

    /// <summary>The cells.</summary>
    public IReadOnlyList<string> All => _cells;

    /// <summary>The cell's text with the formula guard undone; null where it is blank or absent.</summary>
    public string? Text(CsvColumn column) => At(header.CellOf(column));

    /// <summary>As <see cref="Text(CsvColumn)"/>, by position.</summary>
    public string? At(int cell) =>
        cell < 0 || cell >= _cells.Count || string.IsNullOrWhiteSpace(_cells[cell]) ? null : FormulaGuard.Undo(_cells[cell]);

    /// <summary>The cell's value; null where it is blank, or wrong (and then a problem is noted).</summary>
    public T? Value<T>(CsvColumn column, CellParser<T> parse) where T : struct
    {
        if (Text(column) is not { } text)
            return null;
        if (parse(text, out T value, out string? problem))
            return value;
        Refuse(column, problem);
        return null;
    }

    /// <summary>Notes a problem in a column, or (null) in the row as a whole.</summary>
    public void Refuse(CsvColumn? column, string problem) => _problems.Add(new(Line, column?.Name(), problem));
}
