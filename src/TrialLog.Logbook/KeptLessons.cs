using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook;

/// <summary>What a paddler's log, by itself, says to the start lengths of others, as it was last weighed.</summary>
/// <param name="PaddlerId">Whose log.</param>
/// <param name="OffsetInches">Best length less start length, inches; null where the log has not settled.</param>
/// <param name="Variance">Its variance, inches squared; null where the log has not settled.</param>
public sealed record KeptLesson(Guid PaddlerId, double? OffsetInches, double? Variance);

/// <summary>The lessons that are kept in the logbook, so that a card for one paddler needs nobody else's log read.</summary>
internal static class KeptLessons
{
    internal sealed class Row
    {
        public string PaddlerId { get; init; } = "";
        public double? OffsetInches { get; init; }
        public double? Variance { get; init; }
    }

    public static IReadOnlyList<KeptLesson> Of(SqliteConnection connection, string weighedBy) =>
        [.. connection.Query<Row>("""
            SELECT paddler_id, offset_inches, variance FROM lessons WHERE weighed_by = @weighedBy
            """, new { weighedBy }).Select(row => new KeptLesson(Guid.Parse(row.PaddlerId), row.OffsetInches, row.Variance))];

    /// <summary>Keeps them, unless the log was changed since they were weighed.</summary>
    public static bool Keep(SqliteConnection connection, string weighedBy, long asOf, IReadOnlyList<KeptLesson> lessons)
    {
        if (Journal.LastChange(connection) != asOf)
            return false;
        using var statements = new Statements(connection);
        foreach (KeptLesson lesson in lessons)
        {
            statements.Run("""
                INSERT INTO lessons (paddler_id, weighed_by, offset_inches, variance) VALUES (@paddler, @weighed_by, @offset, @variance)
                ON CONFLICT (paddler_id) DO UPDATE
                SET weighed_by = excluded.weighed_by, offset_inches = excluded.offset_inches, variance = excluded.variance
                """, Stored.Id(lesson.PaddlerId), weighedBy, lesson.OffsetInches, lesson.Variance);
        }

        return true;
    }
}
