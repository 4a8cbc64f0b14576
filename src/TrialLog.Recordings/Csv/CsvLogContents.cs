namespace TrialLog.Recordings.Csv;

/// <summary>What a file holds, before it is laid beside a logbook.</summary>
public sealed record CsvLogContents
{
    /// <summary>
    /// The largest file read, in bytes (100 MB), and the most rows (250,000): a squad of forty for ten years, with three outings of four
    /// pieces a week.
    /// </summary>
    public const long MostBytes = 100_000_000;

    /// <inheritdoc cref="MostBytes"/>
    public const int MostRows = 250_000;

    /// <summary>The most problems and warnings that are listed; beyond, they are only counted.</summary>
    public const int MostListed = 200;

    /// <summary>The rows that can be read, in the order of the file.</summary>
    public required IReadOnlyList<CsvRow> Rows { get; init; }

    /// <summary>What is wrong with the other rows, by line; a row may have several. The first <see cref="MostListed"/> of them.</summary>
    public required IReadOnlyList<CsvProblem> Problems { get; init; }

    /// <summary>How many rows are refused.</summary>
    public required int RefusedRows { get; init; }

    /// <summary>What was done that the user may not expect, in sentences.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>SHA-256 of the file's bytes, in hexadecimal.</summary>
    public required string FileHash { get; init; }
}
