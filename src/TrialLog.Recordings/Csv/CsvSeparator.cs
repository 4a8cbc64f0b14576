using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Tells from the header what separates the cells: a comma, a semicolon or a tab.</summary>
internal static class CsvSeparator
{
    /// <summary>Whether a row is no header but a spreadsheet's own line that names the separator: <c>sep=;</c>.</summary>
    public static bool IsNamedBy(IReadOnlyList<string> cells) =>
        cells[0].StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && cells[0].Length <= 5;

    /// <summary>The separator that yields the most known columns; a comma where none yields any.</summary>
    /// <param name="beginning">The beginning of the file's text.</param>
    public static char Of(string beginning)
    {
        List<string> lines = [.. beginning.Split('\n', '\r').Where(line => !string.IsNullOrWhiteSpace(line)).Take(2)];
        string header = lines.Count == 2 && IsNamedBy(lines) ? lines[1] : lines.Count > 0 ? lines[0] : "";
        return new[] { ',', ';', '\t' }.MaxBy(separator =>
            header.Split(separator).Count(name => CsvColumns.Find(name.Trim().Trim('"')) is not null));
    }
}
