using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook;

/// <summary>Writes the decided steps of a merge, each record after those it refers to.</summary>
/// <param name="mine">The logbook as it is.</param>
/// <param name="standby">Hulls and paddles from the file that were removed here.</param>
/// <param name="writer">Where to write.</param>
internal sealed class MergeWriter(MergeSide mine, IReadOnlyDictionary<Guid, NamedItem> standby, LogbookWriter writer)
{
    private readonly HashSet<Guid> _present = [.. mine.Items.Keys];

    public void Write(IReadOnlyList<MergeStep> taken)
    {
        foreach (SharedHull hull in taken.Select(step => step.Item).OfType<SharedHull>())
            Put(hull);
        foreach (SharedPaddler paddler in taken.Select(step => step.Item).OfType<SharedPaddler>())
        {
            Need(paddler.GoalHull);
            writer.Put(paddler.ToRecord());
            _present.Add(paddler.Id);
        }
        foreach (SharedPaddle paddle in taken.Select(step => step.Item).OfType<SharedPaddle>())
            Put(paddle);
        WriteOutings(taken);
        foreach (SharedCard card in taken.Select(step => step.Item).OfType<SharedCard>().Where(card => _present.Contains(card.Paddler)))
        {
            Need(card.Hull);
            Need(card.Paddle);
            long asOf = mine.Log.Cards.FirstOrDefault(given => given.Id == card.Id)?.AsOfChange ?? 0;
            writer.Put((card with { PaddledAs = card.PaddledAs is Guid id && _present.Contains(id) ? id : null }).ToRecord(asOf));
            _present.Add(card.Id);
        }
        foreach (SharedTechniqueCheck check in taken.Select(step => step.Item).OfType<SharedTechniqueCheck>().Where(check => _present.Contains(check.Paddler)))
        {
            Need(check.Hull);
            Need(check.Paddle);
            writer.Put(check.ToRecord());
        }
        foreach (SharedSorenessClearance clearance in taken.Select(step => step.Item).OfType<SharedSorenessClearance>().Where(item => _present.Contains(item.Paddler)))
            writer.Put(clearance.ToRecord());
        foreach (SharedDecision decision in taken.Select(step => step.Item).OfType<SharedDecision>().Where(item => _present.Contains(item.Paddler)))
        {
            Need(decision.Hull);
            Need(decision.Paddle);
            writer.Put(decision.ToRecord());
        }
        foreach (SharedNote note in taken.Select(step => step.Item).OfType<SharedNote>().Where(note => _present.Contains(note.AboutId)))
            writer.Put(note.ToRecord());
    }

    private void WriteOutings(IReadOnlyList<MergeStep> taken)
    {
        Dictionary<Guid, SharedOuting> outings = mine.Items.Values.OfType<SharedOuting>().ToDictionary(outing => outing.Id);
        Dictionary<Guid, Dictionary<Guid, SharedPiece>> pieces = mine.PiecesOf.ToDictionary(of => of.Key, of => of.Value.ToDictionary(piece => piece.Id));
        var changed = new HashSet<Guid>();
        foreach (MergeStep step in taken.Where(step => step.Item is SharedOuting outing && step.Conflict?.Question != MergeQuestion.PieceOrder && _present.Contains(outing.Paddler)))
        {
            outings[step.Item.Id] = (SharedOuting)step.Item;
            pieces.TryAdd(step.Item.Id, []);
            _present.Add(step.Item.Id);
            changed.Add(step.Item.Id);
        }

        foreach (MergeStep step in taken.Where(step => step.Item is SharedPiece && _present.Contains(step.OutingId!.Value)))
        {
            if (mine.OutingOf.TryGetValue(step.Item.Id, out Guid from) && pieces[from].Remove(step.Item.Id))
                changed.Add(from);
            pieces[step.OutingId!.Value][step.Item.Id] = (SharedPiece)step.Item;
            changed.Add(step.OutingId.Value);
        }

        foreach (MergeStep step in taken.Where(step => step.Conflict?.Question == MergeQuestion.PieceOrder))
        {
            Dictionary<Guid, SharedPiece> held = pieces[step.Item.Id];
            foreach (SharedPiece piece in ((SharedOuting)step.Item).Pieces!.Where(piece => held.ContainsKey(piece.Id)))
                held[piece.Id] = held[piece.Id] with { Order = piece.Order };
            changed.Add(step.Item.Id);
        }

        foreach (Guid id in changed)
        {
            Need(outings[id].Hull);
            foreach (SharedPiece piece in pieces[id].Values)
                Need(piece.Paddle);
            writer.Put(outings[id].ToRecord(InOrder(pieces[id].Values)));
        }
    }

    /// <summary>By their numbers; where two have the same one, all are numbered anew, the same way on whichever side the merge is done.</summary>
    private static List<Piece> InOrder(IReadOnlyCollection<SharedPiece> pieces)
    {
        List<Piece> ordered = [.. pieces.OrderBy(piece => piece.Order).ThenBy(piece => piece.Id).Select(piece => piece.ToRecord())];
        bool clash = ordered.Zip(ordered.Skip(1)).Any(pair => pair.First.Order == pair.Second.Order);
        return clash ? [.. ordered.Select((piece, i) => piece with { Order = i + 1 })] : ordered;
    }

    /// <summary>Equipment that was removed here comes back when something that comes needs it.</summary>
    private void Need(Guid? id)
    {
        if (id is Guid needed && !_present.Contains(needed))
            Put(standby[needed]);
    }

    private void Put(NamedItem item)
    {
        if (item is SharedHull hull)
            writer.Put(hull.ToRecord());
        else if (item is SharedPaddle paddle)
            writer.Put((paddle.Owner is Guid owner && !_present.Contains(owner) ? paddle with { Owner = null } : paddle).ToRecord());
        _present.Add(item.Id);
    }
}
