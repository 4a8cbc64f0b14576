using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook;

/// <summary>
/// The triggers that write the journal and note edits, made from the tables as they are after the last migration: so no
/// column can be forgotten, and no writer can forget to journal.
/// </summary>
internal static class JournalTriggers
{
    /// <summary>The tables that are journalled. Each has its row's id in <c>id</c>.</summary>
    public static readonly IReadOnlyList<string> Tables =
    [
        "hulls", "paddles", "paddlers", "outings", "pieces", "cards", "technique_checks", "notes", "imports",
        "soreness_clearances", "decisions", "joins",
    ];

    /// <summary>Makes the triggers of every table anew.</summary>
    public static void Make(SqliteConnection connection)
    {
        foreach (string table in Tables)
        {
            List<string> columns = [.. Columns(connection, table).Select(column => column.Name)];
            string before = string.Join(", ", columns.Select(column => $"'{column}', OLD.{column}"));
            string all(string row) => string.Join(", ", columns.Select(column => $"{row}.{column}"));
            (string onReturn, string onEdited, string onRemoved) = EditNotes(table);
            connection.Execute($"""
                DROP TRIGGER IF EXISTS {table}_added;
                DROP TRIGGER IF EXISTS {table}_returned;
                DROP TRIGGER IF EXISTS {table}_edited;
                DROP TRIGGER IF EXISTS {table}_removed;
                CREATE TRIGGER {table}_added AFTER INSERT ON {table}
                BEGIN
                    INSERT INTO journal (change, kind, row_id) VALUES ((SELECT max(number) FROM changes), '{table}', NEW.id);
                END;
                {onReturn}
                CREATE TRIGGER {table}_edited AFTER UPDATE ON {table} WHEN ({all("OLD")}) IS NOT ({all("NEW")})
                BEGIN
                    INSERT INTO journal (change, kind, row_id, before)
                    VALUES ((SELECT max(number) FROM changes), '{table}', OLD.id, json_object({before}));
                    {onEdited}
                END;
                CREATE TRIGGER {table}_removed AFTER DELETE ON {table}
                BEGIN
                    INSERT INTO journal (change, kind, row_id, before)
                    VALUES ((SELECT max(number) FROM changes), '{table}', OLD.id, json_object({before}));
                    {onRemoved}
                END;
                """);
        }
    }

    // A change that brings in others' edits makes none of its own. A record that comes back builds upon its removal, and
    // what it holds otherwise than before it was removed is edited.
    private static (string OnReturn, string OnEdited, string OnRemoved) EditNotes(string table)
    {
        if (!RecordFields.ByTable.TryGetValue(table, out IReadOnlyList<(string Column, string Field)>? fields))
            return ("", "", "");
        string differing = string.Join(", ", fields.GroupBy(field => field.Field).Select(group =>
            $"('{group.Key}', {string.Join(" OR ", group.Select(field => $"OLD.{field.Column} IS NOT NEW.{field.Column}"))})"));
        const string Last = "(SELECT before FROM journal WHERE row_id = NEW.id AND before IS NOT NULL ORDER BY number DESC LIMIT 1)";
        string returned = string.Join(", ", fields.GroupBy(field => field.Field).Select(group =>
            $"('{group.Key}', " +
                $"{string.Join(" OR ", group.Select(field => $"json_extract({Last}, '$.{field.Column}') IS NOT NEW.{field.Column}"))})"));
        string onReturn = $"""
            CREATE TRIGGER {table}_returned AFTER INSERT ON {table} WHEN EXISTS (SELECT 1 FROM edits WHERE row_id = NEW.id)
            BEGIN
                {Note("NEW.id", $"('{RecordFields.Presence}', 1), {returned}")}
            END;
            """;
        return (onReturn, Note("OLD.id", differing), Note("OLD.id", $"('{RecordFields.Presence}', 1)"));

        static string Note(string id, string edited) => $"""
            INSERT INTO edits (row_id, field, edit, change)
            SELECT {id}, edited.column1, now.edit, now.number
            FROM (SELECT number, edit, merged FROM changes ORDER BY number DESC LIMIT 1) now, (VALUES {edited}) edited
            WHERE edited.column2 AND NOT now.merged
              AND NOT EXISTS (SELECT 1 FROM edits known
                WHERE known.row_id = {id} AND known.field = edited.column1 AND known.edit = now.edit);
            """;
    }

    /// <summary>
    /// The columns of a table, each with SQL that reads it from a row of the journal: one that the row lacks, since it was added later, has
    /// its default.
    /// </summary>
    public static IReadOnlyList<(string Name, string FromJournal)> Columns(SqliteConnection connection, string table) =>
        [.. connection.Query<ColumnRow>(
            "SELECT name, \"notnull\" AS required, dflt_value AS initially FROM pragma_table_info(@table)", new { table })
            .Select(column => (column.Name, column is { Required: true, Initially: not null }
                ? $"coalesce(json_extract({{0}}, '$.{column.Name}'), {column.Initially})"
                : $"json_extract({{0}}, '$.{column.Name}')"))];
}
