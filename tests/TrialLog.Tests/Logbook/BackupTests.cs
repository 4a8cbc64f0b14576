using Dapper;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Logbook;

/// <summary>Backups, what may be read by whom, and where files go.</summary>
public class BackupTests
{
    private static LogbookFile Season(ScratchFolder folder)
    {
        LogbookFile log = folder.Open();
        SampleLog.Begin(log);
        log.Change("Logged", writer => writer.Put(SampleLog.Outing(1)));
        return log;
    }

    [Fact]
    public void A_backup_is_a_logbook_and_puts_back_what_was()
    {
        using var folder = new ScratchFolder();
        string before;
        using (LogbookFile log = Season(folder))
        {
            before = LogbookModel.Text(log.Everything());
            Backups.Make(log, folder.File("copy.bak"));
            Assert.Contains("is there already", Assert.Throws<LogbookException>(() => Backups.Make(log, folder.File("copy.bak"))).Message);
            log.Change("Removed", writer => writer.RemoveOuting(log.Outings()[0].Id));
        }

        string? kept = Backups.Restore(folder.File(), folder.File("copy.bak"));
        using (LogbookFile log = folder.Open())
        {
            Assert.Equal(before, LogbookModel.Text(log.Everything()));
            Assert.Empty(log.Verify());
        }

        using LogbookFile replaced = LogbookFile.OpenToRead(kept!);
        Assert.Empty(replaced.Outings());
        Assert.Empty(Directory.GetFiles(folder.Path, "*.part"));
    }

    [Fact]
    public void A_broken_backup_is_not_restored_and_the_logbook_stays()
    {
        using var folder = new ScratchFolder();
        using (LogbookFile log = Season(folder))
            Backups.Make(log, folder.File("copy.bak"));
        byte[] bytes = File.ReadAllBytes(folder.File("copy.bak")), was = File.ReadAllBytes(folder.File());
        foreach (byte[] broken in new[] { bytes[..5000], [] })
        {
            File.WriteAllBytes(folder.File("copy.bak"), broken);
            Assert.Throws<LogbookException>(() => Backups.Restore(folder.File(), folder.File("copy.bak")));
            Assert.Equal(was, File.ReadAllBytes(folder.File()));
        }
    }

    [Fact]
    public void What_a_lost_logbook_left_of_its_last_changes_does_not_run_into_the_backup()
    {
        using var folder = new ScratchFolder();
        string wal = folder.File() + "-wal";
        byte[] left;
        using (LogbookFile log = Season(folder))
        {
            Backups.Make(log, folder.File("copy.bak"));
            log.Change("Removed", writer => writer.RemoveOuting(log.Outings()[0].Id));
            left = File.ReadAllBytes(wal);
        }

        Assert.NotEmpty(left);
        File.Delete(folder.File());
        File.WriteAllBytes(wal, left);
        Assert.Null(Backups.Restore(folder.File(), folder.File("copy.bak")));
        using LogbookFile back = folder.Open();
        Assert.Single(back.Outings());
        Assert.Empty(back.Verify());
        Assert.Equal(left, File.ReadAllBytes(folder.File() + ".replaced.bak-wal"));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_logbook_that_was_emptied_or_lost_is_not_begun_anew_beside_its_backup(bool emptied)
    {
        using var folder = new ScratchFolder();
        using (LogbookFile log = Season(folder))
            Backups.Make(log, folder.File("season.triallog.2026-05-02.bak"));
        File.Delete(folder.File());
        if (emptied)
            File.WriteAllBytes(folder.File(), []);
        Assert.Contains("its backup season.triallog.2026-05-02.bak is", Assert.Throws<LogbookException>(() => folder.Open()).Message);
        Backups.Restore(folder.File(), folder.File("season.triallog.2026-05-02.bak"));
        using LogbookFile back = folder.Open();
        Assert.Single(back.Outings());
    }

    [Fact]
    public void The_first_change_of_a_day_leaves_a_copy_of_the_days_before_and_copies_do_not_pile_up()
    {
        using var folder = new ScratchFolder();
        using (LogbookFile log = Season(folder))
            Dapper.SqlMapper.Execute(log.Connection, "UPDATE changes SET at = '2026-01-01T00:00:00.0000000Z'");
        Assert.Empty(Backups.Of(folder.File()));
        for (int day = 1; day < 12; day++)
            File.WriteAllText(folder.File($"season.triallog.2025-01-{day:00}.bak"), "an old one");
        using (LogbookFile log = folder.Open())
        {
            log.Change("Logged", writer => writer.Put(SampleLog.Outing(2)));
            log.Change("Logged", writer => writer.Put(SampleLog.Outing(3)));
        }

        Assert.Equal(Backups.MostDaily, Backups.Of(folder.File()).Count);
        using LogbookFile copy = LogbookFile.OpenToRead(Directory.GetFiles(folder.Path, "*.bak").Order(StringComparer.Ordinal).Last());
        Assert.Single(copy.Outings());
    }

    [Fact]
    public void Logbook_backup_and_shared_file_are_their_owners_alone_and_other_rights_are_kept()
    {
        if (OperatingSystem.IsWindows())
            return;
        const UnixFileMode owner = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using var folder = new ScratchFolder();
        using LogbookFile log = Season(folder);
        Backups.Make(log, folder.File("copy.bak"));
        Sharing.Save(log, new ShareOptions(), folder.File("record.json"));
        foreach (string file in Directory.GetFiles(folder.Path))
            Assert.Equal(owner, File.GetUnixFileMode(file));
        File.SetUnixFileMode(folder.File("record.json"), owner | UnixFileMode.GroupRead);
        Sharing.Save(log, new ShareOptions(), folder.File("record.json"));
        Assert.Equal(owner | UnixFileMode.GroupRead, File.GetUnixFileMode(folder.File("record.json")));
    }

    [Fact]
    public void Links_are_followed_devices_written_to_and_others_files_left_alone()
    {
        if (OperatingSystem.IsWindows())
            return;
        using var folder = new ScratchFolder();
        using LogbookFile log = Season(folder);
        File.WriteAllText(folder.File("record.json.unfinished"), "somebody's");
        File.WriteAllText(folder.File("real.json"), "old");
        File.CreateSymbolicLink(folder.File("record.json"), folder.File("real.json"));
        Sharing.Save(log, new ShareOptions(), folder.File("record.json"));
        Assert.NotNull(new FileInfo(folder.File("record.json")).LinkTarget);
        Assert.Single(Sharing.Load(folder.File("real.json")).PaddlerNames);
        Assert.Equal("somebody's", File.ReadAllText(folder.File("record.json.unfinished")));

        File.CreateSymbolicLink(folder.File("nowhere.json"), "/dev/null");
        Sharing.Save(log, new ShareOptions(), folder.File("nowhere.json"));
        Assert.Equal("/dev/null", new FileInfo(folder.File("nowhere.json")).LinkTarget);
        Assert.False(new FileInfo("/dev/null").Length > 0);
    }

    [Fact]
    public void A_damaged_page_of_a_large_logbook_is_found_before_anything_is_written_into_it_or_read_from_it_whole()
    {
        using var folder = new ScratchFolder();
        using (LogbookFile log = folder.OpenHastily())
        {
            SampleLog.Begin(log);
            log.Change("Logged years", writer =>
            {
                for (int i = 0; i < 6000; i++)
                    writer.Put(SampleLog.Outing(i));
            });
        }

        byte[] sound = File.ReadAllBytes(folder.File());
        Assert.True(sound.Length > Opening.SmallEnoughToCheck, "not large enough to go unchecked at opening");
        byte[] damaged = [.. sound];
        damaged.AsSpan(sound.Length / 2 / 4096 * 4096, 4096).Fill(0xA5);
        File.WriteAllBytes(folder.File(), damaged);
        using LogbookFile opened = folder.Open();
        Assert.Contains(
            "is damaged",
            Assert.Throws<LogbookException>(() => opened.Change("Logged", writer => writer.Put(SampleLog.Outing(9000)))).Message);
        Assert.Contains("is damaged", Assert.Throws<LogbookException>(opened.CheckPages).Message);
        Assert.Throws<LogbookException>(() => Backups.Make(opened, folder.File("copy.bak")));
        Assert.NotEmpty(opened.Verify());
    }

    [Fact]
    public void A_logbook_too_large_to_be_looked_over_before_a_change_is_looked_over_beside_it_and_before_the_days_backup()
    {
        using var folder = new ScratchFolder();
        using (LogbookFile log = folder.OpenHastily())
        {
            SampleLog.Begin(log);
            log.SaveDraft("entry", new string('x', 65 << 20));
            log.Change("Logged", writer => writer.Put(SampleLog.Outing(1)));
        }

        using (LogbookFile sound = folder.Open())
        {
            sound.Background!.Wait();
            Assert.True(sound.Background.IsSound);
        }

        // A page in the middle of the long draft: nothing reads it but a look at every page.
        using (FileStream file = File.OpenWrite(folder.File()))
        {
            file.Position = 40 << 20;
            file.Write([.. Enumerable.Repeat((byte)0xA5, 4096)]);
        }

        using (LogbookFile opened = folder.Open())
        {
            opened.Background!.Wait();
            Assert.Contains("is damaged",
                Assert.Throws<LogbookException>(() => opened.Change("Logged", writer => writer.Put(SampleLog.Outing(2)))).Message);
            Assert.Single(opened.Outings());
            opened.Connection.Execute("UPDATE changes SET at = '2020-01-01'");
        }

        using LogbookFile again = folder.Open();
        Assert.Contains("is damaged",
            Assert.Throws<LogbookException>(() => again.Change("Logged", writer => writer.Put(SampleLog.Outing(2)))).Message);
        Assert.Empty(Backups.Of(folder.File()));
    }

    [Theory]
    [InlineData("9999-12-31")]
    [InlineData("0001-01-01")]
    public void An_outing_of_no_believable_day_does_not_come_in_by_a_record(string date)
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = Season(folder), other = folder.Open("other");
        using var written = new MemoryStream();
        Sharing.Write(log, new ShareOptions(), written);
        string text = System.Text.Encoding.UTF8.GetString(written.ToArray()).Replace("2020-01-02", date, StringComparison.Ordinal);
        Assert.Throws<LogbookException>(() => Sharing.Read(new MemoryStream(System.Text.Encoding.UTF8.GetBytes(text))));
        SharedRecord late = Sharing.Read(
            new MemoryStream(
            System.Text.Encoding.UTF8.GetBytes(
            System.Text.Encoding.UTF8.GetString(written.ToArray()).Replace("2020-01-02", "2150-01-02", StringComparison.Ordinal))));
        Assert.Contains("is in the future",
            Assert.Throws<LogbookException>(() => Merge.Plan(other, late, new DateOnly(2026, 5, 1))).Message);
    }
}
