using System.Text.Json.Nodes;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook;

/// <summary>
/// Works out how a shared record goes into a logbook. What is only there is added. What differs is decided by history: the
/// side whose earlier versions include the other's is the newer; where neither or both do, the user decides. What a
/// side does not know of notes, heart rates and body measures is taken from the other. The rules, with their reasons, are
/// in <c>docs/share-format.md</c>.
/// </summary>
public sealed class Merge
{
    private readonly MergeSide _mine;
    private readonly LogbookHistory _history;
    private readonly SharedContents _theirs;
    private readonly List<MergeStep> _steps = [];
    private readonly List<string> _remarks = [];
    private readonly Dictionary<(Type, string), Guid> _names;
    private readonly Dictionary<Guid, NamedItem> _standby = [];
    private int _same;

    private Merge(LogbookSnapshot log, LogbookHistory history, SharedContents theirs)
    {
        _mine = new MergeSide(log);
        _history = history;
        _theirs = theirs;
        _names = _mine.Items.Values.OfType<NamedItem>().ToDictionary(NameKey, item => item.Id);
    }

    /// <summary>Compares a shared record with a logbook.</summary>
    /// <exception cref="LogbookException">The logbook cannot be read, or an id in the file belongs to something else here.</exception>
    public static MergePlan Plan(LogbookFile mine, SharedRecord theirs)
    {
        (LogbookSnapshot log, LogbookHistory history) = mine.EverythingWithHistory();
        return new Merge(log, history, theirs.Contents).Plan(log.LastChange);
    }

    private MergePlan Plan(long lastChange)
    {
        foreach (NamedItem boat in _theirs.Hulls.Concat<NamedItem>(_theirs.Paddles))
            Compare(boat, null, $"the {boat.Kind()} “{boat.Name}”", isEquipment: true);

        HashSet<Guid> gone = [];
        foreach (SharedPaddler paddler in _theirs.Paddlers)
        {
            if (Compare(paddler, null, $"the paddler “{paddler.Name}”, with all that is theirs"))
                gone.Add(paddler.Id);
        }
        Dictionary<Guid, string> names = _theirs.Paddlers.ToDictionary(paddler => paddler.Id, paddler => paddler.Name);

        foreach (SharedOuting outing in _theirs.Outings)
        {
            IReadOnlyList<SharedPiece> pieces = outing.Pieces ?? [];
            string what = $"{names[outing.Paddler]}'s outing of {outing.Date:yyyy-MM-dd}{(outing.Label is null ? "" : $" “{outing.Label}”")}";
            bool outingGone = Compare(outing with { Pieces = null }, null, what, whole: gone.Contains(outing.Paddler));
            foreach (SharedPiece piece in pieces)
                Compare(piece, outing.Id, $"piece {piece.Order} of {what}", whole: outingGone || gone.Contains(outing.Paddler));
            CompareOrder(outing, pieces, what);
        }

        foreach (SharedCard card in _theirs.Cards)
        {
            if (Compare(card, null, $"{names[card.Paddler]}'s trial card of {card.GivenAt:yyyy-MM-dd}", whole: gone.Contains(card.Paddler)))
                gone.Add(card.Id);
        }
        foreach (SharedTechniqueCheck check in _theirs.TechniqueChecks)
            Compare(check, null, $"{names[check.Paddler]}'s technique check of {check.Date:yyyy-MM-dd}", whole: gone.Contains(check.Paddler));
        foreach (SharedSorenessClearance clearance in _theirs.SorenessClearances ?? [])
            Compare(clearance, null, $"the word of {clearance.Date:yyyy-MM-dd} that {names[clearance.Paddler]}'s soreness is gone", whole: gone.Contains(clearance.Paddler));
        foreach (SharedDecision decision in _theirs.Decisions ?? [])
            Compare(decision, null, $"{names[decision.Paddler]}'s decision of {decision.Date:yyyy-MM-dd}", whole: gone.Contains(decision.Paddler));
        foreach (SharedNote note in _theirs.CoachNotes)
            Compare(note, null, $"{note.Author}'s note of {note.WrittenAt:yyyy-MM-dd}", whole: IsRemoved(note.AboutId));
        return new MergePlan(_mine, _theirs, _standby, lastChange, _steps, _remarks, _same);
    }

    /// <summary>Compares one record, and says whether it was removed here.</summary>
    /// <param name="theirs">The version in the file.</param>
    /// <param name="outing">For a piece: its outing in the file.</param>
    /// <param name="what">What to call it in a question.</param>
    /// <param name="whole">It hangs on something removed here, so that it comes or stays away with that.</param>
    /// <param name="isEquipment">It is a hull or a paddle: it comes back only with what needs it, without a question.</param>
    private bool Compare(SharedItem theirs, Guid? outing, string what, bool whole = false, bool isEquipment = false)
    {
        if (!_mine.Items.TryGetValue(theirs.Id, out SharedItem? mine))
        {
            bool removed = IsRemoved(theirs.Id);
            if (removed && isEquipment)
            {
                _standby.Add(theirs.Id, WithNameApart((NamedItem)theirs, isQuiet: true));
                return true;
            }
            SharedItem named = theirs is NamedItem item ? WithNameApart(item) : theirs;
            if (removed && !whole)
                Ask(named, outing, MergeQuestion.RemovedHere, what, "removed", "still there");
            else
                _steps.Add(new MergeStep(MergeStepKind.Add, named, outing));
            return removed;
        }

        if (mine.GetType() != theirs.GetType())
            throw new LogbookException($"In the record, the id of {what} belongs to a {mine.Kind()} of this logbook; nothing was merged: ask for the record again.");

        // A name that was kept apart here is still the same name.
        SharedItem plain = mine is NamedItem held && theirs is NamedItem named2 && IsKeptApart(held.Name, named2.Name)
            ? held with { Name = named2.Name } : mine;
        SharedItem filledMine = plain.FilledFrom(theirs), filledTheirs = theirs.FilledFrom(plain);
        bool moved = outing is Guid to && _mine.OutingOf[mine.Id] != to;
        if (Differs(filledMine, filledTheirs) || moved)
            Decide(plain, filledMine, theirs, filledTheirs, outing, what, moved);
        else if (Differs(plain, filledMine))
            _steps.Add(new MergeStep(MergeStepKind.Update, Kept(filledMine), outing));
        else
            _same++;
        return false;
    }

    private void Decide(SharedItem mine, SharedItem filledMine, SharedItem unfilledTheirs, SharedItem theirs, Guid? outing, string what, bool moved)
    {
        // Where what may be left out agrees as far as both know it, the rest tells the versions apart; else the whole does.
        string myCore = mine.CorePrint(), theirCore = theirs.CorePrint(), theirWhole = unfilledTheirs.WholePrint();
        bool coreDecides = filledMine.Private() == theirs.Private() && myCore != theirCore;
        bool theyAreNewer = theirs.Earlier is not null
            && (theirs.Earlier.Contains(mine.WholePrint()) || (coreDecides && theirs.Earlier.Contains(myCore)));
        bool mineIsNewer = _history.Earlier[mine.Id].Any(version =>
            version.WholePrint() == theirWhole || (coreDecides && version.CorePrint() == theirCore));
        if (!moved && theyAreNewer && !mineIsNewer)
            _steps.Add(new MergeStep(MergeStepKind.Update, Kept(theirs), outing));
        else if (!moved && mineIsNewer && !theyAreNewer)
        {
            if (Differs(mine, filledMine))
                _steps.Add(new MergeStep(MergeStepKind.Update, Kept(filledMine), outing));
            else
                _same++;
        }
        else
        {
            (string ours, string other) = Differences(filledMine, theirs);
            if (moved)
                (ours, other) = ($"in another outing; {ours}".TrimEnd(' ', ';'), $"in this outing; {other}".TrimEnd(' ', ';'));
            SharedItem? otherwise = Differs(mine, filledMine) ? Kept(filledMine) : null;
            Ask(Kept(theirs), outing, MergeQuestion.EditedOnBoth, what, ours, other, otherwise);
        }
    }

    private void CompareOrder(SharedOuting outing, IReadOnlyList<SharedPiece> theirs, string what)
    {
        if (!_mine.PiecesOf.TryGetValue(outing.Id, out IReadOnlyList<SharedPiece>? mine))
            return;
        List<Guid> theirOrder = [.. theirs.OrderBy(piece => piece.Order).Select(piece => piece.Id).Where(id => mine.Any(piece => piece.Id == id))];
        List<Guid> myOrder = [.. mine.Select(piece => piece.Id).Where(theirOrder.Contains)];
        if (!myOrder.SequenceEqual(theirOrder))
            Ask(outing, null, MergeQuestion.PieceOrder, $"the order of the pieces of {what}", Lengths(mine, myOrder), Lengths(theirs, theirOrder));

        static string Lengths(IReadOnlyList<SharedPiece> pieces, List<Guid> order) =>
            string.Join(", ", order.Select(id => pieces.First(piece => piece.Id == id)).Select(piece => $"{piece.LengthIn} in ({piece.Time})"));
    }

    private void Ask(SharedItem item, Guid? outing, MergeQuestion question, string what, string mine, string theirs, SharedItem? otherwise = null) =>
        _steps.Add(new MergeStep(MergeStepKind.Ask, item, outing, new MergeConflict(item.Id, question, what, mine, theirs), otherwise));

    private bool IsRemoved(Guid id) => _history.Removed.Contains(id) && !_mine.Items.ContainsKey(id);

    // The order of a piece and the name kept apart are this logbook's own.
    private SharedItem Kept(SharedItem item) => (item, _mine.Items[item.Id]) switch
    {
        (SharedPiece piece, SharedPiece mine) => piece with { Order = mine.Order },
        (NamedItem named, NamedItem mine) when IsKeptApart(mine.Name, named.Name) => named with { Name = mine.Name },
        (NamedItem named, _) => WithNameApart(named),
        _ => item,
    };

    private static bool Differs(SharedItem one, SharedItem other) => Comparable(one) != Comparable(other);

    private static string Comparable(SharedItem item) => item.Whole().ToText();

    private static (string Mine, string Theirs) Differences(SharedItem mine, SharedItem theirs)
    {
        JsonObject ours = mine.ToJson(), other = theirs.ToJson();
        string[] names = [.. ours.Select(property => property.Key).Union(other.Select(property => property.Key))
            .Order(StringComparer.Ordinal).Where(name => name != "order" && ours[name]?.ToJsonString(SharedOptions.Compact) != other[name]?.ToJsonString(SharedOptions.Compact))];
        return (Values(ours), Values(other));

        string Values(JsonObject side) => string.Join(", ", names.Select(name =>
            $"{name.Replace('_', ' ')} {Quoted.Brief(side[name]?.ToJsonString(SharedOptions.Compact).Trim('"') ?? "not known", 200)}"));
    }

    private static (Type, string) NameKey(NamedItem item) => (item.GetType(), item.Name.ToUpperInvariant());

    private NamedItem WithNameApart(NamedItem item, bool isQuiet = false)
    {
        NamedItem apart = item;
        for (int i = 2; _names.TryGetValue(NameKey(apart), out Guid holder) && holder != item.Id; i++)
        {
            string suffix = $" ({i})";
            string stem = item.Name.Length + suffix.Length <= NameRule.Longest ? item.Name : item.Name[..(NameRule.Longest - suffix.Length)];
            apart = item with { Name = (char.IsHighSurrogate(stem[^1]) ? stem[..^1] : stem) + suffix };
        }
        if (apart != item && !isQuiet)
            _remarks.Add($"Their {item.Kind()} “{item.Name}” is kept as “{apart.Name}”, since yours of that name is another.");
        _names[NameKey(apart)] = item.Id;
        return apart;
    }

    private static bool IsKeptApart(string mine, string theirs)
    {
        int suffix = mine.LastIndexOf(" (", StringComparison.Ordinal);
        return suffix > 0 && mine.EndsWith(')') && int.TryParse(mine.AsSpan(suffix + 2, mine.Length - suffix - 3), out int number) && number >= 2
            && (theirs == mine[..suffix] || (mine.Length >= NameRule.Longest - 1 && theirs.StartsWith(mine[..suffix], StringComparison.Ordinal)));
    }
}
