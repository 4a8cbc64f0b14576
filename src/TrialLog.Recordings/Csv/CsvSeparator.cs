namespace TrialLog.Recordings.Csv;

/// <summary>Tells from the header what separates the cells: a comma, a semicolon or a tab.</summary>
internal static class CsvSeparator
{
    /// <summary>The separator that yields the most known columns; a comma where none yields any.</summary>
    /// <param name="beginning">The beginning of the file's text.</param>
    public static char Of(string beginning)
    {
        string header = beginning.Split('\n', '\r').FirstOrDefault(line => !string.IsNullOrWhiteSpace(line)) ?? "";
        return new[] { ',', ';', '\t' }.MaxBy(separator =>
            header.Split(separator).Count(name => CsvColumns.Find(name.Trim().Trim('"')) is not null));
    }
}
