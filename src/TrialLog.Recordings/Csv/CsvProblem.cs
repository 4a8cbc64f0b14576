namespace TrialLog.Recordings.Csv;

/// <summary>What is wrong with a row, where, and what to do.</summary>
/// <param name="Line">Line of the file on which the row begins, from 1; the header is line 1.</param>
/// <param name="Column">Name of the column, or null where the row as a whole is wrong.</param>
/// <param name="Reason">One sentence: what is wrong and what would be right.</param>
public sealed record CsvProblem(int Line, string? Column, string Reason)
{
    /// <summary><c>line 12, time: “5:62” has 60 or more minutes or seconds after a colon.</c></summary>
    public override string ToString() => Column is null ? $"line {Line}: {Reason}" : $"line {Line}, {Column}: {Reason}";
}
