using Dapper;
using Microsoft.Data.Sqlite;

namespace TrialLog.Logbook;

/// <summary>Copies of a logbook, whole and consistent even while another program has it open.</summary>
internal static class Backup
{
    /// <summary>Copies the logbook beside itself before it is brought to a version: <c>name.before-v3.bak</c>.</summary>
    /// <returns>The path of the copy.</returns>
    public static string Before(SqliteConnection connection, string path, int version)
    {
        string copy = $"{path}.before-v{version}.bak";
        for (int i = 2; File.Exists(copy); i++)
            copy = $"{path}.before-v{version}.{i}.bak";
        connection.Execute("VACUUM INTO @copy", new { copy });

        // On the disk before the original is touched, not merely on its way there.
        using var file = new FileStream(copy, FileMode.Open, FileAccess.ReadWrite);
        file.Flush(flushToDisk: true);
        return copy;
    }
}
