using System.Diagnostics;
using Dapper;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Commands;

namespace TrialLog.Tests.Logbook;

/// <summary>What a disk, a clock or another user may do: it is said in a sentence, the data are safe, and the next start works.</summary>
public class FaultTests
{
    [Fact]
    public void A_lost_write_ahead_log_takes_the_last_changes_and_nothing_else()
    {
        using var folder = new ScratchFolder();
        using (LogbookFile log = folder.Open())
        {
            SampleLog.Begin(log);
            log.Change("Logged", writer => writer.Put(SampleLog.Outing(1)));
            log.Connection.Execute("PRAGMA wal_checkpoint(TRUNCATE)");
            log.Change("Logged", writer => writer.Put(SampleLog.Outing(2)));
            Assert.True(new FileInfo(folder.File() + "-wal").Length > 0);
            File.Copy(folder.File(), folder.File("left.triallog"));
        }

        using LogbookFile left = folder.Open("left.triallog");
        Assert.Empty(left.Verify());
        Assert.Equal(["1"], left.Outings().Select(outing => outing.Label));
        left.Change("Logged", writer => writer.Put(SampleLog.Outing(3)));
        Assert.Equal("Logged", left.Undo()!.What);
    }

    [Fact]
    public void A_write_ahead_log_cut_short_at_any_place_is_taken_up_to_a_whole_change()
    {
        using var folder = new ScratchFolder();
        byte[] wal;
        using (LogbookFile log = folder.Open())
        {
            SampleLog.Begin(log);
            log.Connection.Execute("PRAGMA wal_checkpoint(TRUNCATE)");
            for (int i = 0; i < 4; i++)
                log.Change("Logged", writer => writer.Put(SampleLog.Outing(i)));
            wal = File.ReadAllBytes(folder.File() + "-wal");
            File.Copy(folder.File(), folder.File("kept"));
        }

        var seen = new HashSet<int>();
        for (int at = 0; at <= wal.Length; at += 1361)
        {
            File.Copy(folder.File("kept"), folder.File("cut"), overwrite: true);
            File.Delete(folder.File("cut-shm"));
            File.WriteAllBytes(folder.File("cut-wal"), wal[..at]);
            using LogbookFile cut = folder.Open("cut");
            Assert.Empty(cut.Verify());
            int there = cut.Outings().Count;
            Assert.Equal(Enumerable.Range(0, there).Select(i => $"{i}"), cut.Outings().Select(outing => outing.Label));
            Assert.All(cut.Outings(), outing => Assert.Equal(4, outing.Pieces.Count));
            seen.Add(there);
        }

        Assert.True(seen.Count >= 4, "the cuts fell in too few places");
    }

    [Fact]
    public void A_disk_that_is_truly_full_leaves_the_logbook_as_it_was()
    {
        using var folder = new ScratchFolder();
        string disk = Path.Combine(folder.Path, "disk");
        Directory.CreateDirectory(disk);
        Assert.SkipUnless(OperatingSystem.IsLinux() && Runs("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", disk),
            "Needs the right to mount a small disk.");
        try
        {
            string store = Path.Combine(disk, "season.triallog");
            using (LogbookFile log = LogbookFile.Open(store))
            {
                SampleLog.Begin(log);
                log.Change("Logged", writer => writer.Put(SampleLog.Outing(1)));
                var e = Assert.Throws<LogbookException>(() => log.Change("Imported", writer =>
                {
                    for (int i = 2; i < 2000; i++)
                        writer.Put(SampleLog.Outing(i));
                }));
                Assert.Matches("The disk is full|free space", e.Message);
                Assert.Single(log.Outings());
                Assert.Matches("The disk is full|free space", Assert.Throws<LogbookException>(() =>
                {
                    File.WriteAllBytes(Path.Combine(disk, "rest"), new byte[FreeBytes(disk)]);
                    Backups.Make(log, store + ".copy.bak");
                }).Message);
                Assert.Empty(Backups.Of(store));
            }

            using LogbookFile after = LogbookFile.Open(store);
            Assert.Empty(after.Verify());
            File.Delete(Path.Combine(disk, "rest"));
            after.Change("Logged", writer => writer.Put(SampleLog.Outing(2)));
            Assert.Equal(2, after.Outings().Count);
        }
        finally
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Runs("umount", "-l", disk);
        }
    }

    [Fact]
    public void A_clock_that_is_set_back_breaks_nothing()
    {
        using TestProgram program = TestProgram.WithIlse();
        program.Must("log", "49in,1km,5:32,6", "50in,1km,5:31,6");
        program.Must("next");
        program.Clock.Pass(TimeSpan.FromDays(-500));
        program.Must("next");
        program.Must("log", "50in,1km,5:33,6");
        Assert.Contains("2 outings", program.Must("verify"));
        program.Must("undo");
        Assert.Contains("1 outing,", program.Must("verify"));
        program.Must("next");
        program.Must("backup");
    }

    [Fact]
    public void A_logbook_locked_for_longer_than_one_waits_is_read_all_the_same_and_written_afterwards()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open(), other = folder.Open();
        SampleLog.Begin(log);
        log.Connection.DefaultTimeout = 1;
        using (var held = other.Connection.BeginTransaction(deferred: false))
        {
            Assert.Contains("being written by another program",
                Assert.Throws<LogbookException>(() => log.Change("Logged", writer => writer.Put(SampleLog.Outing(1)))).Message);
            Assert.Single(log.Paddlers());
            using LogbookFile third = folder.Open();
            Assert.Single(third.Paddlers());
        }

        log.Change("Logged", writer => writer.Put(SampleLog.Outing(1)));
        Assert.Single(other.Outings());
    }

    [Theory]
    [InlineData("-wal")]
    [InlineData("-shm")]
    public void What_a_program_without_rights_left_behind_locks_nothing(string part)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Needs Unix file permissions.");
        if (OperatingSystem.IsWindows())
            return;
        using var folder = new ScratchFolder();
        using (LogbookFile log = folder.Open())
            SampleLog.Begin(log);
        File.WriteAllBytes(folder.File() + part, []);
        File.SetUnixFileMode(folder.File() + part, UnixFileMode.UserRead);
        using LogbookFile after = folder.Open();
        Assert.True(File.GetUnixFileMode(folder.File() + part).HasFlag(UnixFileMode.UserWrite));
        after.Change("Logged", writer => writer.Put(SampleLog.Outing(1)));
        Assert.Single(after.Outings());
    }

    private static long FreeBytes(string disk) => new DriveInfo(disk).AvailableFreeSpace;

    private static bool Runs(string program, params string[] words)
    {
        try
        {
            using Process process = Process.Start(new ProcessStartInfo(program, words)
            {
                RedirectStandardError = true, RedirectStandardOutput = true,
            })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
