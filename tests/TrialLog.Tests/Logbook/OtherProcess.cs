using System.Diagnostics;
using Dapper;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Logbook;

/// <summary>
/// Writing by another process: this test program again, told to run just one of the methods below. They are explicit, so
/// an ordinary run leaves them alone.
/// </summary>
public class OtherProcess
{
    private const string Store = "TRIALLOG_TEST_STORE", First = "TRIALLOG_TEST_FIRST";

    internal static Process Start(string method, string store, int first = 0)
    {
        string program = typeof(OtherProcess).Assembly.Location;
        var start = new ProcessStartInfo("dotnet", [program, "-explicit", "only", "-method", $"{typeof(OtherProcess).FullName}.{method}"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { [Store] = store, [First] = $"{first}" },
        };
        return Process.Start(start)!;
    }

    internal static void WaitForSuccess(Process process)
    {
        string output = process.StandardOutput.ReadToEnd() + process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, output);
    }

    /// <summary>The file by which <see cref="Writes_half_a_change_and_waits"/> says how far it is.</summary>
    internal static string Marker(string store) => store + ".half";

    [Fact(Explicit = true)]
    public void Writes_forty_changes()
    {
        int first = int.Parse(Environment.GetEnvironmentVariable(First)!);
        using LogbookFile log = LogbookFile.Open(Environment.GetEnvironmentVariable(Store)!);
        for (int i = first; i < first + 40; i++)
            log.Change($"Logged outing {i}", writer => writer.Put(SampleLog.Outing(i)));
    }

    [Fact(Explicit = true)]
    public void Writes_half_a_change_and_waits()
    {
        string store = Environment.GetEnvironmentVariable(Store)!;
        using LogbookFile log = LogbookFile.Open(store);
        // A page cache too small for the change, so that pages of the unfinished change are on the disk already.
        log.Connection.Execute("PRAGMA cache_size = 10");
        log.Change("Imported a season", writer =>
        {
            for (int i = 100; i < 1100; i++)
                writer.Put(SampleLog.Outing(i));
            File.WriteAllText(Marker(store), "");
            Thread.Sleep(Timeout.Infinite);
        });
    }

    /// <summary>
    /// How many kills <see cref="Whenever_it_is_killed_what_was_done_is_there_and_the_logbook_is_sound"/> does: TRIALLOG_KILLS, or 6.
    /// </summary>
    private static int Kills => int.TryParse(Environment.GetEnvironmentVariable("TRIALLOG_KILLS"), out int kills) ? kills : 6;

    /// <summary>The file that says which outings are in the logbook for good.</summary>
    private static string Done(string store) => store + ".done";

    /// <summary>Logs, edits, takes back, merges, saves half-typed input and backs up until it is killed.</summary>
    [Fact(Explicit = true)]
    public void Does_everything_until_it_is_killed()
    {
        string store = Environment.GetEnvironmentVariable(Store)!;
        using LogbookFile log = LogbookFile.Open(store);
        SharedRecord record = Sharing.Load(store + ".json");
        using var done = new StreamWriter(Done(store), append: true) { AutoFlush = true };
        for (int i = int.Parse(Environment.GetEnvironmentVariable(First)!); ; i++)
        {
            log.Change($"Logged outing {i}", writer => writer.Put(SampleLog.Outing(i) with { Id = Guid.NewGuid() }));
            done.WriteLine(i);
            log.SaveDraft("entry", $"half of {i}");
            log.Change("Noted", writer => writer.Put(log.Outings()[0] with { Notes = $"{i}" }));
            log.Undo();
            if (i % 3 == 0)
                Merge.Plan(log, record).Apply(log, _ => MergeChoice.KeepHere);
            if (i % 5 == 0)
            {
                File.Delete(store + ".copy.bak");
                Backups.Make(log, store + ".copy.bak");
            }
        }
    }

    [Fact]
    public void Whenever_it_is_killed_what_was_done_is_there_and_the_logbook_is_sound()
    {
        using var folder = new ScratchFolder();
        string store = folder.File();
        using (LogbookFile other = folder.Open("other.triallog"), log = folder.Open())
        {
            SampleLog.Begin(other);
            other.Change("Logged", writer => writer.Put(SampleLog.Outing(999_999)));
            Sharing.Save(other, new ShareOptions(), store + ".json");
            SampleLog.Begin(log);
        }

        var random = new Random(7);
        int killedAtWork = 0;
        for (int kill = 0; kill < Kills; kill++)
        {
            long before = File.Exists(Done(store)) ? new FileInfo(Done(store)).Length : 0;
            using Process child = Start(nameof(Does_everything_until_it_is_killed), store, first: (kill + 1) * 10_000);
            for (int wait = 0; wait < 3000 && (!File.Exists(Done(store)) || new FileInfo(Done(store)).Length == before)
                && !child.HasExited; wait++)
                Thread.Sleep(10);
            Thread.Sleep(random.Next(300));
            Assert.False(child.HasExited, "the child ended before it was killed");
            child.Kill();
            child.WaitForExit();
            killedAtWork += new FileInfo(Done(store)).Length > before ? 1 : 0;

            using LogbookFile after = folder.Open();
            Assert.Empty(after.Verify());
            HashSet<string> there = [.. after.Outings().Select(outing => outing.Label)];
            Assert.Empty(File.ReadAllLines(Done(store)).Except(there));

            // Whatever is named a backup is one.
            foreach (string backup in Backups.Of(store))
            {
                using LogbookFile copy = LogbookFile.OpenToRead(backup);
                Assert.Empty(copy.Verify());
            }
        }

        Assert.Equal(Kills, killedAtWork);
    }

    [Fact]
    public void Two_processes_that_write_at_once_both_succeed()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open();
        SampleLog.Begin(log);
        using Process one = Start(nameof(Writes_forty_changes), log.Path, first: 1000);
        using Process other = Start(nameof(Writes_forty_changes), log.Path, first: 2000);
        WaitForSuccess(one);
        WaitForSuccess(other);
        Assert.Equal(80, log.Outings().Count);
        Assert.Equal(81, log.Changes(1000).Count);
        Assert.All(log.Outings(), outing => Assert.Equal(4, outing.Pieces.Count));
    }

    [Fact]
    public void Two_processes_that_create_one_logbook_at_once_both_succeed()
    {
        using var folder = new ScratchFolder();
        var opened = new List<Thread>();
        var failures = new List<Exception>();
        for (int i = 0; i < 4; i++)
        {
            // A connection of its own is as good as a process of its own: locks are per connection.
            var thread = new Thread(() =>
            {
                try
                {
                    using LogbookFile log = folder.Open();
                    Assert.Equal(5, log.Hulls().Count);
                }
                catch (Exception e)
                {
                    lock (failures)
                        failures.Add(e);
                }
            });
            thread.Start();
            opened.Add(thread);
        }
        opened.ForEach(thread => thread.Join());
        Assert.Empty(failures);
    }

    [Fact]
    public void A_process_killed_in_the_middle_of_a_change_leaves_nothing_of_it()
    {
        using var folder = new ScratchFolder();
        string store = folder.File();
        using (LogbookFile log = folder.Open())
        {
            SampleLog.Begin(log);
            log.Change("Logged an outing", writer => writer.Put(SampleLog.Outing(1)));
        }

        using Process child = Start(nameof(Writes_half_a_change_and_waits), store);
        while (!File.Exists(Marker(store)))
        {
            Assert.False(child.HasExited, "the child ended before it was killed");
            Thread.Sleep(20);
        }
        Assert.True(new FileInfo(store + "-wal").Length > 1_000_000, "nothing of the change was on the disk yet");
        child.Kill();
        child.WaitForExit();

        using LogbookFile after = folder.Open();
        Assert.Equal(["1"], after.Outings().Select(outing => outing.Label));
        Assert.Equal(["Logged an outing", "Added Ilse Maro"], after.Changes(10).Select(change => change.What));
        after.Change("Logged another", writer => writer.Put(SampleLog.Outing(2)));
        Assert.Equal(2, after.Outings().Count);
    }
}
