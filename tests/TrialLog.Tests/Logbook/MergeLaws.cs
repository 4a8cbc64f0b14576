using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Shared;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Logbook;

/// <summary>What merging promises, over random logbooks that were one and went separate ways.</summary>
public class MergeLaws
{
    private static readonly Gen<Action<LogbookModel, LogbookWriter>[]> Writes = RandomWrites.PutOrRemove.Array[0, 12];

    private static void Do(LogbookFile log, LogbookModel model, Action<LogbookModel, LogbookWriter>[] writes)
    {
        foreach (var write in writes)
            log.Change("Wrote", writer => write(model, writer));
    }

    private static SharedRecord Share(LogbookFile log, LeftOut leftOut = LeftOut.Nothing)
    {
        using var file = new MemoryStream();
        Sharing.Write(log, new ShareOptions(LeftOut: leftOut), file);
        file.Position = 0;
        return Sharing.Read(file);
    }

    private static MergePlan Merged(LogbookFile log, SharedRecord record, Func<MergeQuestion, MergeChoice>? choose = null)
    {
        MergePlan plan = Merge.Plan(log, record);
        plan.Apply(log, choose ?? (question => throw new InvalidOperationException(question.ToString())));
        return plan;
    }

    // Decides alike on whichever side the merge is done.
    private static MergeChoice Evenly(MergeQuestion question) => question.Kind switch
    {
        MergeQuestionKind.RemovedHere => MergeChoice.TakeFromFile,
        MergeQuestionKind.RemovedInFile => MergeChoice.KeepHere,
        _ => string.CompareOrdinal(question.Here, question.InFile) < 0 ? MergeChoice.TakeFromFile : MergeChoice.KeepHere,
    };

    // The order of an outing's pieces and a card's change number are each logbook's own, and equipment that was removed and is not needed
    // stays away.
    private static string Comparable(LogbookSnapshot log, ISet<Guid> equipment) => LogbookModel.Text(log with
    {
        Hulls = [.. log.Hulls.Where(hull => equipment.Contains(hull.Id))],
        Paddles = [.. log.Paddles.Where(paddle => equipment.Contains(paddle.Id))],
        Outings = [
            .. log.Outings.Select(
            outing => outing with { Pieces = [.. outing.Pieces.OrderBy(piece => piece.Id).Select(piece => piece with { Order = 1 })] })],
        Cards = [.. log.Cards.Select(card => card with { AsOfChange = 0 })],
    });

    private static HashSet<Guid> Equipment(LogbookSnapshot log) =>
        [.. log.Hulls.Select(hull => hull.Id), .. log.Paddles.Select(paddle => paddle.Id)];

    [Fact]
    public void A_record_merged_into_a_new_logbook_is_all_there_and_merging_again_changes_nothing() => Writes.Sample(writes =>
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.OpenHastily("mine"), theirs = folder.OpenHastily("theirs");
        Do(theirs, LogbookModel.New(), writes);
        SharedRecord record = Share(theirs);
        Merged(mine, record);
        LogbookSnapshot there = theirs.Everything();
        HashSet<Guid> equipment = Equipment(there);
        Assert.Equal(Comparable(there, equipment), Comparable(mine.Everything(), equipment));
        long change = mine.LastChange;
        Assert.True(Merged(mine, record).ChangesNothing);
        Assert.Equal(change, mine.LastChange);

        // And handed back: nothing lost, nothing doubled.
        Assert.True(Merged(theirs, Share(mine)).Steps.All(step => step.ItemKind is "hull" or "paddle" || step.Kind == MergeStepKind.Learn));
    }, iter: 150);

    [Fact]
    public void Diverged_copies_merge_to_the_same_whichever_side_does_it_and_lose_nothing() =>
        Gen.Select(Writes, Writes, Writes).Sample((earlier, here, there) =>
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.OpenHastily("mine"), theirs = folder.OpenHastily("theirs");
        LogbookModel model = LogbookModel.New();
        Do(theirs, model, earlier);
        Merged(mine, Share(theirs), Evenly);
        Dictionary<Guid, string> common = Each(mine.Everything());
        LogbookModel myModel = ModelOf(mine), theirModel = ModelOf(theirs);
        Do(mine, myModel, here);
        Do(theirs, theirModel, there);

        SharedRecord fromMine = Share(mine), fromTheirs = Share(theirs);
        LogbookSnapshot mineBefore = mine.Everything(), theirsBefore = theirs.Everything();
        HashSet<Guid> removedOnASide = [.. RecordSet.Of(mine).Removed.Keys, .. RecordSet.Of(theirs).Removed.Keys];
        MergePlan plan = Merged(mine, fromTheirs, Evenly);
        Merged(theirs, fromMine, Evenly);

        LogbookSnapshot one = mine.Everything(), other = theirs.Everything();
        HashSet<Guid> both = Equipment(one);
        both.IntersectWith(Equipment(other));
        Assert.Equal(Comparable(one, both), Comparable(other, both));

        // What is gone was removed on one side, and on the other nothing was done to it.
        HashSet<Guid> kept = [.. Each(one).Keys];
        Dictionary<Guid, string> wasMine = Each(mineBefore), wasTheirs = Each(theirsBefore);
        foreach ((Guid id, string record) in wasMine.Concat(wasTheirs).Where(had => !kept.Contains(had.Key) && !both.Contains(had.Key)))
        {
            Assert.False(wasMine.ContainsKey(id) && wasTheirs.ContainsKey(id));

            // Ids meet here as they do not in life: the same one may be made on both sides and removed on one.
            if (common.TryGetValue(id, out string? before))
                Assert.Equal(before, record);
            else
                Assert.Contains(id, removedOnASide);
        }

        Assert.All(one.Outings, outing => Assert.Equal(outing.Pieces.Count, outing.Pieces.Select(piece => piece.Order).Distinct().Count()));

        // All has been decided, so the same file has nothing more to say except how pieces were ordered there.
        Assert.All(Merge.Plan(mine, fromTheirs).Steps, step => Assert.NotEqual(MergeStepKind.Add, step.Kind));
        if (!plan.ChangesNothing && mine.LastChange > 0 && mine.Changes(1)[0].What.StartsWith("Merged"))
        {
            mine.Undo();
            Assert.Equal(LogbookModel.Text(mineBefore), LogbookModel.Text(mine.Everything()));
        }
    }, iter: 150);

    [Fact]
    public void What_was_left_out_never_overwrites_what_is_known() => Gen.Select(Writes, Gen.Int[1, 7]).Sample((writes, leftOut) =>
    {
        using var folder = new ScratchFolder();
        using LogbookFile mine = folder.OpenHastily("mine"), theirs = folder.OpenHastily("theirs");
        Do(mine, LogbookModel.New(), writes);
        string before = LogbookModel.Text(mine.Everything());

        // To someone else without it, and back from them in full.
        SharedRecord without = Share(mine, (LeftOut)leftOut);
        Assert.True(Merge.Plan(mine, without).ChangesNothing);
        Merged(theirs, without);
        LogbookSnapshot passedOn = theirs.Everything();
        if (((LeftOut)leftOut).HasFlag(LeftOut.Notes))
            Assert.True(passedOn.Notes.Count == 0
                && passedOn.Outings.All(outing => outing.Notes is null && outing.Pieces.All(piece => piece.Notes is null)));
        if (((LeftOut)leftOut).HasFlag(LeftOut.HeartRate))
            Assert.All(passedOn.Outings.SelectMany(outing => outing.Pieces), piece => Assert.Null(piece.HeartRate));
        if (((LeftOut)leftOut).HasFlag(LeftOut.BodyMeasures))
            Assert.All(passedOn.Paddlers, paddler => Assert.Equal(BodyMeasures.Unknown, paddler.Body));
        Merged(mine, Share(theirs), _ => MergeChoice.TakeFromFile);
        Assert.Equal(before, LogbookModel.Text(mine.Everything() with { Hulls = mine.AsOf(mine.LastChange).Hulls }));
    }, iter: 150);

    /// <summary>Each record as text, but for what another record's removal takes from it.</summary>
    private static Dictionary<Guid, string> Each(LogbookSnapshot log)
    {
        var each = new Dictionary<Guid, string>();
        foreach (Paddler x in log.Paddlers)
            each[x.Id] = LogbookModel.Text(new LogbookSnapshot { Paddlers = [x] });
        foreach (Outing x in log.Outings)
        {
            each[x.Id] = LogbookModel.Text(new LogbookSnapshot { Outings = [x with { Pieces = [] }] });
            foreach (Piece piece in x.Pieces)
                each[piece.Id] = LogbookModel.Text(new LogbookSnapshot { Outings = [x with { Pieces = [piece with { Order = 1 }] }] });
        }
        foreach (GivenCard x in log.Cards)
            each[x.Id] = LogbookModel.Text(new LogbookSnapshot { Cards = [x with { PaddledAs = null, AsOfChange = 0 }] });
        foreach (TechniqueCheck x in log.TechniqueChecks)
            each[x.Id] = LogbookModel.Text(new LogbookSnapshot { TechniqueChecks = [x] });
        foreach (SorenessClearance x in log.SorenessClearances)
            each[x.Id] = LogbookModel.Text(new LogbookSnapshot { SorenessClearances = [x] });
        foreach (Decision x in log.Decisions)
            each[x.Id] = LogbookModel.Text(new LogbookSnapshot { Decisions = [x] });
        foreach (CoachNote x in log.Notes)
            each[x.Id] = LogbookModel.Text(new LogbookSnapshot { Notes = [x] });
        return each;
    }

    private static LogbookModel ModelOf(LogbookFile log)
    {
        LogbookSnapshot all = log.Everything();
        return new LogbookModel
        {
            Hulls = all.Hulls.ToDictionary(x => x.Id),
            Paddlers = all.Paddlers.ToDictionary(x => x.Id),
            Paddles = all.Paddles.ToDictionary(x => x.Id),
            Outings = all.Outings.ToDictionary(x => x.Id),
            Cards = all.Cards.ToDictionary(x => x.Id),
            Checks = all.TechniqueChecks.ToDictionary(x => x.Id),
            Clearances = all.SorenessClearances.ToDictionary(x => x.Id),
            Decisions = all.Decisions.ToDictionary(x => x.Id),
            Notes = all.Notes.ToDictionary(x => x.Id),
        };
    }
}
