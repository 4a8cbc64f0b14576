using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook;

/// <summary>
/// Statements that are run thousands of times within one change: each is compiled once and kept until the change ends.
/// </summary>
internal sealed partial class Statements(SqliteConnection connection) : IDisposable
{
    private readonly Dictionary<string, SqliteCommand> _compiled = [];

    [GeneratedRegex("@[a-z_]+")]
    private static partial Regex Parameter();

    /// <summary>Runs the SQL with a value for each of its parameters, in the order in which the SQL first names them.</summary>
    /// <returns>The number of rows touched.</returns>
    public int Run(string sql, params ReadOnlySpan<object?> values)
    {
        if (!_compiled.TryGetValue(sql, out SqliteCommand? command))
        {
            command = connection.CreateCommand();
            command.CommandText = sql;
            foreach (string name in Parameter().Matches(sql).Select(match => match.Value).Distinct())
                command.Parameters.Add(new SqliteParameter { ParameterName = name });
            _compiled.Add(sql, command);
        }

        if (values.Length != command.Parameters.Count)
            throw new ArgumentException($"{values.Length} values for {command.Parameters.Count} parameters.", nameof(values));
        for (int i = 0; i < values.Length; i++)
            command.Parameters[i].Value = values[i] ?? DBNull.Value;
        return command.ExecuteNonQuery();
    }

    /// <summary>Adds a row or, where its id is there, replaces it.</summary>
    /// <param name="table">The table; its row's id is in <c>id</c>, which comes first.</param>
    /// <param name="row">Each column with its value, always the same ones for a table.</param>
    public void Put(string table, params ReadOnlySpan<(string Column, object? Value)> row)
    {
        if (!_compiled.TryGetValue(table, out SqliteCommand? command))
        {
            var columns = new List<string>();
            command = connection.CreateCommand();
            foreach ((string column, _) in row)
            {
                columns.Add(column);
                command.Parameters.Add(new SqliteParameter { ParameterName = "@" + column });
            }
            command.CommandText = $"""
                INSERT INTO {table} ({string.Join(", ", columns)}) VALUES (@{string.Join(", @", columns)})
                ON CONFLICT (id) DO UPDATE SET {string.Join(", ", columns.Select(column => $"{column} = excluded.{column}"))}
                """;
            _compiled.Add(table, command);
        }

        for (int i = 0; i < row.Length; i++)
            command.Parameters[i].Value = row[i].Value ?? DBNull.Value;
        command.ExecuteNonQuery();
    }

    public void Dispose()
    {
        foreach (SqliteCommand command in _compiled.Values)
            command.Dispose();
        _compiled.Clear();
    }
}
