using TrialLog.Domain.Log;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Tests.Commands;

namespace TrialLog.Tests.Logbook;

/// <summary>Rights that are taken away while a logbook is open: it is said in a sentence, nothing is lost, the next start works.</summary>
public class LostRightsTests
{
    [Theory]
    [InlineData("the files")]
    [InlineData("the folder")]
    [InlineData("both")]
    public void Rights_lost_between_opening_and_writing_cost_nothing(string lost)
    {
        using var folder = new ScratchFolder();
        Nobody.Set(folder.Path, Nobody.Everything, Nobody.Everything);
        Nobody.Does(() =>
        {
            List<string> done = ["1"];
            using (LogbookFile log = folder.Open())
            {
                SampleLog.Begin(log);
                log.Change("Logged", writer => writer.Put(SampleLog.Outing(1)));
                Nobody.Aside(() => Nobody.Set(folder.Path, lost == "the files" ? Nobody.Everything : Nobody.Enter,
                    lost == "the folder" ? Nobody.Everything : Nobody.Read));

                // What is open may still be written, or not: it is done, or it says why not.
                if (Trouble(() => log.Change("Logged", writer => writer.Put(SampleLog.Outing(2)))) is string said)
                    Assert.Contains("nothing was changed", said);
                else
                    done.Add("2");
                Assert.Equal(done, Labels(log));
                if (lost != "the files")
                {
                    Assert.Contains("cannot be written", Trouble(() => Backups.Make(log, folder.File("copy.bak"))));
                    Assert.Contains("cannot be written", Trouble(() => Sharing.Save(log, new ShareOptions(), folder.File("record.json"))));
                }

                // So is the next start.
                using LogbookFile next = folder.Open();
                Assert.Equal(done, Labels(next));
                Assert.Equal(lost != "the folder", next.IsReadOnly);
                if (next.IsReadOnly)
                    Assert.Contains("can be read but not written", Trouble(() => next.SaveDraft("entry", "half")));
            }

            Nobody.Aside(() => Nobody.Set(folder.Path, Nobody.Everything, Nobody.Everything));
            using LogbookFile after = folder.Open();
            Assert.Empty(after.Verify());
            Assert.Equal(done, Labels(after));
            after.Change("Logged", writer => writer.Put(SampleLog.Outing(3)));
            Assert.Equal([.. done, "3"], Labels(after));
            Assert.DoesNotContain(Directory.EnumerateFiles(folder.Path), file => file.EndsWith(".part", StringComparison.Ordinal));
        });
    }

    private static IEnumerable<string> Labels(LogbookFile log) => log.Outings().Select(outing => outing.Label).Order();

    private static string? Trouble(Action action)
    {
        try
        {
            action();
            return null;
        }
        catch (LogbookException e)
        {
            return e.Message;
        }
    }
}
