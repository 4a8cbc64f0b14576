using System.Diagnostics;
using Dapper;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
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
