using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>The rows of a file as cells, with the lines on which they stand.</summary>
internal sealed class CsvLines : IDisposable
{
    private readonly CsvParser _parser;
    private readonly int _longestCell;
    private readonly List<string> _cells = [];

    public CsvLines(TextReader text, char separator, int longestCell)
    {
        _longestCell = longestCell;
        _parser = new CsvParser(text, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = separator.ToString(),
            HasHeaderRecord = false,
            TrimOptions = TrimOptions.Trim,
            IgnoreBlankLines = false, // else lines could not be counted
            BadDataFound = _ => IsBadlyQuoted = true,
            MaxFieldSize = longestCell,
        }, leaveOpen: true);
    }

    /// <summary>The line on which the row begins, from 1.</summary>
    public int Line { get; private set; }

    /// <summary>The line on which it ends.</summary>
    public int LastLine => _parser.RawRow;

    /// <summary>Whether quotation marks are out of place in the row.</summary>
    public bool IsBadlyQuoted { get; private set; }

    /// <summary>The cells of the row.</summary>
    public IReadOnlyList<string> Cells => _cells;

    /// <summary>Moves to the next row that has anything in it.</summary>
    /// <exception cref="InvalidValueException">A cell is so long that it cannot be meant.</exception>
    public bool ReadNonBlank()
    {
        do
        {
            Line = _parser.RawRow + 1;
            IsBadlyQuoted = false;
            try
            {
                if (!_parser.Read())
                    return false;
            }
            catch (MaxFieldSizeException)
            {
                throw new InvalidValueException(
                    $"Line {Line}: a cell is longer than {_longestCell:N0} characters; perhaps a quotation mark is not closed. Mend it.");
            }

            _cells.Clear();
            for (int i = 0; i < _parser.Count; i++)
                _cells.Add(_parser[i]);
        }
        while (_cells.All(string.IsNullOrWhiteSpace));
        return true;
    }

    public void Dispose() => _parser.Dispose();
}
