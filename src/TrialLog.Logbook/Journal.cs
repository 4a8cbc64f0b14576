using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook;

/// <summary>
/// The journal of changes. A change's rows hold what each touched row was before; played backwards, newest first, they
/// take the change back. Undo is itself a change, so numbers only rise and every earlier state can be worked out.
/// </summary>
internal static class Journal
{
    internal sealed class Entry
    {
        public string Kind { get; init; } = "";
        public string RowId { get; init; } = "";
        public string? Before { get; init; }
    }

    internal sealed class ChangeRow
    {
        public long Number { get; init; }
        public string At { get; init; } = "";
        public string What { get; init; } = "";
        public string State { get; init; } = "";
        public long Edit { get; init; }
        public bool Merged { get; init; }

        public ChangeSummary ToSummary() => new(Number, Stored.ToMoment(At), What, State != "standing");
    }

    public static long LastChange(SqliteConnection connection) =>
        connection.ExecuteScalar<long>("SELECT max(number) FROM changes");

    public static IReadOnlyList<ChangeSummary> Changes(SqliteConnection connection, int most) =>
        [.. connection.Query<ChangeRow>("""
            SELECT number, at, what, state FROM changes WHERE reverses IS NULL AND state <> 'noted' AND number > 0
            ORDER BY number DESC LIMIT @most
            """, new { most }).Select(row => row.ToSummary())];

    /// <summary>
    /// Begins a change: what the triggers write from now on belongs to it. Earlier undone changes can no longer be redone.
    /// </summary>
    public static long Begin(SqliteConnection connection, string what) => Begin(connection, what, merged: false);

    /// <summary>Begins a change that brings in what other logbooks hold: what it writes is no edit of this one.</summary>
    public static long BeginMerge(SqliteConnection connection, string what) => Begin(connection, what, merged: true);

    private static long Begin(SqliteConnection connection, string what, bool merged)
    {
        connection.Execute("UPDATE changes SET state = 'gone' WHERE state = 'taken back'");
        return Record(connection, what, reverses: null, merged: merged);
    }

    /// <summary>Begins a note of the program's own: numbered and played backwards like any change, but undo passes over it.</summary>
    public static long BeginNote(SqliteConnection connection, string what) => Record(connection, what, reverses: null, state: "noted");

    /// <summary>As <see cref="BeginNote"/>, for what a merge learnt that alters no record.</summary>
    public static long BeginLearning(SqliteConnection connection, string what) =>
        Record(connection, what, reverses: null, state: "noted", merged: true);

    /// <summary>Whether a change did anything.</summary>
    public static bool Touched(SqliteConnection connection, long change) => connection.ExecuteScalar<bool>("""
        SELECT EXISTS (SELECT 1 FROM journal WHERE change = @change)
            OR (SELECT merged FROM changes WHERE number = @change) AND EXISTS (SELECT 1 FROM edits WHERE change = @change)
        """, new { change });

    /// <summary>Takes back the newest change in force.</summary>
    public static ChangeSummary? Undo(SqliteConnection connection)
    {
        ChangeRow? newest = connection.QueryFirstOrDefault<ChangeRow>("""
            SELECT number, at, what, state, merged FROM changes WHERE state = 'standing' AND reverses IS NULL AND number > 0
            ORDER BY number DESC LIMIT 1
            """);
        if (newest is null)
            return null;
        Record(connection, $"Took back: {newest.What}", newest.Number, merged: newest.Merged);
        PlayBackwards(connection, newest.Number);
        connection.Execute("UPDATE changes SET state = 'taken back' WHERE number = @Number", new { newest.Number });
        return newest.ToSummary() with { TakenBack = true };
    }

    /// <summary>Does again what the newest undo took back, unless something else was done since.</summary>
    public static ChangeSummary? Redo(SqliteConnection connection)
    {
        ChangeRow? next = connection.QueryFirstOrDefault<ChangeRow>("""
            SELECT number, at, what, state, merged FROM changes WHERE state = 'taken back' ORDER BY number LIMIT 1
            """);
        if (next is null)
            return null;
        long undo = connection.ExecuteScalar<long>("SELECT max(number) FROM changes WHERE reverses = @Number", new { next.Number });
        Record(connection, $"Did again: {next.What}", undo, merged: next.Merged);
        PlayBackwards(connection, undo);
        connection.Execute("UPDATE changes SET state = 'standing' WHERE number = @Number", new { next.Number });
        return next.ToSummary() with { TakenBack = false };
    }

    /// <summary>Puts a copy of the logbook back to how it was right after a change. The copy's journal is no use afterwards.</summary>
    public static void GoBackTo(SqliteConnection copy, long change)
    {
        foreach (string trigger in copy.Query<string>("SELECT name FROM sqlite_schema WHERE type = 'trigger'").AsList())
            copy.Execute($"DROP TRIGGER \"{trigger}\"");
        using var transaction = Transaction.ToWrite(copy);
        PlayBackwards(copy, change + 1, long.MaxValue);
        copy.Execute("DELETE FROM changes WHERE number > @change; DELETE FROM journal WHERE change > @change", new { change });
        transaction.Commit();
    }

    private static long Record(SqliteConnection connection, string what, long? reverses, string state = "standing", bool merged = false) =>
        connection.ExecuteScalar<long>("""
            INSERT INTO changes (at, what, state, reverses, edit, merged) VALUES (@at, @what, @state, @reverses, random(), @merged)
            RETURNING number
            """, new { at = Stored.Moment(DateTimeOffset.UtcNow), what, state, reverses, merged });

    private static void PlayBackwards(SqliteConnection connection, long change) => PlayBackwards(connection, change, change);

    private static void PlayBackwards(SqliteConnection connection, long first, long last)
    {
        // Read whole before the first is played: playing writes journal rows of its own.
        List<Entry> entries = connection.Query<Entry>("""
            SELECT kind, row_id, before FROM journal WHERE change BETWEEN @first AND @last ORDER BY number DESC
            """, new { first, last }).AsList();
        connection.Execute("PRAGMA defer_foreign_keys = ON");
        var restores = new Dictionary<string, string>();
        using var statements = new Statements(connection);
        foreach (Entry entry in entries)
        {
            // Table names cannot be parameters; a logbook from elsewhere may hold anything.
            if (!JournalTriggers.Tables.Contains(entry.Kind))
                throw StoreTrouble.Damaged(connection.DataSource);
            if (entry.Before is null)
            {
                statements.Run($"DELETE FROM {entry.Kind} WHERE id = @id", entry.RowId);
                continue;
            }
            if (!restores.TryGetValue(entry.Kind, out string? restore))
                restores.Add(entry.Kind, restore = Restore(connection, entry.Kind));
            statements.Run(restore, entry.Before);
        }
    }

    /// <summary>SQL that puts a row of a table back from its JSON, whether or not the row is there.</summary>
    private static string Restore(SqliteConnection connection, string table)
    {
        var columns = JournalTriggers.Columns(connection, table);
        var before = columns.Select(column => string.Format(CultureInfo.InvariantCulture, column.FromJournal, "@before"));
        return $"""
            INSERT INTO {table} ({string.Join(", ", columns.Select(column => column.Name))})
            VALUES ({string.Join(", ", before)})
            ON CONFLICT (id) DO UPDATE SET {string.Join(", ", columns.Select(column => $"{column.Name} = excluded.{column.Name}"))}
            """;
    }
}
