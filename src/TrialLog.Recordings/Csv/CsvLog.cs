using System.Text;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>The log as a CSV file; docs/csv.md describes the format.</summary>
public static class CsvLog
{
    private const int BeginningBytes = 64 * 1024;
    private const int LongestCell = 100_000;

    /// <summary>Reads a file row by row, in one pass, holding no more of it than its rows as values.</summary>
    /// <param name="file">The file's bytes; read to the end, not closed.</param>
    /// <param name="options">What the import is told besides.</param>
    /// <param name="rowsRead">Is told every thousand rows how many were read.</param>
    /// <param name="stop">Stops the reading.</param>
    /// <exception cref="InvalidValueException">The file as a whole cannot be read: not text, no header, columns missing, too
    /// large.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static CsvLogContents Read(
        Stream file, CsvReadOptions options, IProgress<int>? rowsRead = null, CancellationToken stop = default)
    {
        using var bounded = new BoundedStream(file, CsvLogContents.MostBytes, BeginningBytes);
        (Encoding encoding, int mark) = CsvEncoding.Of(bounded.Beginning);
        string beginning = encoding.GetString(bounded.Beginning[mark..]);
        bounded.ReadExactly(new byte[mark]);
        using var text = new StreamReader(
            bounded, encoding, detectEncodingFromByteOrderMarks: false, bufferSize: 64 * 1024, leaveOpen: true);
        using var lines = new CsvLines(text, CsvSeparator.Of(beginning), LongestCell);

        if (!lines.ReadNonBlank() || (CsvSeparator.IsNamedBy(lines.Cells) && !lines.ReadNonBlank()))
            throw new InvalidValueException("The file has only blank lines; it needs a header row and a row for each piece.");
        if (lines.IsBadlyQuoted)
            throw new InvalidValueException($"Line {lines.Line}: the header's quotation marks do not match; mend them.");
        var header = new CsvHeader([.. lines.Cells]);
        var cells = new CsvCells(header);
        var reader = new CsvRowReader(header, cells, options.Today);

        List<CsvRow> rows = [];
        var problems = new CappedList<CsvProblem>(CsvLogContents.MostListed);
        int refused = 0;
        while (lines.ReadNonBlank())
        {
            stop.ThrowIfCancellationRequested();
            if (rows.Count + refused >= CsvLogContents.MostRows)
                throw new InvalidValueException(
                    $"The file has more than {CsvLogContents.MostRows:N0} rows; split it, by year for instance, and import the parts.");
            cells.Take(lines.Line, lines.Cells);
            if (lines.IsBadlyQuoted)
                cells.Refuse(null, lines.LastLine == lines.Line
                    ? "A quotation mark stands inside a cell; double it and put the cell in quotation marks."
                    : $"A quotation mark opens a cell that does not close properly, so lines {lines.Line} to {lines.LastLine} " +
                        $"ran together; mend it.");
            if (!lines.IsBadlyQuoted && reader.Read() is { } row)
            {
                rows.Add(row);
            }
            else
            {
                refused++;
                foreach (CsvProblem problem in cells.Problems)
                    problems.Add(problem);
            }

            if ((rows.Count + refused) % 1000 == 0)
                rowsRead?.Report(rows.Count + refused);
        }

        return new CsvLogContents
        {
            Rows = rows,
            Problems = problems.Kept,
            RefusedRows = refused,
            FileHash = bounded.Hash(),
            Warnings = header.Unknown.Count == 0 ? [] :
                [$"Unknown column{(header.Unknown.Count > 1 ? "s" : "")} " +
                    $"{string.Join(", ", header.Unknown.Select(unknown => unknown.Name))}: kept in the pieces' notes."],
        };
    }

    /// <summary>
    /// Writes a log so that reading it into a fresh logbook gives the same paddlers, hulls, paddles, outings and pieces,
    /// and reading it into the same logbook adds nothing. UTF-8 without a mark, commas, lines ended by a line feed.
    /// </summary>
    /// <param name="to">Where to; not closed.</param>
    /// <param name="log">What to write: a whole logbook, or a part that holds every paddler, hull and paddle its outings name.</param>
    public static void Write(Stream to, KnownLog log)
    {
        using var text = new StreamWriter(to, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
        Write(text, log, log.Outings.OrderBy(outing => outing.Date));
    }

    /// <summary>As <see cref="Write(Stream, KnownLog)"/>, holding no more than a day's outings.</summary>
    /// <param name="to">Where to; not closed.</param>
    /// <param name="things">The paddlers, hulls and paddles; its outings are not looked at.</param>
    /// <param name="byDay">The outings, days in their order; passed over twice.</param>
    public static void Write(TextWriter to, KnownLog things, IEnumerable<Outing> byDay) => new CsvLogWriter(things).Write(to, byDay);
}
