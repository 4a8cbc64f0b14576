using System.Text.Json;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Commands;

public class BackupCommandTests
{
    private static JsonElement Json(string text) => JsonDocument.Parse(text).RootElement;

    private static TestProgram WithOuting()
    {
        TestProgram program = TestProgram.WithIlse();
        program.Must("log", "49.5in,1km,5:32,6", "50.5in,1km,5:31,6", "--date", "2026-05-03");
        return program;
    }

    [Fact]
    public void A_logbook_goes_back_to_its_backup_and_what_was_there_is_kept()
    {
        using TestProgram program = WithOuting();
        string then = program.Must("history", "--json"), backup = Path.Combine(program.Folder, "may.bak");
        Assert.Contains(backup, program.Must("backup", backup));
        program.Must("log", "50in,1km,5:33,6", "--date", "2026-05-10");
        string later = program.Must("history", "--json");
        Assert.NotEqual(then, later);

        Assert.Contains("1 paddler, 1 outing, 2 pieces", program.Must("restore", backup));
        Assert.Equal(then, program.Must("history", "--json"));
        string kept = Json(program.Must("verify", "--json")).GetProperty("backups")[0].GetString()!;
        Assert.EndsWith(".replaced.bak", kept);
        program.Must("restore", kept);
        Assert.Equal(later, program.Must("history", "--json"));
        Assert.True(File.Exists(backup));
    }

    [Fact]
    public void A_backup_without_a_name_lies_beside_the_logbook_and_no_file_is_written_over()
    {
        using TestProgram program = WithOuting();
        string named = Json(program.Must("backup", "--json")).GetProperty("backup").GetString()!;
        Assert.Equal(program.Store + ".2026-06-01-120000.bak", named);
        Assert.Contains(named, program.Must("verify"));
        byte[] first = File.ReadAllBytes(named);
        Assert.Contains("is there already", program.Run("backup").Error);
        Assert.Contains("the logbook itself", program.Run("backup", program.Store).Error);
        Assert.Contains("the logbook itself", program.Run("restore", program.Store).Error);
        Assert.Equal(first, File.ReadAllBytes(named));
    }

    [Fact]
    public void What_is_no_sound_logbook_is_neither_restored_nor_called_sound_nor_begun()
    {
        using TestProgram program = WithOuting();
        string then = program.Must("history", "--json"), backup = Path.Combine(program.Folder, "may.bak");
        program.Must("backup", backup);
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={backup};Pooling=False;Foreign Keys=False"))
        {
            connection.Open();
            using Microsoft.Data.Sqlite.SqliteCommand command = connection.CreateCommand();
            command.CommandText = "DELETE FROM paddlers";
            command.ExecuteNonQuery();
        }

        Assert.Contains("is not sound", program.Run("restore", backup).Error);
        TestProgram.Outcome verified = program.Run("--store", backup, "verify", "--json");
        Assert.Equal((1, false), (verified.Code, Json(verified.Output).GetProperty("sound").GetBoolean()));
        Assert.Contains("refers to a row of paddlers", Json(verified.Output).GetProperty("problems")[0].GetString());
        Assert.Contains("not sound", Json(verified.Error).GetProperty("error").GetString());
        Assert.Equal(1, program.Run("restore", program.File("notes.txt", "no logbook")).Code);
        Assert.Contains("is sound", program.Must("verify"));
        Assert.Equal(then, program.Must("history", "--json"));

        string none = Path.Combine(program.Folder, "none.db");
        Assert.Contains("There is no logbook", program.Run("--store", none, "verify").Error);
        Assert.Contains("There is no logbook", program.Run("--store", none, "backup").Error);
        Assert.False(File.Exists(none));
    }
}
