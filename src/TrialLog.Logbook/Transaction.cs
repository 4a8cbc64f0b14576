using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace TrialLog.Logbook;

/// <summary>
/// A transaction of a connection as SQLite itself has it: every command of the connection takes part. The library's own object for it has
/// to be named by each command, which the generated readers do not. What is not committed is taken back at the end.
/// </summary>
internal sealed class Transaction : IDisposable
{
    private readonly SqliteConnection _connection;

    private Transaction(SqliteConnection connection, string begin)
    {
        _connection = connection;
        Run(begin);
    }

    /// <summary>For reading: nothing that others write is seen from its first question on.</summary>
    public static Transaction ToRead(SqliteConnection connection) => new(connection, "BEGIN");

    /// <summary>For writing; waits for its turn as long as the connection has patience.</summary>
    public static Transaction ToWrite(SqliteConnection connection) => new(connection, "BEGIN IMMEDIATE");

    public void Commit() => Run("COMMIT");

    public void Dispose()
    {
        // SQLite ends a transaction by itself where a disk is full or fails.
        if (_connection.Handle is { IsInvalid: false, IsClosed: false } handle && raw.sqlite3_get_autocommit(handle) == 0)
            Run("ROLLBACK");
    }

    private void Run(string sql)
    {
        using SqliteCommand command = _connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
