using System.Globalization;
using CsvHelper.Configuration;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>How whatever is written as CSV is quoted.</summary>
public static class CsvQuoting
{
    /// <summary>
    /// A cell is quoted where it holds a quote, a comma or a line break of any kind, not only of the kind that ends rows: other programs
    /// end a row at each, and what follows would begin a row of its own, as a formula perhaps.
    /// </summary>
    /// <param name="newLine">What ends a row.</param>
    public static CsvConfiguration RowsEndingWith(string newLine) => new(CultureInfo.InvariantCulture)
    {
        NewLine = newLine,
        ShouldQuote = args => args.Field is { Length: > 0 } field
            && (field.AsSpan().IndexOfAny("\",\r\n") >= 0 || char.IsWhiteSpace(field[0]) || char.IsWhiteSpace(field[^1])),
    };
}
