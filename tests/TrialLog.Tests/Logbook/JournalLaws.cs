using CsCheck;
using TrialLog.Domain;
using TrialLog.Logbook;
using static TrialLog.Tests.Logbook.RandomRecords;

namespace TrialLog.Tests.Logbook;

/// <summary>Whatever is put, removed, undone and redone, in any order: the logbook agrees with plain dictionaries, now and as of every change.</summary>
public class JournalLaws
{
    private abstract record Step;
    private sealed record Write(IReadOnlyList<Action<LogbookModel, LogbookWriter>> What) : Step;
    private sealed record UndoStep : Step;
    private sealed record RedoStep : Step;
    private sealed record Reopen : Step;

    private static readonly Gen<Guid> PaddlerId = Gen.Int[0, 2].Select(i => Id(1, i));
    private static readonly Gen<Guid> PaddleId = Gen.Int[0, 2].Select(i => Id(2, i));
    private static readonly Gen<Guid> HullId = Gen.Int[0, 4].Select(i => i < 3 ? StandardHulls.All[i].Id : Id(3, i));
    private static readonly Gen<Guid> OutingId = Gen.Int[0, 4].Select(i => Id(4, i));
    private static readonly Gen<Guid> CardId = Gen.Int[0, 3].Select(i => Id(5, i));
    private static readonly Gen<Guid> CheckId = Gen.Int[0, 2].Select(i => Id(6, i));
    private static readonly Gen<Guid> NoteId = Gen.Int[0, 3].Select(i => Id(7, i));

    // What a record refers to is put along with it, so that no step is refused.
    private static void Ensure(LogbookModel model, LogbookWriter writer, Guid paddler, Guid hull, IEnumerable<Guid> paddles)
    {
        if (!model.Hulls.ContainsKey(hull))
            Put(model, writer, new Hull { Id = hull, Name = $"Hull {hull}", Crew = 3 });
        if (!model.Paddlers.ContainsKey(paddler))
            Put(model, writer, new Paddler { Id = paddler, Name = $"Tova {paddler}" });
        foreach (Guid id in paddles.Where(id => !model.Paddles.ContainsKey(id)))
            writer.Put(model.Paddles[id] = new Paddle { Id = id, Name = $"Paddle {id}", Blade = Length.Parse("18in"), Shortest = Length.Parse("48in"), Longest = Length.Parse("53in"), Step = Length.Parse("1/4") });
    }

    private static void Put(LogbookModel model, LogbookWriter writer, Hull hull) => writer.Put(model.Hulls[hull.Id] = hull);

    private static void Put(LogbookModel model, LogbookWriter writer, Paddler paddler) => writer.Put(model.Paddlers[paddler.Id] = paddler);

    private static readonly Gen<Action<LogbookModel, LogbookWriter>> PutOrRemove = Gen.Frequency(
        (2, Hull(HullId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) => Put(model, writer, x)))),
        (2, Paddle(PaddleId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) => writer.Put(model.Paddles[x.Id] = x)))),
        (2, Paddler(PaddlerId, Gen.Const(StandardHulls.All[1].Id)).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            if (x.Goal is not null && !model.Hulls.ContainsKey(x.Goal.HullId))
                Put(model, writer, StandardHulls.All[1]);
            Put(model, writer, x);
        }))),
        (6, Outing(OutingId, PaddlerId, HullId, PaddleId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            Ensure(model, writer, x.PaddlerId, x.HullId, x.Pieces.Select(piece => piece.PaddleId));
            writer.Put(model.Outings[x.Id] = x);
        }))),
        (2, Gen.Select(Card(CardId, PaddlerId, HullId, PaddleId), OutingId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            Ensure(model, writer, x.Item1.PaddlerId, x.Item1.HullId, [x.Item1.PaddleId]);
            writer.Put(model.Cards[x.Item1.Id] = x.Item1 with { PaddledAs = model.Outings.ContainsKey(x.Item2) ? x.Item2 : null });
        }))),
        (2, Check(CheckId, PaddlerId, HullId, PaddleId).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            Ensure(model, writer, x.PaddlerId, x.HullId, [x.PaddleId]);
            writer.Put(model.Checks[x.Id] = x);
        }))),
        (1, Note(NoteId, PaddlerId, NoteSubject.Paddler).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) => writer.Put(model.Notes[x.Id] = x)))),
        (1, Note(NoteId, OutingId, NoteSubject.Outing).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) => writer.Put(model.Notes[x.Id] = x)))),
        (1, Note(NoteId, CardId, NoteSubject.Card).Select(x => new Action<LogbookModel, LogbookWriter>((model, writer) => writer.Put(model.Notes[x.Id] = x)))),
        (2, OutingId.Select(id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemoveOuting(id); model.RemoveOuting(id); }))),
        (1, PaddlerId.Select(id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemovePaddler(id); model.RemovePaddler(id); }))),
        (1, CardId.Select(id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemoveCard(id); model.RemoveCard(id); }))),
        (1, CheckId.Select(id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemoveTechniqueCheck(id); model.Checks.Remove(id); }))),
        (1, NoteId.Select(id => new Action<LogbookModel, LogbookWriter>((model, writer) => { writer.RemoveNote(id); model.Notes.Remove(id); }))),
        (1, HullId.Select(id => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            if (model.UsesHull(id))
                Assert.Throws<InvalidValueException>(() => writer.RemoveHull(id));
            else
            {
                writer.RemoveHull(id);
                model.RemoveHull(id);
            }
        }))),
        (1, PaddleId.Select(id => new Action<LogbookModel, LogbookWriter>((model, writer) =>
        {
            if (model.UsesPaddle(id))
                Assert.Throws<InvalidValueException>(() => writer.RemovePaddle(id));
            else
            {
                writer.RemovePaddle(id);
                model.RemovePaddle(id);
            }
        }))));

    private static readonly Gen<Step> AnyStep = Gen.Frequency(
        (6, PutOrRemove.Array[1, 3].Select(what => (Step)new Write(what))),
        (3, Gen.Const((Step)new UndoStep())),
        (2, Gen.Const((Step)new RedoStep())),
        (1, Gen.Const((Step)new Reopen())));

    [Fact]
    public void The_logbook_agrees_with_plain_dictionaries_now_and_as_of_every_change() => AnyStep.Array[1, 14].Sample(steps =>
    {
        using var folder = new ScratchFolder();
        LogbookFile log = folder.Open();
        try
        {
            LogbookModel now = LogbookModel.New();
            var past = new Stack<LogbookModel>();
            var future = new Stack<LogbookModel>();
            var asOf = new Dictionary<long, string> { [0] = now.Text() };
            foreach (Step step in steps)
            {
                switch (step)
                {
                    case Write write:
                        LogbookModel before = now.Copy();
                        long last = log.LastChange;
                        log.Change("Wrote", writer => { foreach (var what in write.What) what(now, writer); });
                        if (log.LastChange > last)
                        {
                            past.Push(before);
                            future.Clear();
                        }
                        else
                            Assert.Equal(before.Text(), now.Text());
                        break;
                    case UndoStep:
                        Assert.Equal(past.Count > 0, log.Undo() is not null);
                        if (past.Count > 0)
                        {
                            future.Push(now);
                            now = past.Pop();
                        }
                        break;
                    case RedoStep:
                        Assert.Equal(future.Count > 0, log.Redo() is not null);
                        if (future.Count > 0)
                        {
                            past.Push(now);
                            now = future.Pop();
                        }
                        break;
                    case Reopen:
                        log.Dispose();
                        log = folder.Open();
                        break;
                }
                now = now.Copy();
                Assert.Equal(now.Text(), LogbookModel.Text(log.Everything()));
                asOf[log.LastChange] = now.Text();
            }
            foreach ((long change, string text) in asOf)
                Assert.Equal(text, LogbookModel.Text(log.AsOf(change)));
        }
        finally
        {
            log.Dispose();
        }
    }, iter: 60, threads: 1);
}
