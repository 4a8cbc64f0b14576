using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Domain.Boats;
using TrialLog.Logbook;
using TrialLog.Logbook.Exchange;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Logbook;

public class MigrationTests
{
    private static readonly string[] Later = ["ALTER TABLE outings ADD COLUMN swell_m REAL NOT NULL DEFAULT 0"];

    [Fact]
    public void A_new_logbook_starts_with_the_standard_hulls_and_they_cannot_be_undone()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open();
        Assert.Equal(StandardHulls.All.OrderBy(hull => hull.Name), log.Hulls());
        Assert.Null(log.Undo());
        Assert.Equal(0, log.LastChange);
        Assert.Equal("wal", log.Connection.ExecuteScalar<string>("PRAGMA journal_mode"));
        Assert.Equal(1, log.Connection.ExecuteScalar<int>("PRAGMA foreign_keys"));
    }

    [Fact]
    public void A_migration_is_preceded_by_a_backup_and_keeps_records_and_undo()
    {
        using var folder = new ScratchFolder();
        string before;
        using (LogbookFile log = folder.Open())
        {
            SampleLog.Begin(log);
            log.Change("Logged an outing", writer => writer.Put(SampleLog.Outing(1)));
            before = LogbookModel.Text(log.Everything());
            log.Change("Removed it", writer => writer.RemoveOuting(SampleLog.Outing(1).Id));
        }

        using (LogbookFile migrated = LogbookFile.Open(folder.File(), Later))
        {
            Assert.NotNull(migrated.Undo());
            Assert.Equal(before, LogbookModel.Text(migrated.Everything()));
        }

        string backup = Assert.Single(Directory.GetFiles(folder.Path, "*.bak"));
        using LogbookFile old = LogbookFile.Open(backup);
        Assert.Equal("Removed it", old.Changes(1)[0].What);
        Assert.Contains("newer version", Assert.Throws<LogbookException>(() => folder.Open()).Message);
    }

    [Fact]
    public void A_logbook_of_the_first_version_opens_with_its_records_and_its_undo()
    {
        using var folder = new ScratchFolder();
        using (var first = new SqliteConnection($"Data Source={folder.File()};Pooling=False"))
        {
            first.Open();
            foreach (string script in Migrations.Scripts.Take(2))
            {
                using var text = new StreamReader(typeof(LogbookFile).Assembly.GetManifestResourceStream(script)!);
                first.Execute(text.ReadToEnd());
            }

            string ilse = $"{SampleLog.Ilse.Id}", slip = $"{Guid.NewGuid()}";
            first.Execute($"""
                PRAGMA application_id = {Migrations.ApplicationId}; PRAGMA user_version = 2;
                INSERT INTO changes (at, what, state) VALUES ('2026-01-01T00:00:00Z', 'Added', 'standing');
                INSERT INTO paddlers (id, name, name_key, unit, swaps_on_water)
                VALUES ('{ilse}', 'Ilse Maro', 'ILSE MARO', 'in', 1), ('{slip}', 'Ilse Mro', 'ILSE MRO', 'in', 1);
                INSERT INTO outings (id, paddler_id, hull_id, date, label)
                VALUES ('{Guid.NewGuid()}', '{ilse}', '{SampleLog.Hull.Id}', '2026-05-01', 'am');
                INSERT INTO changes (at, what, state) VALUES ('2026-01-02T00:00:00Z', 'Removed', 'standing');
                DELETE FROM paddlers WHERE id = '{slip}';
                """);
        }

        using LogbookFile log = folder.Open();
        Assert.Empty(log.Verify());
        Assert.Equal(["Ilse Maro"], log.Paddlers().Select(paddler => paddler.Name));
        Assert.False(log.Outings().Single().Blind);
        Assert.Single(RecordSet.Of(log).Removed);
        Assert.Equal("Removed", log.Undo()!.What);
        Assert.Equal(["Ilse Maro", "Ilse Mro"], log.Paddlers().Select(paddler => paddler.Name));
        Assert.Single(Directory.GetFiles(folder.Path, $"*.before-v{Migrations.Scripts.Count}.bak"));
    }

    [Fact]
    public void A_migration_that_fails_leaves_the_logbook_at_its_version()
    {
        using var folder = new ScratchFolder();
        folder.Open().Dispose();
        Assert.ThrowsAny<Exception>(() => LogbookFile.Open(folder.File(), [.. Later, "ALTER TABLE nothing ADD COLUMN x"]).Dispose());
        using LogbookFile log = folder.Open();
        Assert.DoesNotContain("swell_m", log.Connection.Query<string>("SELECT name FROM pragma_table_info('outings')"));
    }

    [Fact]
    public void The_triggers_name_every_column_of_their_table()
    {
        using var folder = new ScratchFolder();
        using LogbookFile log = folder.Open();
        foreach (
            string table in log.Connection.Query<string>("SELECT DISTINCT tbl_name FROM sqlite_schema WHERE type = 'trigger'").ToList())
        {
            var columns = log.Connection.Query<string>("SELECT name FROM pragma_table_info(@table)", new { table }).ToList();
            foreach (
                string trigger in log.Connection.Query<string>(
                "SELECT sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = @table AND (name LIKE '%\\_edited' ESCAPE '\\' OR " +
                "name LIKE '%\\_removed' ESCAPE '\\') AND name NOT LIKE 'lessons%'", new { table }))
                Assert.All(columns, column => Assert.Contains($"'{column}', OLD.{column}", trigger));
        }
    }
}
