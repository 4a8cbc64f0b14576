using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Logbook;

/// <summary>What cannot be opened or written is said in a sentence, and the file stays as it was.</summary>
public class TroubleTests
{
    [Theory]
    [InlineData("date,hull,time\n2026-05-02,OC1,5:32\n")]
    [InlineData("x")]
    [InlineData("SQLite format 3\0")]
    public void A_text_file_is_not_a_logbook(string text)
    {
        using var folder = new ScratchFolder();
        File.WriteAllText(folder.File(), text);
        RefusedUntouched(folder, "is not a TrialLog logbook");
    }

    [Theory]
    [InlineData("DELETE")]
    [InlineData("WAL")]
    public void A_database_of_another_program_is_not_a_logbook(string mode)
    {
        using var folder = new ScratchFolder();
        Sql(folder, $"PRAGMA journal_mode = {mode}; CREATE TABLE stamps (id INTEGER); INSERT INTO stamps VALUES (1)");
        RefusedUntouched(folder, "is not a TrialLog logbook");
    }

    [Fact]
    public void A_logbook_of_a_newer_version_is_left_alone()
    {
        using var folder = new ScratchFolder();
        folder.Open().Dispose();
        Sql(folder, "PRAGMA user_version = 4711; PRAGMA wal_checkpoint(TRUNCATE)");
        RefusedUntouched(folder, "newer version");
    }

    [Fact]
    public void A_missing_folder_and_a_folder_as_the_file_are_told_apart()
    {
        using var folder = new ScratchFolder();
        Assert.Contains("does not exist",
            Assert.Throws<LogbookException>(() => LogbookFile.Open(folder.File("none/season.triallog"))).Message);
        Assert.Contains("is a folder", Assert.Throws<LogbookException>(() => LogbookFile.Open(folder.Path)).Message);
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.Path));
    }

    [Fact]
    public void Overwritten_pages_are_never_taken_for_data_and_never_made_worse()
    {
        using var folder = new ScratchFolder();
        using (LogbookFile log = folder.Open())
        {
            SampleLog.Begin(log);
            log.Change("Logged a season", writer => { for (int i = 0; i < 40; i++) writer.Put(SampleLog.Outing(i)); });
        }
        byte[] sound = File.ReadAllBytes(folder.File());
        const int pageSize = 4096;
        int found = 0;
        for (int page = 1; page < sound.Length / pageSize; page++)
        {
            byte[] damaged = [.. sound];
            damaged.AsSpan(page * pageSize, pageSize).Fill(0xA5);
            File.WriteAllBytes(folder.File(), damaged);
            try
            {
                using LogbookFile log = folder.Open();
                log.Everything();
            }
            catch (LogbookException e)
            {
                Assert.Contains("is damaged", e.Message);
                Assert.Equal(damaged, File.ReadAllBytes(folder.File()));
                found++;
            }
        }
        // Every page holds something, so a page of rubbish never goes unseen.
        Assert.Equal(sound.Length / pageSize - 1, found);
    }

    [Fact]
    public void A_full_disk_leaves_the_logbook_as_it_was()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open();
        SampleLog.Begin(log);
        string before = LogbookModel.Text(log.Everything());
        log.Connection.Execute($"PRAGMA max_page_count = {log.Connection.ExecuteScalar<int>("PRAGMA page_count") + 3}");
        var e = Assert.Throws<LogbookException>(() => log.Change("Imported a season", writer =>
        {
            for (int i = 0; i < 100; i++)
                writer.Put(SampleLog.Outing(i));
        }));
        Assert.Contains("The disk is full", e.Message);
        Assert.Equal(before, LogbookModel.Text(log.Everything()));
    }

    [Fact]
    public void Another_program_that_keeps_writing_is_named_as_the_reason()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open(), other = folder.Open();
        log.Connection.DefaultTimeout = 1;
        other.Change("Takes long", _ =>
            Assert.Contains("being written by another program", Assert.Throws<LogbookException>(() => SampleLog.Begin(log)).Message));
        SampleLog.Begin(log);
        Assert.Single(other.Paddlers());
    }

    [Fact]
    public void Where_nothing_can_be_written_the_logbook_can_still_be_read()
    {
        using var folder = new ScratchFolder();
        using (LogbookFile log = folder.Open())
        {
            SampleLog.Begin(log);
            log.Change("Logged an outing", writer => writer.Put(SampleLog.Outing(1)));
        }
        byte[] before = File.ReadAllBytes(folder.File());
        AsSomebodyWithoutRights(folder, () =>
        {
            using LogbookFile log = folder.Open();
            Assert.True(log.IsReadOnly);
            Assert.Single(log.Outings());
            Assert.Empty(log.AsOf(1).Outings);
            Assert.Contains("can be read but not written", Assert.Throws<LogbookException>(() => log.Undo()).Message);
            Assert.Contains("cannot be opened", Assert.Throws<LogbookException>(() => folder.Open("new.triallog")).Message);
        });
        Assert.Equal(before, File.ReadAllBytes(folder.File()));
    }

    [Fact]
    public void A_record_that_cannot_be_right_undoes_the_whole_change()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open();
        SampleLog.Begin(log);
        Outing good = SampleLog.Outing(1);
        Piece piece = good.Pieces[0];
        var wrong = new (Action<LogbookWriter> Put, string Says)[]
        {
            (w => w.Put(SampleLog.Ilse with { Id = Guid.NewGuid(), Name = "ILSE MARO" }), "already a paddler named “Ilse Maro”"),
            (w => w.Put(SampleLog.Ilse with { Name = "\u001b[2J" }), "control characters"),
            (w => w.Put(SampleLog.Ilse with { Name = " " }), "needs a name"),
            (w => w.Put(good with { HullId = Guid.NewGuid() }), "not in the logbook"),
            (w => w.Put(good with { Notes = "half a pair \ud83d" }), "control characters"),
            (w => w.Put(good with { Pieces = [piece, piece with { Id = Guid.NewGuid() }] }), "numbers of their own"),
            (w => w.Put(good with { Pieces = [piece with { Time = PieceTime.FromSeconds(83) }] }), "12.0 m/s"),
            (w => w.Put(good with { Pieces = [piece with { Length = Length.Parse("4 in") }] }), "not believable"),
            (w => w.Put(SampleLog.Paddle with { Longest = Length.Parse("40in") }), "below its shortest"),
            (w => w.RemoveHull(SampleLog.Hull.Id), "in use by 1 outing;"),
            (w => w.RemovePaddle(SampleLog.Paddle.Id), "in use by 1 outing;"),
        };
        foreach ((Action<LogbookWriter> put, string says) in wrong)
        {
            var e = Assert.Throws<InvalidValueException>(() => log.Change("Tried", writer =>
            {
                writer.Put(good);
                put(writer);
            }));
            Assert.Contains(says, e.Message);
        }
        Assert.Empty(log.Outings());
        Assert.Equal(1, log.LastChange);
    }

    [Fact]
    public void Undoing_a_paddle_takes_the_cards_noted_for_it_along_and_redo_brings_them_back()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.OpenHastily();
        SampleLog.Begin(log);
        log.Note("Gave a card", writer => writer.Put(new GivenCard
        {
            Id = RandomRecords.Id(5, 1),
            PaddlerId = SampleLog.Ilse.Id,
            HullId = SampleLog.Hull.Id,
            PaddleId = SampleLog.Paddle.Id,
            GivenAt = DateTimeOffset.UnixEpoch,
            Card = new TrialCard
            {
                Lengths = [SampleLog.Paddle.Shortest], Distance = Distance.FromMetres(1000),
                Effort = Effort.FromPoints(6), Rest = PieceTime.FromSeconds(180)
            },
            Best = SampleLog.Paddle.Shortest,
            LikelyLow = SampleLog.Paddle.Shortest,
            LikelyHigh = SampleLog.Paddle.Longest,
            GainLeftPercent = 0.1,
            DiminishingReturns = false,
            Outings = 0,
            Pieces = 0,
            AsOfChange = 1,
        }));
        string before = LogbookModel.Text(log.Everything());
        Assert.Equal("Added Ilse Maro", log.Undo()!.What);
        Assert.Empty(log.Cards());
        Assert.Empty(log.Paddles());
        Assert.NotNull(log.Redo());
        Assert.Equal(before, LogbookModel.Text(log.Everything()));
    }

    private static void RefusedUntouched(ScratchFolder folder, string says)
    {
        byte[] before = File.ReadAllBytes(folder.File());
        var e = Assert.Throws<LogbookException>(() => folder.Open());
        Assert.Contains(says, e.Message);
        Assert.Contains("untouched", e.Message);
        Assert.Equal(before, File.ReadAllBytes(folder.File()));
        Assert.Single(Directory.EnumerateFileSystemEntries(folder.Path));
    }

    private static void Sql(ScratchFolder folder, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={folder.File()};Pooling=False");
        connection.Execute(sql);
    }

    /// <summary>Runs the action with the folder and its files read-only.</summary>
    private static void AsSomebodyWithoutRights(ScratchFolder folder, Action action)
    {
        Nobody.Set(folder.Path, Nobody.Enter, Nobody.Read);
        try
        {
            Nobody.Does(action);
        }
        finally
        {
            Nobody.Set(folder.Path, Nobody.Everything, Nobody.Read);
        }
    }
}
