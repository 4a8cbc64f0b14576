using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace TrialLog.Logbook;

/// <summary>
/// The records of a table that is asked for again and again, as the connection last read them: read anew once this connection or another
/// has written anything.
/// </summary>
internal sealed class Remembered<T>(Func<SqliteConnection, IReadOnlyList<T>> read)
{
    private (long Others, int Own) _asOf;
    private IReadOnlyList<T>? _records;

    public IReadOnlyList<T> Of(SqliteConnection connection)
    {
        // Both only rise while the connection is open: https://sqlite.org/pragma.html#pragma_data_version
        (long, int) now = (connection.ExecuteScalar<long>("PRAGMA data_version"), raw.sqlite3_total_changes(connection.Handle));
        if (_records is not { } records || _asOf != now)
            (_asOf, _records) = (now, records = read(connection));
        return records;
    }
}
