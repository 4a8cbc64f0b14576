using CsCheck;
using TrialLog.Logbook;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Logbook;

/// <summary>
/// Whatever is put, removed, undone and redone, in any order: the logbook agrees with plain dictionaries, now and as of every change.
/// </summary>
public class JournalLaws
{
    private abstract record Step;
    private sealed record Write(IReadOnlyList<Action<LogbookModel, LogbookWriter>> What) : Step;
    private sealed record UndoStep : Step;
    private sealed record RedoStep : Step;
    private sealed record Reopen : Step;

    private static readonly Gen<Step> AnyStep = Gen.Frequency(
        (6, RandomWrites.PutOrRemove.Array[1, 3].Select(what => (Step)new Write(what))),
        (3, Gen.Const((Step)new UndoStep())),
        (2, Gen.Const((Step)new RedoStep())),
        (1, Gen.Const((Step)new Reopen())));

    [Fact]
    public void The_logbook_agrees_with_plain_dictionaries_now_and_as_of_every_change() => AnyStep.Array[1, 14].Sample(steps =>
    {
        using var folder = new ScratchFolder();
        LogbookFile log = folder.OpenHastily();
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
                        log = folder.OpenHastily();
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
    }, iter: 300);
}
