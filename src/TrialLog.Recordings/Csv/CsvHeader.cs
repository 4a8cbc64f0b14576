using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Which cell of a row is which column.</summary>
internal sealed class CsvHeader
{
    private readonly int[] _cellOf = new int[CsvColumns.All.Count];

    /// <summary>Reads the cells of the header row.</summary>
    /// <exception cref="InvalidValueException">A required column is missing, or one is there twice.</exception>
    public CsvHeader(IReadOnlyList<string> cells)
    {
        Array.Fill(_cellOf, -1);
        Count = cells.Count;
        List<(int, string)> unknown = [];
        for (int i = 0; i < cells.Count; i++)
        {
            if (CsvColumns.Find(cells[i]) is not { } column)
                unknown.Add((i, string.IsNullOrWhiteSpace(cells[i]) ? $"column {i + 1}" : Quoted.Brief(cells[i].Trim())));
            else if (_cellOf[(int)column] >= 0)
                throw new InvalidValueException($"The header has the column {column.Name()} twice; remove or rename one of them.");
            else
                _cellOf[(int)column] = i;
        }

        Unknown = unknown;
        List<string> missing = [
            .. CsvColumns.Required.Where(any => !any.Any(Has)).Select(any => string.Join(" or ", any.Select(CsvColumns.Name)))];
        if (missing.Count > 0)
        {
            string known = Unknown.Count == cells.Count
                ? $" None of its columns is known ({Quoted.Brief(string.Join(", ", cells), 80)})." : "";
            throw new InvalidValueException($"The file has no column {Listed(missing)}; the first row must name the columns.{known}");
        }
    }

    /// <summary>Cells of the header.</summary>
    public int Count { get; }

    /// <summary>Cells that are no column of ours, with their names.</summary>
    public IReadOnlyList<(int Cell, string Name)> Unknown { get; }

    /// <summary>Whether the file has that column.</summary>
    public bool Has(CsvColumn column) => _cellOf[(int)column] >= 0;

    /// <summary>Where in a row that column is, or -1.</summary>
    public int CellOf(CsvColumn column) => _cellOf[(int)column];

    private static string Listed(List<string> names) =>
        names.Count == 1 ? names[0] : string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1];
}
