using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook.Shared;

/// <summary>
/// Checks a shared file from a stranger before anything is done with it: each record through the same values and rules
/// as one typed here, each id only once, and nothing that refers to what is not in the file.
/// </summary>
internal static class SharedCheck
{
    private const int MostFields = 100, MostEditsOfAField = 10_000;

    /// <summary>
    /// The contents, each value written the one way that this program writes it, so that versions can be compared as text.
    /// </summary>
    /// <exception cref="LogbookException">Something cannot be right; the sentence says where.</exception>
    public static SharedContents Checked(SharedContents contents)
    {
        var ids = new HashSet<Guid>();
        HashSet<Guid> hulls = [], paddles = [], paddlers = [], outings = [], cards = [];
        HashSet<Guid> owners = [.. contents.Paddlers.Select(paddler => paddler?.Id ?? Guid.Empty)];
        if (contents.LeftOut?.FirstOrDefault(name => !LeftOutNames.All.Values.Contains(name)) is string unknown)
            throw Wrong("left_out", 0, $"“{Quoted.Brief(unknown)}” is not something that can be left out.");

        IReadOnlyList<SharedRemoval> removed = contents.Removed ?? [];
        SharedContents found = contents with
        {
            Hulls = Each("hulls", contents.Hulls, hull =>
            {
                hulls.Add(hull.Id);
                return SharedHull.Of(hull.ToRecord());
            }),
            Paddles = Each("paddles", contents.Paddles, paddle =>
            {
                Known(paddle.Owner, owners, "paddler");
                paddles.Add(paddle.Id);
                return SharedPaddle.Of(paddle.ToRecord());
            }),
            Paddlers = Each("paddlers", contents.Paddlers, paddler =>
            {
                paddlers.Add(paddler.Id);
                Known(paddler.GoalHull, hulls, "hull");
                return SharedPaddler.Of(paddler.ToRecord());
            }),
            Outings = Each("outings", contents.Outings, outing =>
            {
                outings.Add(outing.Id);
                Known(outing.Paddler, paddlers, "paddler");
                Known(outing.Hull, hulls, "hull");
                IReadOnlyList<SharedPiece> pieces = outing.Pieces ?? [];
                foreach (SharedPiece piece in pieces)
                {
                    CheckItem(piece);
                    Known(piece.Paddle, paddles, "paddle");
                }
                // Two pieces may have one number, where two logbooks gave it each to its own.
                Outing record = outing.ToRecord(
                    [.. pieces.Select((piece, i) => piece.ToRecord() with { Order = piece.Order < 1 ? piece.Order : i + 1 })]);
                return SharedOuting.Of(record) with
                {
                    Pieces = [
                        .. record.Pieces.Select((piece, i) => SharedPiece.Of(piece)
                        with { Order = pieces[i].Order, Edits = pieces[i].Edits, Untold = pieces[i].Untold })],
                };
            }),
            Cards = Each("cards", contents.Cards, card =>
            {
                cards.Add(card.Id);
                Known(card.Paddler, paddlers, "paddler");
                Known(card.Hull, hulls, "hull");
                Known(card.Paddle, paddles, "paddle");
                Known(card.PaddledAs, outings, "outing");
                return SharedCard.Of(card.ToRecord(asOfChange: 0));
            }),
            TechniqueChecks = Each("technique_checks", contents.TechniqueChecks, check =>
            {
                Known(check.Paddler, paddlers, "paddler");
                Known(check.Hull, hulls, "hull");
                Known(check.Paddle, paddles, "paddle");
                return SharedTechniqueCheck.Of(check.ToRecord());
            }),
            SorenessClearances = Each("soreness_clearances", contents.SorenessClearances ?? [], clearance =>
            {
                Known(clearance.Paddler, paddlers, "paddler");
                return SharedSorenessClearance.Of(clearance.ToRecord());
            }),
            Decisions = Each("decisions", contents.Decisions ?? [], decision =>
            {
                Known(decision.Paddler, paddlers, "paddler");
                Known(decision.Hull, hulls, "hull");
                Known(decision.Paddle, paddles, "paddle");
                return SharedDecision.Of(decision.ToRecord());
            }),
            CoachNotes = Each("coach_notes", contents.CoachNotes, note =>
            {
                CoachNote record = note.ToRecord();
                Known(note.AboutId, record.About switch { NoteSubject.Paddler => paddlers, NoteSubject.Outing => outings, _ => cards },
                    note.About);
                return SharedNote.Of(record);
            }),
        };
        for (int i = 0; i < removed.Count; i++)
        {
            if (removed[i] is not { } removal || removal.Id == Guid.Empty || !ids.Add(removal.Id)
                || !removal.Edits.ContainsKey(RecordFields.Presence))
                throw Wrong("removed", i + 1, "It is not the removal of a record.");
            try
            {
                CheckEdits(removal.Edits);
            }
            catch (InvalidValueException e)
            {
                throw Wrong("removed", i + 1, e.Message);
            }
        }

        return found;

        IReadOnlyList<T> Each<T>(string list, IReadOnlyList<T> items, Func<T, T> checkedItem) where T : SharedItem
        {
            var found = new List<T>(items.Count);
            foreach (T item in items)
            {
                try
                {
                    CheckItem(item);
                    found.Add(checkedItem(item) with { Edits = item.Edits, Untold = item.Untold });
                }
                catch (InvalidValueException e)
                {
                    throw Wrong(list, found.Count + 1, e.Message);
                }
            }
            return found;
        }

        void CheckItem(SharedItem? item)
        {
            if (item is null)
                throw new InvalidValueException("There is nothing there.");
            if (item.Id == Guid.Empty || !ids.Add(item.Id))
                throw new InvalidValueException($"Its id {item.Id} is not its own.");
            CheckEdits(item.Edits);
            if (item.Untold is { Count: > MostFields })
                throw new InvalidValueException("Its list of fields left out is not one.");
        }
    }

    /// <summary>Checks a record by itself, whatever it refers to.</summary>
    /// <exception cref="InvalidValueException">A value is out of its range, or two do not go together.</exception>
    public static void CheckAlone(SharedItem item)
    {
        switch (item)
        {
            case SharedHull hull:
                hull.ToRecord();
                break;
            case SharedPaddle paddle:
                paddle.ToRecord();
                break;
            case SharedPaddler paddler:
                paddler.ToRecord();
                break;
            case SharedOuting outing:
                outing.ToRecord([]);
                break;
            case SharedPiece piece:
                RecordRules.Check(piece.ToRecord());
                break;
            case SharedCard card:
                card.ToRecord(asOfChange: 0);
                break;
        }
    }

    private static void CheckEdits(IReadOnlyDictionary<string, IReadOnlyList<string>>? edits)
    {
        if (edits is { Count: > MostFields }
            || edits?.Any(field => field.Value is null or { Count: > MostEditsOfAField }
            || field.Value.Any(edit => edit is not { Length: 16 })) == true)
            throw new InvalidValueException("Its list of edits is not one.");
    }

    private static void Known(Guid? id, HashSet<Guid> ids, string kind)
    {
        if (id is Guid named && !ids.Contains(named))
            throw new InvalidValueException($"It refers to a {kind} that is not in the file.");
    }

    private static LogbookException Wrong(string list, int number, string problem) => new(
        $"The record holds something that cannot be right in {list}{(number > 0 ? $", number {number}" : "")}: {problem.TrimEnd('.')}; " +
            $"nothing was merged.");
}
