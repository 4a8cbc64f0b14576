using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook;

/// <summary>The questions asked of a logbook's database.</summary>
internal static class LogbookReader
{
    public static IReadOnlyList<Paddler> Paddlers(SqliteConnection connection) =>
        [.. connection.Query<PaddlerRow>("SELECT * FROM paddlers ORDER BY name_key").Select(row => row.ToRecord())];

    public static IReadOnlyList<Hull> Hulls(SqliteConnection connection) =>
        [.. connection.Query<HullRow>("SELECT * FROM hulls ORDER BY name_key").Select(row => row.ToRecord())];

    public static IReadOnlyList<Paddle> Paddles(SqliteConnection connection) =>
        [.. connection.Query<PaddleRow>("SELECT * FROM paddles ORDER BY name_key").Select(row => row.ToRecord())];

    public static IReadOnlyList<Outing> Outings(SqliteConnection connection, Guid? paddlerId)
    {
        // Two queries and a join by outing, not a query for each outing.
        var whose = new { paddler = Stored.Id(paddlerId) };
        ILookup<string, Piece> pieces = connection.Query<PieceRow>(paddlerId is null
            ? "SELECT * FROM pieces"
            : "SELECT pieces.* FROM outings JOIN pieces ON pieces.outing_id = outings.id WHERE outings.paddler_id = @paddler",
            whose, buffered: false).ToLookup(row => row.OutingId, row => row.ToRecord());
        return [.. connection.Query<OutingRow>($"""
            SELECT * FROM outings {Of(paddlerId)} ORDER BY date, coalesce(time, ''), label, id
            """, whose, buffered: false).Select(row => row.ToRecord(InOrder(pieces[row.Id])))];
    }

    /// <summary>The outings of some days, and those with a piece of some origins, by date, time and label.</summary>
    public static IReadOnlyList<Outing> Outings(SqliteConnection connection, IEnumerable<DateOnly> days, Func<string, bool> isOrigin)
    {
        HashSet<string> ids = [.. connection.Query<PieceRow>(
                "SELECT outing_id, origin FROM pieces WHERE origin IS NOT NULL", buffered: false)
            .Where(piece => isOrigin(piece.Origin!)).Select(piece => piece.OutingId)];
        ids.UnionWith(connection.Query<string>(
            "SELECT id FROM outings WHERE date IN (SELECT value FROM json_each(@days))",
            new { days = JsonList(days.Select(Stored.Date)) }));
        return [.. Whole(connection, connection.Query<OutingRow>("""
            SELECT * FROM outings WHERE id IN (SELECT value FROM json_each(@ids)) ORDER BY date, coalesce(time, ''), label, id
            """, new { ids = JsonList(ids) }, buffered: false))];
    }

    /// <summary>All outings by day, or in the order in which they are listed, a few hundred held at a time; the connection is to stand at
    /// one moment while they are passed over.</summary>
    public static IEnumerable<Outing> OutingsByDay(SqliteConnection connection, bool listed = false) =>
        Whole(connection, connection.Query<OutingRow>(
            listed ? "SELECT * FROM outings ORDER BY date, coalesce(time, ''), label, id" : "SELECT * FROM outings ORDER BY date",
            buffered: false));

    private static IEnumerable<Outing> Whole(SqliteConnection connection, IEnumerable<OutingRow> rows)
    {
        foreach (OutingRow[] some in rows.Chunk(500))
        {
            ILookup<string, Piece> pieces = connection.Query<PieceRow>(
                "SELECT pieces.* FROM json_each(@outings) JOIN pieces ON pieces.outing_id = json_each.value",
                new { outings = JsonList(some.Select(row => row.Id)) }, buffered: false)
                .ToLookup(row => row.OutingId, row => row.ToRecord());
            foreach (OutingRow row in some)
                yield return row.ToRecord(InOrder(pieces[row.Id]));
        }
    }

    // Ids and days need no escapes.
    private static string JsonList(IEnumerable<string> words) => $"[{string.Join(',', words.Select(word => $"\"{word}\""))}]";

    public static IReadOnlyDictionary<Guid, int> OutingCounts(SqliteConnection connection) =>
        connection.Query<CountRow>("SELECT paddler_id, count(*) AS count FROM outings GROUP BY paddler_id")
            .ToDictionary(row => Guid.Parse(row.PaddlerId), row => row.Count);

    /// <summary>How many pieces there are, of one paddler or of all.</summary>
    public static long CountOfPieces(SqliteConnection connection, Guid? paddlerId) => connection.ExecuteScalar<long>(
        paddlerId is null ? "SELECT count(*) FROM pieces"
            : "SELECT count(*) FROM pieces JOIN outings ON outings.id = outing_id WHERE paddler_id = @paddler",
        new { paddler = Stored.Id(paddlerId) });

    public static IReadOnlyList<PaddleUse> PaddleUses(SqliteConnection connection) =>
        [.. connection.Query<CountRow>("""
            SELECT paddle_id, paddler_id, count(*) AS count FROM pieces JOIN outings ON outings.id = outing_id
            GROUP BY paddle_id, paddler_id
            """).Select(row => new PaddleUse(Guid.Parse(row.PaddleId), Guid.Parse(row.PaddlerId), row.Count))];

    /// <summary>By their numbers. Where a merge gave two pieces one number, all are numbered anew, the same way in every logbook.</summary>
    private static List<Piece> InOrder(IEnumerable<Piece> pieces)
    {
        List<Piece> ordered = [.. pieces.OrderBy(piece => piece.Order).ThenBy(piece => piece.Id)];
        bool clash = ordered.Zip(ordered.Skip(1)).Any(pair => pair.First.Order == pair.Second.Order);
        return clash ? [.. ordered.Select((piece, i) => piece with { Order = i + 1 })] : ordered;
    }

    public static IReadOnlyList<GivenCard> Cards(SqliteConnection connection, Guid? paddlerId) =>
        [.. connection.Query<CardRow>($"""
            SELECT * FROM cards {Of(paddlerId)} ORDER BY given_at, id
            """, new { paddler = Stored.Id(paddlerId) }).Select(row => row.ToRecord())];

    public static IReadOnlyList<TechniqueCheck> TechniqueChecks(SqliteConnection connection, Guid? paddlerId) =>
        [.. connection.Query<TechniqueCheckRow>($"""
            SELECT * FROM technique_checks {Of(paddlerId)} ORDER BY date, id
            """, new { paddler = Stored.Id(paddlerId) }).Select(row => row.ToRecord())];

    public static IReadOnlyList<SorenessClearance> SorenessClearances(SqliteConnection connection, Guid? paddlerId) =>
        [.. connection.Query<SorenessClearanceRow>($"""
            SELECT * FROM soreness_clearances {Of(paddlerId)} ORDER BY date, id
            """, new { paddler = Stored.Id(paddlerId) }).Select(row => row.ToRecord())];

    public static IReadOnlyList<Decision> Decisions(SqliteConnection connection, Guid? paddlerId) =>
        [.. connection.Query<DecisionRow>($"""
            SELECT * FROM decisions {Of(paddlerId)} ORDER BY date, id
            """, new { paddler = Stored.Id(paddlerId) }).Select(row => row.ToRecord())];

    public static IReadOnlyList<CoachNote> Notes(SqliteConnection connection) =>
        [.. connection.Query<NoteRow>("SELECT * FROM notes ORDER BY written_at, id").Select(row => row.ToRecord())];

    // Not "@paddler IS NULL OR ...": that would read the whole table for one paddler.
    private static string Of(Guid? paddlerId) => paddlerId is null ? "" : "WHERE paddler_id = @paddler";

    /// <summary>
    /// All that there is at one moment; or of outings and what else is somebody's one paddler's, with all notes and all that has a name.
    /// </summary>
    public static LogbookSnapshot Everything(SqliteConnection connection, Guid? paddlerId = null, bool withOutings = true)
    {
        // Within a change the moment is fixed already, and transactions do not nest.
        bool alone = raw.sqlite3_get_autocommit(connection.Handle) != 0;
        using Transaction? oneMoment = alone ? Transaction.ToRead(connection) : null;
        return new LogbookSnapshot
        {
            Paddlers = Paddlers(connection),
            Hulls = Hulls(connection),
            Paddles = Paddles(connection),
            Outings = withOutings ? Outings(connection, paddlerId) : [],
            Cards = Cards(connection, paddlerId),
            TechniqueChecks = TechniqueChecks(connection, paddlerId),
            SorenessClearances = SorenessClearances(connection, paddlerId),
            Decisions = Decisions(connection, paddlerId),
            Notes = Notes(connection),
            LastChange = Journal.LastChange(connection),
        };
    }
}
