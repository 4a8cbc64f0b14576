using TrialLog.Domain.Log;

namespace TrialLog.Recordings.Csv;

/// <summary>Which outings of a logbook the rows of a file may speak of; of the others nothing needs to be known.</summary>
public sealed class CsvReach
{
    private readonly HashSet<DateOnly> _days = [];
    private readonly HashSet<UInt128> _prints = [];
    private readonly HashSet<string> _origins = [];

    /// <summary>What a file reaches.</summary>
    public static CsvReach Of(CsvLogContents contents)
    {
        var reach = new CsvReach();
        foreach (CsvRow row in contents.Rows)
        {
            if (row.Date is { } day)
                reach._days.Add(day);
            if (row.Piece is null)
                continue;
            reach._prints.Add(row.Print);
            if (row.Piece.Origin is { } origin)
                reach._origins.Add(origin);
        }

        return reach;
    }

    /// <summary>The days of its rows: what a row belongs to is looked for on its day.</summary>
    public IReadOnlySet<DateOnly> Days => _days;

    /// <summary>Whether one of its rows is, or names, the origin of a piece, whatever its outing's day is by now.</summary>
    public bool HasOrigin(string origin) =>
        _origins.Contains(origin) || (CsvFingerprint.From(origin) is { } print && _prints.Contains(print));
}
