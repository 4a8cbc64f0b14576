using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>
/// Works out how a shared record goes into a logbook, field by field. What is only there is added. Of two values the one
/// that builds upon all edits of the other is the newer; where neither does, the user is asked. What was removed there is removed
/// here, unless something was done to it here that the remover did not know. The rules, with their reasons, are in
/// <c>docs/logbook.md</c>.
/// </summary>
public sealed class Merge
{
    private readonly RecordSet _here, _file;
    private readonly Dictionary<Guid, Guid> _joinedInFile;
    private readonly HashSet<Guid> _joinedHere;
    private readonly HashSet<Guid> _newsInFile, _newsHere;
    private readonly List<MergeStep> _steps = [];
    private readonly List<string> _remarks = [];
    private readonly Dictionary<Guid, SharedItem> _standby = [];

    // Containers that a question is asked about: what hangs on them goes with the answer.
    private readonly Dictionary<Guid, MergeStep> _asked = [];

    // Records that come in any case, and of which is asked only whose they are: what hangs on them comes with them.
    private readonly Dictionary<Guid, MergeStep> _whose = [];

    // What is under a paddler whom the other side joined into another, and is given to that one by this merge.
    private readonly Dictionary<Guid, Guid> _givenHere, _givenInFile;
    private readonly HashSet<Guid> _staysRemoved = [], _removes = [], _bothJoined = [];
    private readonly Dictionary<Guid, List<(Guid Piece, int Here, int InFile)>> _orders = [];
    private int _same;

    private Merge(RecordSet here, RecordSet file)
    {
        (_here, _file) = (here, file);
        Dictionary<Guid, Guid> joinedHere = Joined(_here, _file);
        _joinedInFile = Joined(_file, _here);

        // Each side joined the other's: the record with the lower id stays, so that all logbooks decide alike.
        foreach ((Guid id, Guid into) in joinedHere.Where(pair => _joinedInFile.GetValueOrDefault(pair.Value) == pair.Key).ToList())
        {
            _ = id.CompareTo(into) < 0 ? joinedHere.Remove(id) : _joinedInFile.Remove(into);
            _bothJoined.Add(id.CompareTo(into) < 0 ? id : into);
        }

        // A chain of joins may run over both sides: what one joined into a second, the other joined into a third.
        Dictionary<Guid, Guid> all = joinedHere.Concat(_joinedInFile).ToDictionary();
        joinedHere = joinedHere.ToDictionary(pair => pair.Key, pair => End(pair.Value, all));
        _joinedInFile = _joinedInFile.ToDictionary(pair => pair.Key, pair => End(pair.Value, all));
        _joinedHere = [.. joinedHere.Keys];
        _givenInFile = Given(_file, joinedHere.Keys);
        _givenHere = Given(_here, _joinedInFile.Keys);
        _file.Redirect(joinedHere);
        _here.Redirect(_joinedInFile);
        _newsInFile = News(_file, _here);
        _newsHere = News(_here, _file);
    }

    /// <summary>Compares a shared record with a logbook.</summary>
    /// <param name="here">The logbook.</param>
    /// <param name="file">The shared record.</param>
    /// <param name="today">The day: outings of a later one are refused, as they are when typed; where it is not told, any day is
    /// believed.</param>
    /// <exception cref="LogbookException">The logbook cannot be read, an outing's day cannot be believed, or an id in the file belongs to
    /// something else here.</exception>
    public static MergePlan Plan(LogbookFile here, SharedRecord file, DateOnly? today = null)
    {
        if (today is DateOnly day && file.Contents.Outings.Select(outing => Plausible.ProblemWithDate(outing.Date, day))
            .FirstOrDefault(problem => problem is not null) is string wrong)
            throw new LogbookException($"The record holds an outing that cannot be right: {wrong.TrimEnd('.')}; nothing was merged.");
        return new Merge(RecordSet.Of(here), RecordSet.Of(file.Contents)).Plan(file);
    }

    /// <summary>What names a paddler whom the other side joined into another, with that paddler.</summary>
    private static Dictionary<Guid, Guid> Given(RecordSet side, IReadOnlyCollection<Guid> joined) => joined.Count == 0 ? []
        : side.Items.Values.Where(item => item is not SharedPiece && item.Container() is Guid on && joined.Contains(on)
            && side.Items.GetValueOrDefault(on) is SharedPaddler).ToDictionary(item => item.Id, item => item.Container()!.Value);

    private MergePlan Plan(SharedRecord file)
    {
        foreach (SharedItem item in _file.Items.Values.Where(item => !_joinedHere.Contains(item.Id)).OrderBy(Rank).ToList())
        {
            if (!_here.Items.TryGetValue(item.Id, out SharedItem? mine))
                Arrive(item);
            else if (mine.GetType() != item.GetType())
                throw new LogbookException($"In the record, the id of {Name(_file, item)} belongs to a {mine.Kind()} of this logbook; " +
                    $"nothing was merged: ask for the record again.");
            else
                Compare(mine, item);
        }

        foreach (Guid outing in _orders.Keys)
            AskOrder(outing);
        foreach (Guid id in _givenHere.Keys.Where(id => !_file.Items.ContainsKey(id)))
            _steps.Add(new MergeStep(MergeStepKind.Learn, _here.Items[id].Kind()) { Always = [.. Marked(_here, id)] });
        foreach (
            Guid id in _file.Removed.Keys.OrderBy(
            id => _here.Items.TryGetValue(id, out SharedItem? item) ? Rank(item) : int.MaxValue).ToList())
            Leave(id);
        return new MergePlan(_here, file.Contents, _standby, _joinedInFile, _steps, _remarks, _same);
    }

    /// <summary>A record that is in the file and not here.</summary>
    private void Arrive(SharedItem item)
    {
        Guid? container = _file.ContainerOf(item);
        bool removed = _here.Removed.ContainsKey(item.Id);
        var put = new PutRecord(item, item is SharedPiece ? container : null);
        if (container is Guid asked && _asked.TryGetValue(asked, out MergeStep? question))
        {
            Follow(question);
        }
        else if (container is Guid whose && _whose.TryGetValue(whose, out MergeStep? comes))
        {
            Come(comes, put, put);
        }
        else if (container is Guid gone && _staysRemoved.Contains(gone))
        {
            _staysRemoved.Add(item.Id);
        }
        else if (!removed || KnowsRemoval(_file, _here, item.Id) || _bothJoined.Contains(item.Id))
        {
            // New; or back again there, by somebody who knew that it was removed.
            if (container is Guid named && OtherOwner(item, named) is Guid other)
            {
                AskWhose(item, named, other);
                return;
            }

            MergeStep step = Added();
            if (_bothJoined.Contains(item.Id))
                step.Always.Add(new LearnEdits(item.Id, RecordFields.Presence, Nothing, Decided: true));
            if (!removed && item is NamedItem one && SameNamed(one) is NamedItem same)
                _steps[^1] = step
                    with
                {
                    MayBe = same.Id,
                    Question = new MergeQuestion(item.Id, MergeQuestionKind.SameName, Name(_file, item),
                    $"“{_here.ShownNames[same.Id]}” is here", $"“{one.Name}” is in the file"),
                    Kind = MergeStepKind.Add
                };
        }
        else if (item is SharedHull or SharedPaddle)
        {
            _standby.Add(item.Id, item);
        }
        else if (_file.TellsEdits && _file.Edits.All(item.Id).IsSubsetOf(_here.Edits.All(item.Id)) && !_newsInFile.Contains(item.Id))
        {
            _staysRemoved.Add(item.Id);
            _same++;
        }
        else
        {
            question = new MergeStep(MergeStepKind.Ask, item.Kind())
            {
                Question = new MergeQuestion(item.Id, MergeQuestionKind.RemovedHere,
                    $"{Name(_file, item)}{(item is SharedPaddler ? ", with all that is theirs" : "")}", "removed", "still there"),
            };
            _steps.Add(question);
            Follow(question);
        }

        MergeStep Added()
        {
            var step = new MergeStep(MergeStepKind.Add, item.Kind());
            step.Always.Add(put);
            step.Always.AddRange(Back(item.Id));
            step.Always.AddRange(Marked(_file, item.Id));
            _steps.Add(step);
            return step;
        }

        void Follow(MergeStep step)
        {
            step.IfTaken.Add(put);
            step.IfTaken.AddRange(Back(item.Id));
            step.IfTaken.AddRange(Marked(_file, item.Id));
            step.IfKept.AddRange(Learnt(item.Id));
            step.IfTaken.Add(new LearnEdits(item.Id, RecordFields.Presence, Nothing, Decided: removed));
            step.IfKept.Add(new LearnEdits(item.Id, RecordFields.Presence, Nothing, Decided: true));
            _asked[item.Id] = step;
        }
    }

    /// <summary>
    /// Whose a record that comes is by this logbook, where it joined the paddler under whom the record was logged into another than the
    /// file did, and nobody has said since whose it is; null where there is no doubt.
    /// </summary>
    private Guid? OtherOwner(SharedItem item, Guid named)
    {
        foreach (Guid gone in LoggedUnder(_file, item))
        {
            Guid? into = gone;
            for (int i = 0; i < 100 && into is Guid next && !_here.Items.ContainsKey(next); i++)
                into = _here.Removed.GetValueOrDefault(next);
            if (into is Guid became && _joinedInFile.GetValueOrDefault(became, became) is var owner && owner != named
                && _here.Items.ContainsKey(owner))
                return owner;
        }

        return null;
    }

    private void AskWhose(SharedItem item, Guid there, Guid here)
    {
        string field = Naming(item);
        var step = new MergeStep(MergeStepKind.Ask, item.Kind())
        {
            Question = new MergeQuestion(item.Id, MergeQuestionKind.EditedOnBoth, Name(_file, item),
                $"{field} {Quoted.Brief(NameOf(here) ?? "", 200)}", $"{field} {Quoted.Brief(NameOf(there) ?? "", 200)}"),
        };
        Come(step, new PutRecord(item, null), new PutRecord(RecordSet.Redirected(item, there, here), null));
        var decided = new LearnEdits(item.Id, field, _file.Edits.Of(item.Id, field), Decided: true);
        step.IfTaken.Add(decided);
        step.IfKept.Add(decided);
        _whose[item.Id] = step;
        _steps.Add(step);
    }

    private void Come(MergeStep step, PutRecord taken, PutRecord kept)
    {
        step.IfTaken.Add(taken);
        step.IfTaken.AddRange(Back(taken.Id));
        step.IfKept.Add(kept);
        step.IfKept.AddRange(Back(taken.Id));
        _whose[taken.Id] = step;
    }

    /// <summary>The field that names the paddler whom a record belongs to.</summary>
    private static string Naming(SharedItem item) => item is SharedNote ? "about" : "paddler";

    private IEnumerable<LearnEdits> Marked(RecordSet side, Guid id)
    {
        if ((side == _here ? _givenHere : _givenInFile).TryGetValue(id, out Guid from))
            yield return Mark(id, [from], side.Edits.Of(id, Naming(side.Items[id])));
    }

    private static LearnEdits Mark(Guid id, IEnumerable<Guid> loggedUnder, IReadOnlySet<long> edits) =>
        new(id, RecordFields.Origin, loggedUnder.Select(gone => Origin.Mark(gone, edits)).ToHashSet());

    /// <summary>The paddlers who are gone and under whom a side has a record, by its newest edits.</summary>
    private IEnumerable<Guid> LoggedUnder(RecordSet side, SharedItem item)
    {
        IReadOnlySet<long> marks = side.Edits.Of(item.Id, RecordFields.Origin), edits = side.Edits.Of(item.Id, Naming(item));
        IEnumerable<Guid> marked = marks.Count == 0 ? []
            : _here.Removed.Concat(_file.Removed).Where(gone => gone.Value is not null).Select(gone => gone.Key).Distinct()
                .Where(gone => marks.Contains(Origin.Mark(gone, edits)));
        return (side == _here ? _givenHere : _givenInFile).TryGetValue(item.Id, out Guid given) ? marked.Append(given) : marked;
    }

    /// <summary>A record that was removed in the file.</summary>
    private void Leave(Guid id)
    {
        if (!_here.Items.TryGetValue(id, out SharedItem? item))
        {
            Learn(id, "");
            if (_file.Removed[id] is Guid became && _here.Removed.GetValueOrDefault(id) is null)
                _steps.Add(new MergeStep(MergeStepKind.Learn, "") { Always = [new LearnJoin(id, became)] });
            return;
        }

        if (_bothJoined.Contains(id))
        {
            _steps.Add(
                new MergeStep(MergeStepKind.Learn,
                item.Kind())
                { Always = [.. LearntOfPresence(id), new LearnEdits(id, RecordFields.Presence, Nothing, Decided: true)] });
            return;
        }

        if (_joinedInFile.TryGetValue(id, out Guid into))
        {
            Remove(id, item, $"{Name(_here, item)} was joined into {(NameOf(into) is { } name ? $"“{name}”" : "another")} " +
                $"there, and so it is here.");
            return;
        }

        if (KnowsRemoval(_here, _file, id))
            return;
        Guid? container = _here.ContainerOf(item);
        if (container is Guid gone && _removes.Contains(gone))
        {
            // Counted with what it hangs on.
            _removes.Add(id);
            _steps.Add(new MergeStep(MergeStepKind.Learn, item.Kind()) { Always = [new RemoveRecord(id), .. Learnt(id)] });
            return;
        }

        if (container is Guid asked && _asked.TryGetValue(asked, out MergeStep? question))
        {
            Follow(question);
            return;
        }

        bool known = _here.Edits.All(id).IsSubsetOf(_file.Edits.All(id)) && !_newsHere.Contains(id);
        if (known)
        {
            Remove(id, item, $"{Name(_here, item)} was removed there, and so it is here.");
        }
        else if (item is not (SharedHull or SharedPaddle))
        {
            question = new MergeStep(MergeStepKind.Ask, item.Kind())
            {
                Question = new MergeQuestion(id, MergeQuestionKind.RemovedInFile,
                    $"{Name(_here, item)}{(item is SharedPaddler ? ", with all that is theirs" : "")}", "still there", "removed"),
            };
            _steps.Add(question);
            Follow(question);
        }

        void Follow(MergeStep step)
        {
            step.IfTaken.Add(new RemoveRecord(id));
            step.IfTaken.AddRange(Learnt(id));
            step.IfTaken.Add(new LearnEdits(id, RecordFields.Presence, Nothing, Decided: true));
            step.IfKept.AddRange(LearntOfPresence(id));
            step.IfKept.Add(new LearnEdits(id, RecordFields.Presence, Nothing, Decided: true));
            _asked[id] = step;
        }
    }

    private void Remove(Guid id, SharedItem item, string told)
    {
        _removes.Add(id);
        var step = new MergeStep(MergeStepKind.Remove, item.Kind());
        step.Always.Add(new RemoveRecord(id));
        step.Always.AddRange(Learnt(id));
        _steps.Add(step);
        _remarks.Add(char.ToUpperInvariant(told[0]) + told[1..]);
    }

    /// <summary>A record that is in both.</summary>
    private void Compare(SharedItem mine, SharedItem theirs)
    {
        // Most records are the same on both sides; fields are only taken apart where they are not.
        if (_here.ContainerOf(mine) == _file.ContainerOf(theirs) && mine.ToText() == theirs.ToText() && !Learnt(mine.Id).Any()
            && !_givenHere.ContainsKey(mine.Id) && !_givenInFile.ContainsKey(mine.Id))
        {
            _same++;
            return;
        }

        ItemFields ours = _here.FieldsOf(mine.Id), other = _file.FieldsOf(theirs.Id);
        List<string> taken = [], asked = [];
        List<LearnEdits> learnt = [];
        string naming = Naming(theirs);
        SharedItem? whose = Otherwise(mine, theirs);
        foreach (string field in RecordFields.ByTable[mine.Table()].Select(pair => pair.Field).Distinct())
        {
            if (_file.IsUntold(theirs, field))
                continue;
            IReadOnlySet<long> myEdits = _here.Edits.Of(mine.Id, field), theirEdits = _file.Edits.Of(mine.Id, field);
            string? my = ours[field], their = other[field];
            bool news = !theirEdits.IsSubsetOf(myEdits);
            if (whose is not null && field == naming)
            {
                asked.Add(field);
                continue;
            }

            if (my == their)
            {
                if (news)
                    learnt.Add(new LearnEdits(mine.Id, field, theirEdits));
                continue;
            }

            switch (Newer(my, myEdits, their, theirEdits))
            {
                case true:
                    taken.Add(field);
                    learnt.Add(new LearnEdits(mine.Id, field, theirEdits));
                    break;
                case null when mine is SharedPiece && field == "order":
                    (_orders.TryGetValue(_here.OutingOf[mine.Id], out var orders) ? orders : _orders[_here.OutingOf[mine.Id]] = [])
                        .Add((mine.Id, ((SharedPiece)mine).Order, ((SharedPiece)theirs).Order));
                    break;
                case null:
                    asked.Add(field);
                    break;
            }
        }

        if (!_file.Edits.Of(mine.Id, RecordFields.Presence).IsSubsetOf(_here.Edits.Of(mine.Id, RecordFields.Presence)))
            learnt.Add(new LearnEdits(mine.Id, RecordFields.Presence, _file.Edits.Of(mine.Id, RecordFields.Presence)));

        if (!asked.Contains(naming))
            learnt.AddRange(MarkedOnBoth(mine, theirs));
        ItemFields merged = ours.With(taken, other);
        if (!IsSound(merged) || (asked.Count > 0 && !IsSound(ours.With([.. taken, .. asked], other))))
        {
            // Each side's version is sound and their mixture is not: then it is all or nothing.
            asked = [.. asked, .. taken];
            learnt.RemoveAll(one => taken.Contains(one.Field));
            taken = [];
            merged = ours;
        }

        if (taken.Count > 0)
        {
            var step = new MergeStep(MergeStepKind.Update, mine.Kind());
            step.Always.Add(Put(merged));
            step.Always.AddRange(learnt);
            _steps.Add(step);
        }
        else
        {
            _same += asked.Count == 0 ? 1 : 0;
            if (learnt.Count > 0)
                _steps.Add(new MergeStep(MergeStepKind.Learn, mine.Kind()) { Always = [.. learnt] });
        }

        if (asked.Count > 0)
        {
            MergeStep step = AskFields(mine, merged, whose is null ? ours : ours.With([naming], new ItemFields(whose, null)), other, asked);
            if (whose is not null)
                step.IfKept.Add(Put(merged.With([naming], new ItemFields(whose, null))));
        }
    }

    /// <summary>
    /// A record that is in both, with the owner whom this logbook means by what is newer in the file; null where that is the file's owner.
    /// </summary>
    private SharedItem? Otherwise(SharedItem mine, SharedItem theirs)
    {
        string field = Naming(theirs);
        IReadOnlySet<long> edits = _file.Edits.Of(mine.Id, field), known = _here.Edits.Of(mine.Id, field);
        if (theirs is SharedPiece || theirs.Container() is not Guid there || edits.IsSubsetOf(known)
            || OtherOwner(theirs, there) is not Guid other)
            return null;
        return mine.Container() is Guid now && now != other ? RecordSet.Redirected(mine, now, other) : mine;
    }

    /// <summary>
    /// The marks of a record that is in both and of whose owner nothing is asked: of those under whom either side has it by edits that the
    /// other does not build upon.
    /// </summary>
    private IEnumerable<LearnEdits> MarkedOnBoth(SharedItem mine, SharedItem theirs)
    {
        if (mine is SharedPiece || mine.Container() is null || !_file.TellsEdits)
            return [];
        IReadOnlySet<long> known = _here.Edits.Of(mine.Id, Naming(mine)), edits = _file.Edits.Of(mine.Id, Naming(mine));
        HashSet<Guid> gone = [];
        if (known.SetEquals(edits) || !known.IsSubsetOf(edits))
            gone.UnionWith(LoggedUnder(_here, mine));
        if (known.SetEquals(edits) || !edits.IsSubsetOf(known))
            gone.UnionWith(LoggedUnder(_file, theirs));
        LearnEdits marks = Mark(mine.Id, gone, known.Union(edits).ToHashSet());
        return marks.Edits.IsSubsetOf(_here.Edits.Of(mine.Id, RecordFields.Origin)) ? [] : [marks];
    }

    /// <summary>Whether the file's value is the newer: null where the user has to say.</summary>
    private bool? Newer(string? mine, IReadOnlySet<long> myEdits, string? theirs, IReadOnlySet<long> theirEdits)
    {
        if (!_file.TellsEdits)
            return theirs is null ? false : mine is null && myEdits.Count == 0 ? true : null;
        if (myEdits.SetEquals(theirEdits))
            return mine is null ? true : theirs is null ? false : null;
        return theirEdits.IsSubsetOf(myEdits) ? false : myEdits.IsSubsetOf(theirEdits) ? true : null;
    }

    private MergeStep AskFields(SharedItem mine, ItemFields merged, ItemFields ours, ItemFields other, List<string> asked)
    {
        var step = new MergeStep(MergeStepKind.Ask, mine.Kind())
        {
            Question = new MergeQuestion(mine.Id, MergeQuestionKind.EditedOnBoth, Name(_here, mine), Said(ours, _here), Said(other, _file)),
        };
        step.IfTaken.Add(Put(merged.With(asked, other)));
        foreach (string field in asked)
        {
            var decided = new LearnEdits(mine.Id, field, _file.Edits.Of(mine.Id, field), Decided: true);
            step.IfTaken.Add(decided);
            step.IfKept.Add(decided);
        }

        _steps.Add(step);
        return step;

        string Said(ItemFields side, RecordSet set) => string.Join(", ", asked.Order(StringComparer.Ordinal).Select(field =>
            (field is "run" or "card" or "check" or "note" or "clearance" or "decision" or "range" ? "" : field.Replace('_', ' ') + " ")
            + (side.Said(field, id => set == _here ? NameOf(id) : (set.Items.GetValueOrDefault(id) as NamedItem)?.Name ?? NameOf(id))
                is { } value ? Quoted.Brief(value, 200) : set.Edits.Of(mine.Id, field).Count > 0 ? "cleared" : "not known")));
    }

    private void AskOrder(Guid outing)
    {
        SharedItem item = _here.Items[outing];
        List<(Guid Piece, int Here, int InFile)> pieces = _orders[outing];
        var step = new MergeStep(MergeStepKind.Ask, item.Kind())
        {
            Question = new MergeQuestion(pieces[0].Piece, MergeQuestionKind.PieceOrder, $"the order of the pieces of {Name(_here, item)}",
                Lengths(pieces.OrderBy(piece => piece.Here)), Lengths(pieces.OrderBy(piece => piece.InFile))),
        };
        foreach ((Guid piece, _, int inFile) in pieces)
        {
            step.IfTaken.Add(new OrderPiece(piece, inFile));
            var decided = new LearnEdits(piece, "order", _file.Edits.Of(piece, "order"), Decided: true);
            step.IfTaken.Add(decided);
            step.IfKept.Add(decided);
        }

        _steps.Add(step);

        string Lengths(IEnumerable<(Guid Piece, int Here, int InFile)> order) => string.Join(", ",
            order.Select(one => (SharedPiece)_here.Items[one.Piece]).Select(piece => $"{piece.LengthIn} in ({piece.Time})"));
    }

    /// <summary>Whether a side knows of the other's removal of a record that it has, and has it regardless.</summary>
    private static bool KnowsRemoval(RecordSet having, RecordSet removed, Guid id) =>
        having.TellsEdits && removed.Edits.Of(id, RecordFields.Presence).IsSubsetOf(having.Edits.Of(id, RecordFields.Presence));

    /// <summary>The records that one side joined into others and the other side still has.</summary>
    private static Dictionary<Guid, Guid> Joined(RecordSet side, RecordSet other)
    {
        var joined = new Dictionary<Guid, Guid>();
        foreach ((Guid id, Guid? into) in side.Removed)
        {
            Guid? to = into;
            for (int i = 0; i < 100 && to is Guid next && !side.Items.ContainsKey(next); i++)
                to = side.Removed.GetValueOrDefault(next);
            if (to is Guid found && side.Items.ContainsKey(found) && other.Items.ContainsKey(id) && !KnowsRemoval(other, side, id))
                joined.Add(id, found);
        }

        return joined;
    }

    private static Guid End(Guid id, Dictionary<Guid, Guid> joined)
    {
        for (int i = 0; i < 100 && joined.TryGetValue(id, out Guid into); i++)
            id = into;
        return id;
    }

    /// <summary>Records of one side on which something hangs that the other side does not know, or knows elsewhere.</summary>
    private static HashSet<Guid> News(RecordSet side, RecordSet other)
    {
        var news = new HashSet<Guid>();
        foreach (SharedItem item in side.Items.Values)
        {
            Guid? container = side.ContainerOf(item);
            bool known = other.Items.TryGetValue(item.Id, out SharedItem? there) ? other.ContainerOf(there) == container
                : other.Removed.ContainsKey(item.Id) && side.TellsEdits && side.Edits.All(item.Id).IsSubsetOf(other.Edits.All(item.Id));
            if (known)
                continue;
            for (; container is Guid on && news.Add(on) && side.Items.TryGetValue(on, out SharedItem? above);
                container = side.ContainerOf(above))
            {
            }
        }

        return news;
    }

    private NamedItem? SameNamed(NamedItem item)
    {
        // A file that holds both has told them apart already.
        List<NamedItem> here = [.. _here.Items.Values.OfType<NamedItem>()
            .Where(other => other.GetType() == item.GetType() && !_file.Items.ContainsKey(other.Id))];
        return here.FirstOrDefault(other => other.Name.Equals(item.Name, StringComparison.OrdinalIgnoreCase))
            ?? (new CloseNames(here.Select(other => other.Name)).To(item.Name) is { } close
                ? here.First(other => other.Name == close) : null);
    }

    private IEnumerable<LearnEdits> Learnt(Guid id) =>
        _file.Edits.Fields(id).Select(field => new LearnEdits(id, field, _file.Edits.Of(id, field)))
            .Where(learn => !learn.Edits.IsSubsetOf(_here.Edits.Of(id, learn.Field)));

    // What stays here though it was removed there is as it is here: what was edited there before the removal went with it.
    private IEnumerable<LearnEdits> LearntOfPresence(Guid id) => Learnt(id).Where(learn => learn.Field == RecordFields.Presence);

    /// <summary>What is to be known of a record that comes; where it had been removed here, as it is there and no more.</summary>
    private IEnumerable<MergeWrite> Back(Guid id) => !_here.Removed.ContainsKey(id) ? Learnt(id)
        : _file.Edits.Fields(id).Select(MergeWrite (field) => new LearnEdits(id, field, _file.Edits.Of(id, field)))
            .Prepend(new ForgetEdits(id));

    private void Learn(Guid id, string kind)
    {
        List<MergeWrite> learnt = [.. Learnt(id)];
        if (learnt.Count > 0)
            _steps.Add(new MergeStep(MergeStepKind.Learn, kind) { Always = learnt });
    }

    private static readonly HashSet<long> Nothing = [];

    private static PutRecord Put(ItemFields fields) => new(fields.ToItem(), fields.OutingId);

    private static bool IsSound(ItemFields fields)
    {
        try
        {
            SharedCheck.CheckAlone(fields.ToItem());
            return true;
        }
        catch (InvalidValueException)
        {
            return false;
        }
    }

    private static int Rank(SharedItem item) => item switch
    {
        SharedHull => 0,
        SharedPaddler => 1,
        SharedPaddle => 2,
        SharedOuting => 3,
        SharedPiece => 4,
        SharedCard => 5,
        SharedNote => 7,
        _ => 6,
    };

    private string? NameOf(Guid id) => _here.ShownNames.GetValueOrDefault(id) ?? (_file.Items.GetValueOrDefault(id) as NamedItem)?.Name;

    private string Name(RecordSet side, SharedItem item)
    {
        string whose = item.Container() is Guid id && NameOf(id) is { } name ? $"{name}'s " : "a ";
        return item switch
        {
            NamedItem named => $"the {named.Kind()} “{(side == _here ? _here.ShownNames[named.Id] : named.Name)}”",
            SharedOuting outing => $"{whose}outing of {outing.Date:yyyy-MM-dd}{(outing.Label is null ? "" : $" “{outing.Label}”")}",
            SharedPiece piece => $"piece {piece.Order} of {Name(side, side.Items[side.OutingOf[piece.Id]])}",
            SharedCard card => $"{whose}trial card of {card.GivenAt:yyyy-MM-dd}",
            SharedTechniqueCheck check => $"{whose}technique check of {check.Date:yyyy-MM-dd}",
            SharedSorenessClearance clearance => $"the word of {clearance.Date:yyyy-MM-dd} that {whose}soreness is gone",
            SharedDecision decision => $"{whose}decision of {decision.Date:yyyy-MM-dd}",
            SharedNote note => $"{note.Author}'s note of {note.WrittenAt:yyyy-MM-dd}",
            _ => item.Kind(),
        };
    }
}
