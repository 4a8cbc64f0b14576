using Dapper;
using Microsoft.Data.Sqlite;

namespace TrialLog.Logbook;

/// <summary>
/// The triggers that write the journal, made from the tables as they are after the last migration: so no column can be
/// forgotten, and no writer can forget to journal.
/// </summary>
internal static class JournalTriggers
{
    /// <summary>The tables that are journalled. Each has its row's id in <c>id</c>.</summary>
    public static readonly IReadOnlyList<string> Tables =
    [
        "hulls", "paddles", "paddlers", "outings", "pieces", "cards", "technique_checks", "notes", "imports",
        "soreness_clearances", "decisions",
    ];

    /// <summary>Makes the triggers of every table anew.</summary>
    public static void Make(SqliteConnection connection)
    {
        foreach (string table in Tables)
        {
            List<string> columns = [.. Columns(connection, table).Select(column => column.Name)];
            string before = string.Join(", ", columns.Select(column => $"'{column}', OLD.{column}"));
            string all(string row) => string.Join(", ", columns.Select(column => $"{row}.{column}"));
            connection.Execute($"""
                DROP TRIGGER IF EXISTS {table}_added;
                DROP TRIGGER IF EXISTS {table}_edited;
                DROP TRIGGER IF EXISTS {table}_removed;
                CREATE TRIGGER {table}_added AFTER INSERT ON {table}
                BEGIN
                    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), '{table}', NEW.id);
                END;
                CREATE TRIGGER {table}_edited AFTER UPDATE ON {table} WHEN ({all("OLD")}) IS NOT ({all("NEW")})
                BEGIN
                    INSERT INTO journal (change, kind, row_id, before)
                    VALUES ((SELECT max(number) FROM changes), '{table}', OLD.id, json_object({before}));
                END;
                CREATE TRIGGER {table}_removed AFTER DELETE ON {table}
                BEGIN
                    INSERT INTO journal (change, kind, row_id, before)
                    VALUES ((SELECT max(number) FROM changes), '{table}', OLD.id, json_object({before}));
                END;
                """);
        }
    }

    /// <summary>The columns of a table, each with SQL that reads it from a row of the journal: one that the row lacks, since it was added later, has its default.</summary>
    public static IReadOnlyList<(string Name, string FromJournal)> Columns(SqliteConnection connection, string table) =>
        [.. connection.Query<(string Name, bool Required, string? Default)>(
            "SELECT name, \"notnull\", dflt_value FROM pragma_table_info(@table)", new { table })
            .Select(column => (column.Name, column is { Required: true, Default: not null }
                ? $"coalesce(json_extract({{0}}, '$.{column.Name}'), {column.Default})"
                : $"json_extract({{0}}, '$.{column.Name}')"))];
}
