using Dapper;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>Chooses what of a logbook goes into a shared file.</summary>
internal static class Selection
{
    /// <summary>The paddler's record or everybody's, with the hulls and paddles it needs (everybody's: all).</summary>
    public static SharedContents Of(LogbookFile logbook, ShareOptions options)
    {
        RecordSet all = RecordSet.Of(logbook, options.PaddlerId);
        if (options.PaddlerId is Guid id && all.Items.GetValueOrDefault(id) is not SharedPaddler)
            throw new LogbookException("That paddler is not in the logbook.");
        Func<Guid, bool> chosen = Chosen(all, options.PaddlerId);
        HashSet<Guid> needed = [
            .. all.Items.Values.Where(item => item is not (SharedHull or SharedPaddle) && chosen(item.Id)).SelectMany(References)];
        HashSet<Guid> taken = [
            .. all.Items.Values.Where(item => item is SharedHull or SharedPaddle ? options.PaddlerId is null
            || needed.Contains(item.Id) : chosen(item.Id)).Select(item => item.Id)];
        ILookup<Guid, SharedPiece> pieces = all.OutingOf.ToLookup(pair => pair.Value, pair => (SharedPiece)all.Items[pair.Key]);
        bool leaveNotes = options.LeftOut.HasFlag(LeftOut.Notes);

        return new SharedContents
        {
            Format = SharedContents.FormatName,
            Version = SharedContents.CurrentVersion,
            WrittenAt = DateTimeOffset.UtcNow,
            LeftOut = options.LeftOut == LeftOut.Nothing ? null
                : [.. LeftOutNames.All.Where(part => options.LeftOut.HasFlag(part.Key)).Select(part => part.Value)],
            Hulls = Taken<SharedHull>(),
            Paddles = [.. Taken<SharedPaddle>().Select(Told)],
            Paddlers = [.. Taken<SharedPaddler>()
                .Select(paddler => options.LeftOut.HasFlag(LeftOut.BodyMeasures) ? paddler with { Body = null } : paddler)],
            Outings =
            [
                .. Taken<SharedOuting>().Select(outing => outing with
                {
                    Notes = leaveNotes ? null : outing.Notes,
                    Pieces = [
                        .. pieces[outing.Id].OrderBy(piece => piece.Order).ThenBy(piece => piece.Id).Select(Versioned).Select(ToldOfPiece)],
                }),
            ],
            Cards = [
                .. Taken<SharedCard>()
                .Select(card => card.PaddledAs is Guid outing
                && !taken.Contains(outing) ? card with { PaddledAs = null, Untold = ["paddled_as"] } : card)],
            TechniqueChecks = Taken<SharedTechniqueCheck>(),
            CoachNotes = leaveNotes ? [] : Taken<SharedNote>(),
            SorenessClearances = Taken<SharedSorenessClearance>(),
            Decisions = Taken<SharedDecision>(),
            Removed = [.. Removals(logbook, all, options.PaddlerId)],
        };

        T Versioned<T>(T item) where T : SharedItem => item with { Edits = all.Edits.Written(item.Id) };

        IReadOnlyList<T> Taken<T>() where T : SharedItem =>
            [.. all.Items.Values.OfType<T>().Where(item => taken.Contains(item.Id)).Select(Versioned)];

        // An owner whose record is not shared is not told.
        SharedPaddle Told(SharedPaddle paddle) => paddle.Owner is Guid owner
            && !taken.Contains(owner) ? paddle with { Owner = null, BelongsToClub = null, Untold = ["owner"] } : paddle;

        SharedPiece ToldOfPiece(SharedPiece piece) => piece with
        {
            Notes = leaveNotes ? null : piece.Notes,
            HeartRate = options.LeftOut.HasFlag(LeftOut.HeartRate) ? null : piece.HeartRate,
        };
    }

    private static Func<Guid, bool> Chosen(RecordSet all, Guid? paddler)
    {
        if (paddler is not Guid whose)
            return _ => true;
        bool Is(Guid id) => id == whose || (all.Items.TryGetValue(id, out SharedItem? item) && all.ContainerOf(item) is Guid on && Is(on));
        return Is;
    }

    private static IEnumerable<Guid> References(SharedItem item) => item switch
    {
        SharedPaddler { GoalHull: Guid goal } => [goal],
        SharedOuting outing => [outing.Hull],
        SharedPiece piece => [piece.Paddle],
        SharedCard card => [card.Hull, card.Paddle],
        SharedTechniqueCheck check => [check.Hull, check.Paddle],
        SharedDecision decision => [decision.Hull, decision.Paddle],
        _ => [],
    };

    internal sealed class Gone
    {
        public string RowId { get; init; } = "";
        public string? Paddler { get; init; }
        public string? On { get; init; }
    }

    /// <summary>What is no longer there; for one paddler's record without what was somebody else's.</summary>
    private static IEnumerable<SharedRemoval> Removals(LogbookFile logbook, RecordSet all, Guid? paddler)
    {
        Dictionary<Guid, Gone> gone = paddler is null ? [] : logbook.AskAtOneMoment(connection => connection.Query<Gone>("""
            SELECT row_id, json_extract(before, '$.paddler_id') AS paddler,
                coalesce(json_extract(before, '$.outing_id'), json_extract(before, '$.about_id')) AS "on"
            FROM journal WHERE before IS NOT NULL AND row_id IN (SELECT row_id FROM edits WHERE field = '') ORDER BY number
            """).GroupBy(row => row.RowId).ToDictionary(rows => Guid.Parse(rows.Key), rows => rows.Last()));
        return all.Removed.Where(removal => paddler is null || Whose(removal.Key) is not Guid whose || whose == paddler)
            .Select(removal => new SharedRemoval { Id = removal.Key, Into = removal.Value, Edits = all.Edits.Written(removal.Key)! })
            .Where(removal => removal.Edits.ContainsKey(RecordFields.Presence));

        Guid? Whose(Guid id)
        {
            for (int i = 0; i < 4; i++)
            {
                if (gone.TryGetValue(id, out Gone? row) && (row.Paddler ?? row.On) is string on)
                    id = Guid.Parse(on);
                else if (all.Items.TryGetValue(id, out SharedItem? item) && all.ContainerOf(item) is Guid above)
                    id = above;
                else
                    return all.Items.GetValueOrDefault(id) is SharedPaddler || i > 0 ? id : null;
            }

            return null;
        }
    }
}
