using System.Diagnostics;
using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Commands;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Sync;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Logbook;

/// <summary>
/// The program killed, or its power cut, at every system call that writes, over all that writes: logging, importing a CSV, undo and redo,
/// half-typed input, merging, exchanging, exporting, backing up and restoring, bringing an old logbook up to date, and beginning one.
/// </summary>
public class CrashTests
{
    private const string Folder = "TRIALLOG_TEST_STORE";
    private const int FewestMoments = 300, CsvOutings = 6;

    /// <summary>How many moments are tried: TRIALLOG_CRASHES (0 for every one), or 300, half of them with the power cut.</summary>
    private static int Moments => int.TryParse(Environment.GetEnvironmentVariable("TRIALLOG_CRASHES"), out int some) ? some : FewestMoments;

    [Fact(Explicit = true)]
    public void Does_one_of_everything()
    {
        string folder = Environment.GetEnvironmentVariable(Folder)!;
        using var done = new FileStream(Path.Combine(folder, "done"), FileMode.Append, FileAccess.Write, FileShare.Read, bufferSize: 0);
        void Done(string label) => done.Write(System.Text.Encoding.UTF8.GetBytes(label + "\n"));
        using (LogbookFile begun = LogbookFile.Open(Path.Combine(folder, "begun")))
        {
            SampleLog.Begin(begun);
            begun.Change("Logged", writer => writer.Put(SampleLog.Outing(1)));
            Done("begun 1");
        }

        using (LogbookFile old = LogbookFile.Open(Path.Combine(folder, "old")))
            Done("old am");

        for (int round = 0; round < 3; round++)
        {
            using LogbookFile log = LogbookFile.Open(Path.Combine(folder, "season"));
            int first = 100 * (round + 1);
            log.Change("Logged", writer => writer.Put(SampleLog.Outing(first)));
            Done($"season {first}");
            log.SaveDraft("entry", $"half of {first}");
            log.Change("Imported", writer =>
            {
                for (int i = first + 1; i < first + 25; i++)
                    writer.Put(SampleLog.Outing(i));
            });
            Done($"season {first + 24}");
            Runs("import", Path.Combine(folder, $"{round}.csv"));
            Done($"season csv{round}-0");
            log.Change("Noted", writer => writer.Put(log.Outings()[0] with { Notes = $"{first}" }));
            log.Undo();
            log.Redo();
            log.Undo();
            Merge.Plan(log, Sharing.Load(Path.Combine(folder, "record.json"))).Apply(log, _ => MergeChoice.KeepHere);
            Done("season 7777");
            FolderSync.Run(log, Path.Combine(folder, "exchange"), _ => MergeChoice.Later, new DateOnly(2030, 1, 1));
            log.DropDraft("entry");
            Backups.Make(log, Path.Combine(folder, $"season.{round}.bak"));
            Done($"backup {round}");
            Runs("export", "--csv", Path.Combine(folder, "all.csv"));
            Done($"export {log.Outings().Count}");
        }

        Backups.Restore(Path.Combine(folder, "left"), Path.Combine(folder, "left.first.bak"));
        Done("restored left");

        void Runs(params string[] words)
        {
            var said = new StringWriter();
            int code = CommandLineProgram.Run([.. words, "--store", Path.Combine(folder, "season")], new ConsoleHost
            {
                In = TextReader.Null,
                Out = said,
                Error = said,
                Interactive = false,
                Environment = _ => null,
            });
            Assert.True(code == 0, said.ToString());
        }
    }

    [Fact]
    public void Killed_or_without_power_at_any_write_nothing_that_was_done_is_lost()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && DiskTrace.IsPossible(), "Needs strace, and the right to use it.");
        using var folder = new ScratchFolder();
        Prepare(folder);
        string program = typeof(CrashTests).Assembly.Location;
        var start = new ProcessStartInfo("dotnet",
            [program, "-explicit", "only", "-method", $"{typeof(CrashTests).FullName}.{nameof(Does_one_of_everything)}"])
        {
            Environment = { [Folder] = folder.Path },
        };
        DiskTrace trace = DiskTrace.Of(folder.Path, start);
        Assert.True(trace.Count > 200 && trace.Syncs > 20, $"only {trace.Count} calls and {trace.Syncs} syncs were seen");

        // On a disk in memory where there is one: only what is on it counts here, not when it got there.
        string scratch = Directory.Exists("/dev/shm") ? $"/dev/shm/triallog-crash-{Environment.ProcessId}" : folder.File("at");
        double step = Moments == 0 ? 0.5 : Math.Max(0.5, (trace.Count + 1.0) / Moments);
        (int tried, double next) = (0, 0);
        var failures = new List<string>();
        try
        {
            foreach (DiskTrace.DiskMoment moment in trace.Moments())
            {
                for (; next < moment.Calls + 1; next += step, tried++)
                {
                    Random? power = tried % 2 == 0 ? null : new Random(tried);
                    Directory.CreateDirectory(scratch);
                    moment.WriteTo(scratch, power);
                    if (Lost(scratch, moment.TextOf(folder.File("done"))) is { } lost)
                        failures.Add($"{(power is null ? "killed" : "power cut")} after call {moment.Calls}: {lost}");
                    Directory.Delete(scratch, recursive: true);
                }
            }
        }
        finally
        {
            if (Directory.Exists(scratch))
                Directory.Delete(scratch, recursive: true);
        }

        Assert.True(failures.Count == 0, string.Join('\n', failures));
        Assert.True(tried >= Math.Min(Moments, trace.Count), $"{tried} moments");
        TestContext.Current.TestOutputHelper?.WriteLine($"{tried} moments of {trace.Count} calls, {trace.Syncs} of them syncs");
    }

    // What is not as it must be; null where all is.
    private static string? Lost(string folder, string done)
    {
        List<string[]> kept = [.. done.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(' '))];
        try
        {
            foreach (string name in (string[])["season", "old", "begun"])
            {
                string path = Path.Combine(folder, name);
                string[] must = [.. kept.Where(one => one[0] == name).Select(one => one[1])];
                if (!File.Exists(path) && must.Length == 0)
                    continue;
                using LogbookFile log = LogbookFile.Open(path);
                if (log.Verify() is [string problem, ..])
                    return $"{name}: {problem}";
                HashSet<string> there = [.. log.Outings().Select(outing => outing.Label)];
                if (must.Where(label => !there.Contains(label)).ToList() is [string lost, ..])
                    return $"{name}: outing {lost} is gone";
                if (name == "season" && (there.Count(label => int.TryParse(label, out int i) && i % 100 is > 0 and < 25) % 24 != 0
                    || there.Count(label => label.StartsWith("csv", StringComparison.Ordinal)) % CsvOutings != 0))
                    return $"{name}: half an import";
                log.Change("Logged", writer =>
                {
                    if (log.Paddlers().Count > 0 && log.Paddles().Count > 0)
                        writer.Put(SampleLog.Outing(9));
                });
            }

            foreach (string backup in Directory.GetFiles(folder, "*.bak").Where(file => !file.Contains(".before-")))
            {
                using LogbookFile copy = LogbookFile.OpenToRead(backup);
                if (copy.Verify() is [string problem, ..])
                    return $"{Path.GetFileName(backup)}: {problem}";
            }

            foreach (string record in Directory.GetFiles(Path.Combine(folder, "exchange"), "*.json"))
                Sharing.Load(record);
            string csv = Path.Combine(folder, "all.csv");
            int exported = File.Exists(csv) ? File.ReadLines(csv).Skip(1).Select(line => line.Split(',')[2]).Distinct().Count() : 0;
            if (exported < kept.Where(one => one[0] == "export").Select(one => int.Parse(one[1])).LastOrDefault())
                return "the exported file is not whole";
            if (LostByRestoring(folder, kept.Any(one => one[0] == "restored")) is string problemOfRestoring)
                return problemOfRestoring;
            return kept.Where(one => one[0] == "backup" && !File.Exists(Path.Combine(folder, $"season.{one[1]}.bak")))
                .Select(one => $"backup {one[1]} is gone").FirstOrDefault();
        }
        catch (Exception e) when (e is LogbookException or InvalidValueException)
        {
            return e.Message;
        }
    }

    // What was logged last is in the logbook or in what is kept of it; the backup, once it is said to be restored, is the logbook.
    private static string? LostByRestoring(string folder, bool isDone)
    {
        string left = Path.Combine(folder, "left"), replaced = left + ".replaced.bak";
        using LogbookFile log = LogbookFile.Open(left);
        if (log.Verify() is [string problem, ..])
            return $"left: {problem}";
        List<string> there = Labels(log);
        using LogbookFile? old = File.Exists(replaced) ? LogbookFile.OpenToRead(replaced) : null;
        return !there.Contains("1") || (!there.Contains("2") && (old is null || !Labels(old).Contains("2"))) ? "left: an outing is gone"
            : isDone && there.Count != 1 ? "left: not restored"
            : null;

        static List<string> Labels(LogbookFile log) => [.. log.Outings().Select(outing => outing.Label)];
    }

    private static void Prepare(ScratchFolder folder)
    {
        for (int round = 0; round < 3; round++)
        {
            File.WriteAllLines(folder.File($"{round}.csv"), Enumerable.Range(0, CsvOutings * 4).Select(i =>
                $"{new DateOnly(2021, 1, 1).AddDays(i / 4):yyyy-MM-dd},Ilse Maro,{SampleLog.Hull.Name},Training paddle,csv{round}-{i / 4},"
                + $"{i % 4 + 1},50,1000,5:{30 + i % 4}").Prepend("date,paddler,hull,paddle,outing,piece,length_in,distance_m,time"));
        }

        // A logbook that was not closed, so that what was logged last is in its write-ahead log alone.
        using (LogbookFile open = folder.Open("open"))
        {
            SampleLog.Begin(open);
            open.Change("Logged", writer => writer.Put(SampleLog.Outing(1)));
            Backups.Make(open, folder.File("left.first.bak"));
            open.Connection.Execute("PRAGMA wal_checkpoint(TRUNCATE)");
            open.Change("Logged", writer => writer.Put(SampleLog.Outing(2)));
            File.Copy(folder.File("open"), folder.File("left"));
            File.Copy(folder.File("open") + "-wal", folder.File("left-wal"));
        }

        Directory.CreateDirectory(folder.File("exchange"));
        using (LogbookFile log = folder.Open("season"), other = folder.Open("other"))
        {
            SampleLog.Begin(log);
            SampleLog.Begin(other);
            other.Change("Logged", writer => writer.Put(SampleLog.Outing(7777)));
            Sharing.Save(other, new ShareOptions(), folder.File("record.json"));
            other.Change("Logged", writer => writer.Put(SampleLog.Outing(8888)));
            FolderSync.Run(other, folder.File("exchange"), _ => MergeChoice.Later, new DateOnly(2030, 1, 1));
        }

        using var first = new SqliteConnection($"Data Source={folder.File("old")};Pooling=False");
        first.Open();
        foreach (string script in Migrations.Scripts.Take(2))
        {
            using var text = new StreamReader(typeof(LogbookFile).Assembly.GetManifestResourceStream(script)!);
            first.Execute(text.ReadToEnd());
        }

        first.Execute($"""
            PRAGMA application_id = {Migrations.ApplicationId}; PRAGMA user_version = 2;
            INSERT INTO changes (at, what, state) VALUES ('2026-01-01T00:00:00Z', 'Added', 'standing');
            INSERT INTO paddlers (id, name, name_key, unit, swaps_on_water)
            VALUES ('{SampleLog.Ilse.Id}', 'Ilse Maro', 'ILSE MARO', 'in', 1);
            INSERT INTO paddles (id, name, name_key, blade_nm, steering, shortest_nm, longest_nm, step_nm)
            VALUES ('{SampleLog.Paddle.Id}', 'Training paddle', 'TRAINING PADDLE', 457200000, 0, 1219200000, 1346200000, 6350000);
            INSERT INTO outings (id, paddler_id, hull_id, date, label)
            VALUES ('{Guid.NewGuid()}', '{SampleLog.Ilse.Id}', '{SampleLog.Hull.Id}', '2026-05-01', 'am');
            """);
    }
}
