using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook;

/// <summary>
/// Copies of a logbook beside itself, whole and consistent even while another program has it open. A copy is a logbook. It
/// is written under another name and given its own once it is on the disk, so that what is named a backup is one.
/// </summary>
public static class Backups
{
    /// <summary>How many daily backups are kept.</summary>
    public const int MostDaily = 7;

    private const string Ending = ".bak";

    /// <summary>Copies a logbook to a file that is not there.</summary>
    /// <exception cref="LogbookException">The logbook is damaged, the file is there, or it cannot be written.</exception>
    public static void Make(LogbookFile logbook, string path)
    {
        if (File.Exists(path))
            throw new LogbookException($"{path} is there already; name a file that is not.");
        logbook.CheckPages();
        logbook.Copying(connection => Copy(connection, Path.GetFullPath(path)));
    }

    /// <summary>The backups beside a logbook, newest first.</summary>
    public static IReadOnlyList<string> Of(string logbook)
    {
        string full = Path.GetFullPath(logbook);
        string folder = Path.GetDirectoryName(full) ?? ".";
        return !Directory.Exists(folder) ? []
            : [.. Directory.EnumerateFiles(folder, Path.GetFileName(full) + ".*" + Ending).Where(file => new FileInfo(file).Length > 0)
                .OrderByDescending(File.GetLastWriteTimeUtc).ThenByDescending(file => file, StringComparer.Ordinal)];
    }

    /// <summary>
    /// Puts a backup in a logbook's place. What was there is kept beside it, under <c>NAME.replaced.bak</c> or with a number, even if it
    /// is damaged. No program may have the logbook open.
    /// </summary>
    /// <returns>Where what was there is kept; null where nothing was.</returns>
    /// <exception cref="LogbookException">The backup is no sound logbook, or cannot be copied; the logbook is as it was.</exception>
    public static string? Restore(string logbook, string backup)
    {
        string path = Path.GetFullPath(logbook), incoming = $"{path}.{Guid.NewGuid():N}.part";
        try
        {
            using (LogbookFile sound = LogbookFile.OpenToRead(backup))
            {
                if (sound.Verify() is [string problem, ..])
                    throw new LogbookException($"The backup {backup} is not sound ({problem.TrimEnd('.')}); restore another.");
                sound.Copying(connection => Copy(connection, incoming));
            }

            string place = Free($"{path}.replaced");
            string? kept = null;
            if (File.Exists(path) && new FileInfo(path).Length > 0)
                Keep(path, kept = place);
            // Even where the logbook is lost its write-ahead log may be there: all that is left of the last changes, and never the
            // backup's.
            foreach (string part in new[] { "-wal", "-shm" }.Where(part => File.Exists(path + part)))
                File.Move(path + part, place + part, overwrite: true);
            File.Move(incoming, path, overwrite: true);
            return kept;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new LogbookException(
                $"The backup cannot be put in place of {path} ({e.Message.TrimEnd('.')}); the logbook is as it was.", e);
        }
        finally
        {
            OutputFile.Discard(incoming);
        }
    }

    // On the disk before it has its name, and before another takes its place: a power cut must not leave half a copy.
    private static void Keep(string path, string copy)
    {
        string beside = $"{copy}.{Guid.NewGuid():N}.part";
        try
        {
            using (var from = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete))
            using (FileStream to = OutputFile.Create(beside, OperatingSystem.IsWindows() ? null : File.GetUnixFileMode(path)))
            {
                from.CopyTo(to);
                to.Flush(flushToDisk: true);
            }

            File.Move(beside, copy);
        }
        finally
        {
            OutputFile.Discard(beside);
        }
    }

    /// <summary>Copies the logbook beside itself before it is brought to a version: <c>NAME.before-v3.bak</c>.</summary>
    internal static void Before(SqliteConnection connection, string path, int version) =>
        Copy(connection, Free($"{path}.before-v{version}"));

    /// <summary>
    /// Copies the logbook beside itself before the first change of a day, <c>NAME.2026-05-02.bak</c>, if it holds changes of an
    /// earlier day; of such copies the newest <see cref="MostDaily"/> stay. That it cannot is no reason not to write.
    /// </summary>
    internal static void Daily(SqliteConnection connection, string path)
    {
        if (!IsDue(connection, path))
            return;
        string copy = OfToday(path);
        try
        {
            Copy(connection, copy);
            string name = Path.GetFileName(path);
            foreach (string old in Of(path)
                .Where(file => DateOnly.TryParseExact(Path.GetFileName(file)[(name.Length + 1)..^Ending.Length], "yyyy-MM-dd", out _))
                .OrderByDescending(file => file, StringComparer.Ordinal).Skip(MostDaily))
                OutputFile.Discard(old);
        }
        catch (Exception e) when (e is LogbookException or SqliteException or IOException or UnauthorizedAccessException)
        {
            OutputFile.Discard(copy);
        }
    }

    /// <summary>Whether the day's backup is still to be made.</summary>
    internal static bool IsDue(SqliteConnection connection, string path)
    {
        string? last = connection.ExecuteScalar<string?>("SELECT at FROM changes WHERE number > 0 ORDER BY number DESC LIMIT 1");
        return last is not null && string.CompareOrdinal(last, Today()) < 0 && !File.Exists(OfToday(path));
    }

    private static string Today() => DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string OfToday(string path) => $"{path}.{Today()}{Ending}";

    private static string Free(string stem)
    {
        string copy = stem + Ending;
        for (int i = 2; File.Exists(copy); i++)
            copy = $"{stem}.{i}{Ending}";
        return copy;
    }

    private static void Copy(SqliteConnection connection, string path)
    {
        string beside = $"{path}.{Guid.NewGuid():N}.part";
        try
        {
            OutputFile.Create(beside).Dispose();
            connection.Execute("VACUUM INTO @beside", new { beside });
            using (var file = new FileStream(beside, FileMode.Open, FileAccess.ReadWrite))
                file.Flush(flushToDisk: true);
            File.Move(beside, path, overwrite: false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new LogbookException(
                $"The backup {path} cannot be written ({e.Message.TrimEnd('.')}); check the folder and its free space.", e);
        }
        finally
        {
            OutputFile.Discard(beside);
        }
    }
}
