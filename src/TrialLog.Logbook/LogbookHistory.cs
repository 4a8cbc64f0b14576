using Microsoft.Data.Sqlite;
using TrialLog.Logbook.Rows;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook;

/// <summary>What became of a logbook's records before they were as they are.</summary>
/// <param name="Removed">Ids of what the user removed here and did not put back.</param>
/// <param name="Earlier">Earlier versions of records, by id.</param>
internal sealed record LogbookHistory(IReadOnlySet<Guid> Removed, ILookup<Guid, SharedItem> Earlier)
{
    public static LogbookHistory Of(SqliteConnection connection)
    {
        IEnumerable<SharedItem> earlier =
        [
            .. Journal.EarlierRows<HullRow>(connection, "hulls").Select(row => SharedHull.Of(row.ToRecord())),
            .. Journal.EarlierRows<PaddleRow>(connection, "paddles").Select(row => SharedPaddle.Of(row.ToRecord())),
            .. Journal.EarlierRows<PaddlerRow>(connection, "paddlers").Select(row => SharedPaddler.Of(row.ToRecord())),
            .. Journal.EarlierRows<OutingRow>(connection, "outings").Select(row => SharedOuting.Of(row.ToRecord([]))),
            .. Journal.EarlierRows<PieceRow>(connection, "pieces").Select(row => SharedPiece.Of(row.ToRecord())),
            .. Journal.EarlierRows<CardRow>(connection, "cards").Select(row => SharedCard.Of(row.ToRecord())),
            .. Journal.EarlierRows<TechniqueCheckRow>(connection, "technique_checks").Select(row => SharedTechniqueCheck.Of(row.ToRecord())),
            .. Journal.EarlierRows<SorenessClearanceRow>(connection, "soreness_clearances").Select(row => SharedSorenessClearance.Of(row.ToRecord())),
            .. Journal.EarlierRows<DecisionRow>(connection, "decisions").Select(row => SharedDecision.Of(row.ToRecord())),
            .. Journal.EarlierRows<NoteRow>(connection, "notes").Select(row => SharedNote.Of(row.ToRecord())),
        ];
        return new LogbookHistory(Journal.Removed(connection), earlier.ToLookup(item => item.Id));
    }
}
