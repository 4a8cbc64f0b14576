using Dapper;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Logbook.Rows;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>Writes the decided steps of a merge, each record after those it refers to, and what was learnt of edits.</summary>
internal sealed class MergeWriter
{
    private readonly RecordSet _here;
    private readonly IReadOnlyDictionary<Guid, SharedItem> _standby;
    private readonly IReadOnlyDictionary<Guid, Guid> _joined;
    private readonly NamesApart _names;
    private readonly LogbookWriter _writer;
    private readonly HashSet<Guid> _present;
    private readonly List<LearnEdits> _learnt = [];

    /// <param name="here">The logbook as it is.</param>
    /// <param name="standby">Hulls and paddles from the file that were removed here: they come back where something needs them.</param>
    /// <param name="joined">Records that the file joined into others.</param>
    /// <param name="names">What records are called here.</param>
    /// <param name="writer">Where to write.</param>
    public MergeWriter(RecordSet here, IReadOnlyDictionary<Guid, SharedItem> standby, IReadOnlyDictionary<Guid, Guid> joined,
        NamesApart names, LogbookWriter writer)
    {
        (_here, _standby, _joined, _names, _writer) = (here, standby, joined, names, writer);
        _present = [.. here.Items.Keys];
    }

    public void Write(IReadOnlyList<MergeWrite> writes)
    {
        // The last word on a record is what the user decided.
        Dictionary<Guid, PutRecord> puts = [];
        foreach (PutRecord put in writes.OfType<PutRecord>())
            puts[put.Id] = put;
        List<Guid> removes = [.. writes.OfType<RemoveRecord>().Select(write => write.Id).Distinct().Where(id => !puts.ContainsKey(id))];
        _learnt.AddRange(writes.OfType<LearnEdits>());

        FreeNames(
            [.. puts.Values.Select(put => put.Item).OfType<NamedItem>(), .. removes.Select(id => _here.Items[id]).OfType<NamedItem>()]);
        foreach (SharedHull hull in puts.Values.Select(put => put.Item).OfType<SharedHull>())
            Put(hull);
        foreach (SharedPaddler paddler in puts.Values.Select(put => put.Item).OfType<SharedPaddler>())
        {
            Need(paddler.GoalHull);
            Put(paddler);
        }

        foreach (SharedPaddle paddle in puts.Values.Select(put => put.Item).OfType<SharedPaddle>())
            Put(paddle);
        foreach ((Guid id, Guid into) in _joined.Where(pair => _present.Contains(pair.Value)))
            _writer.MoveAll(_here.Items[id].Table(), id, into);
        WriteOutings(puts.Values, removes, [.. writes.OfType<OrderPiece>()]);
        foreach (Guid id in removes)
            Remove(_here.Items[id]);
        WriteRest(puts.Values);
        foreach (NamedItem item in removes.Select(id => _here.Items[id]).OfType<NamedItem>().OrderBy(item => item is SharedPaddler ? 0 : 1))
            RemoveUnlessInUse(item);
        foreach (LearnJoin join in writes.OfType<LearnJoin>())
            _writer.RememberJoin(join.Id, join.Into);
        WriteEdits([.. writes.OfType<ForgetEdits>().Select(write => write.Id).Where(_present.Contains)]);
    }

    private void WriteOutings(IEnumerable<PutRecord> puts, List<Guid> removes, List<OrderPiece> orders)
    {
        var outings = new Dictionary<Guid, SharedOuting>();
        var pieces = new Dictionary<Guid, Dictionary<Guid, SharedPiece>>();
        ILookup<Guid, Guid> held = _here.OutingOf.ToLookup(pair => pair.Value, pair => pair.Key);
        foreach (PutRecord put in puts.Where(put => put.Item is SharedOuting outing && _present.Contains(outing.Paddler)))
        {
            Touch(put.Id);
            outings[put.Id] = (SharedOuting)put.Item;
            _present.Add(put.Id);
        }

        foreach (PutRecord put in puts.Where(put => put.Item is SharedPiece && _present.Contains(put.Outing!.Value)))
        {
            if (_here.OutingOf.TryGetValue(put.Id, out Guid from))
                Touch(from).Remove(put.Id);
            Touch(put.Outing!.Value)[put.Id] = (SharedPiece)put.Item;
            _present.Add(put.Id);
        }

        foreach (OrderPiece order in orders)
        {
            Dictionary<Guid, SharedPiece> all = Touch(_here.OutingOf[order.Id]);
            if (all.TryGetValue(order.Id, out SharedPiece? piece))
                all[order.Id] = piece with { Order = order.Order };
        }

        foreach (Guid piece in removes.Where(id => _here.Items[id] is SharedPiece))
            Touch(_here.OutingOf[piece]).Remove(piece);
        foreach ((Guid id, SharedOuting outing) in outings.Where(outing => !removes.Contains(outing.Key)))
        {
            Need(outing.Hull);
            foreach (SharedPiece piece in pieces[id].Values)
                Need(piece.Paddle);
            List<SharedPiece> ordered = [.. pieces[id].Values.OrderBy(piece => piece.Order).ThenBy(piece => piece.Id)];
            bool clash = ordered.Zip(ordered.Skip(1)).Any(pair => pair.First.Order == pair.Second.Order);
            _writer.Put(outing.ToRecord([.. ordered.Select((piece, i) => (clash ? piece with { Order = i + 1 } : piece).ToRecord())]));

            // Kept as they were given, so that every logbook numbers them alike whatever order it learns of them in.
            foreach (SharedPiece piece in clash ? ordered : [])
                _writer.Connection.Execute("UPDATE pieces SET piece_order = @Order WHERE id = @id",
                    new { piece.Order, id = Stored.Id(piece.Id) });
        }

        Dictionary<Guid, SharedPiece> Touch(Guid outing)
        {
            if (!pieces.TryGetValue(outing, out Dictionary<Guid, SharedPiece>? all))
            {
                pieces[outing] = all = held[outing].ToDictionary(id => id, id => (SharedPiece)_here.Items[id]);
                if (_here.Items.TryGetValue(outing, out SharedItem? item))
                    outings.TryAdd(outing, (SharedOuting)item);
            }

            return all;
        }
    }

    private void WriteRest(IEnumerable<PutRecord> puts)
    {
        // Notes last: a card that comes may be what one is about.
        foreach (SharedItem item in puts.Select(put => put.Item).OrderBy(item => item is SharedNote ? 1 : 0))
        {
            if (item.Container() is not Guid on || !_present.Contains(on))
                continue;
            switch (item)
            {
                case SharedCard card:
                    Need(card.Hull);
                    Need(card.Paddle);
                    _writer.Put((card with { PaddledAs = card.PaddledAs is Guid id && IsThere("outings", id) ? id : null })
                        .ToRecord(_here.GivenAfter.GetValueOrDefault(card.Id)));
                    break;
                case SharedTechniqueCheck check:
                    Need(check.Hull);
                    Need(check.Paddle);
                    _writer.Put(check.ToRecord());
                    break;
                case SharedSorenessClearance clearance:
                    _writer.Put(clearance.ToRecord());
                    break;
                case SharedDecision decision:
                    Need(decision.Hull);
                    Need(decision.Paddle);
                    _writer.Put(decision.ToRecord());
                    break;
                case SharedNote note when IsThere(note.About + "s", note.AboutId):
                    _writer.Put(note.ToRecord());
                    break;
                default:
                    continue;
            }

            _present.Add(item.Id);
        }
    }

    private bool IsThere(string table, Guid id) =>
        _writer.Connection.ExecuteScalar<bool>($"SELECT EXISTS (SELECT 1 FROM {table} WHERE id = @id)", new { id = Stored.Id(id) });

    /// <summary>Equipment that was removed here comes back when something that comes needs it, and stays from then on.</summary>
    private void Need(Guid? id)
    {
        if (id is not Guid needed || _present.Contains(needed) || !_standby.TryGetValue(needed, out SharedItem? item))
            return;
        Put((NamedItem)item);
        _learnt.Add(new LearnEdits(needed, RecordFields.Presence, new HashSet<long>(), Decided: true));
    }

    private void Put(NamedItem item)
    {
        NamedItem shown = item with { Name = _names.Of(item) };
        switch (shown)
        {
            case SharedHull hull:
                _writer.Put(hull.ToRecord());
                break;
            case SharedPaddler paddler:
                _writer.Put(paddler.ToRecord());
                break;
            case SharedPaddle paddle:
                _writer.Put((paddle.Owner is Guid owner && !_present.Contains(owner) ? paddle with { Owner = null } : paddle).ToRecord());
                break;
        }

        _writer.Connection.Execute($"UPDATE {item.Table()} SET true_name = @trueName WHERE id = @id",
            new { id = Stored.Id(item.Id), trueName = shown.Name == item.Name ? null : item.Name });
        _present.Add(item.Id);
    }

    // Names are exchanged, and given to others once their holder goes: until the merge is written nobody holds one.
    private void FreeNames(IEnumerable<NamedItem> items)
    {
        foreach (NamedItem item in items)
            _writer.Connection.Execute($"UPDATE {item.Table()} SET name_key = id WHERE id = @id", new { id = Stored.Id(item.Id) });
    }

    private void Remove(SharedItem item)
    {
        switch (item)
        {
            case SharedOuting:
                _writer.RemoveOuting(item.Id);
                break;
            case SharedCard:
                _writer.RemoveCard(item.Id);
                break;
            case SharedTechniqueCheck:
                _writer.RemoveTechniqueCheck(item.Id);
                break;
            case SharedSorenessClearance:
                _writer.RemoveSorenessClearance(item.Id);
                break;
            case SharedDecision:
                _writer.RemoveDecision(item.Id);
                break;
            case SharedNote:
                _writer.RemoveNote(item.Id);
                break;
            default:
                return;
        }

        _present.Remove(item.Id);
    }

    // What hangs on it and was not removed with it, such as an outing moved to it here, keeps it.
    private void RemoveUnlessInUse(NamedItem item)
    {
        if (_writer.IsInUse(item.Table(), item.Id))
        {
            Put(item);
            _learnt.Add(new LearnEdits(item.Id, RecordFields.Presence, new HashSet<long>(), Decided: true));
        }
        else if (item is SharedPaddler)
        {
            _writer.RemovePaddler(item.Id);
        }
        else if (item is SharedHull)
        {
            _writer.RemoveHull(item.Id);
        }
        else
        {
            _writer.RemovePaddle(item.Id);
        }
    }

    private void WriteEdits(IReadOnlyCollection<Guid> backAgain)
    {
        Journal.ChangeRow now = _writer.Connection.QuerySingle<Journal.ChangeRow>(
            "SELECT number, edit FROM changes ORDER BY number DESC LIMIT 1");
        foreach (Guid id in backAgain)
            _writer.Connection.Execute("UPDATE edits SET forgotten = @change WHERE row_id = @id AND field <> @presence",
                new { change = now.Number, id = Stored.Id(id), presence = RecordFields.Presence });
        foreach (LearnEdits learn in _learnt)
        {
            foreach (long edit in learn.Decided ? learn.Edits.Append(now.Edit) : learn.Edits)
            {
                _writer.Statements.Run("""
                    INSERT INTO edits (row_id, field, edit, change) VALUES (@id, @field, @edit, @change)
                    ON CONFLICT (row_id, field, edit) DO UPDATE SET change = excluded.change, forgotten = NULL
                        WHERE forgotten IS NOT NULL
                            OR change IN (SELECT number FROM changes WHERE merged AND state IN ('taken back', 'gone'))
                    """, Stored.Id(learn.Id), learn.Field, edit, now.Number);
            }
        }
    }
}
