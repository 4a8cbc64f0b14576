using System.Buffers.Binary;
using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook;

/// <summary>
/// Opens the database of a logbook: makes it where there is none, refuses what is not one before touching it, backs up
/// and migrates an older one, and falls back to reading where the place cannot be written.
/// </summary>
internal static class Opening
{
    /// <summary>How long to wait for another program that is writing, in seconds.</summary>
    public const int PatienceSeconds = 5;

    // https://sqlite.org/fileformat.html#the_database_header
    private const int HeaderBytes = 100;

    // Enough for the tables and indexes of an import of 40,000 pieces.
    private const int CacheKibibytes = 32 * 1024;

    /// <summary>
    /// Up to this size all pages are looked over at opening (about 5 ms a megabyte); beyond, in the background, before the day's backup, up
    /// to 64 MB before the first change, and before the whole is read.
    /// </summary>
    public const long SmallEnoughToCheck = 8 << 20;

    public static (SqliteConnection Connection, bool IsReadOnly) Open(string path, IReadOnlyList<string> laterScripts)
    {
        try
        {
            RefuseWhatIsNoLogbook(path, Migrations.Scripts.Count + laterScripts.Count);
            try
            {
                return OpenToWrite(path, laterScripts);
            }
            catch (SqliteException e) when (StoreTrouble.IsReadOnlyPlace(e) && File.Exists(path))
            {
                return (OpenToRead(path, Migrations.Scripts.Count + laterScripts.Count), true);
            }
        }
        catch (SqliteException e)
        {
            throw StoreTrouble.Of(e, path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new LogbookException($"The logbook {path} cannot be read ({e.Message.TrimEnd('.')}); check that you may read it.", e);
        }
    }

    private static void RefuseWhatIsNoLogbook(string path, int version)
    {
        string folder = Path.GetDirectoryName(path) ?? path;
        if (Directory.Exists(path))
            throw new LogbookException($"{path} is a folder; name a file for the logbook.");
        if (!Directory.Exists(folder))
            throw new LogbookException($"The folder {folder} does not exist; make it, or name another place for the logbook.");
        if (InputFile.IsPipe(path))
            throw StoreTrouble.NotALogbook(path);
        if (!File.Exists(path) || new FileInfo(path).Length == 0)
        {
            RefuseToBeginBesideABackup(path);
            return;
        }

        Span<byte> header = stackalloc byte[HeaderBytes];
        using (var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete))
        {
            if (file.ReadAtLeast(header, header.Length, throwOnEndOfStream: false) < header.Length)
                throw StoreTrouble.NotALogbook(path);
        }
        if (!IsLogbook(header))
            throw StoreTrouble.NotALogbook(path);
        if (BinaryPrimitives.ReadInt32BigEndian(header[60..]) > version)
            throw StoreTrouble.Newer(path);
    }

    /// <summary>Whether a file is a logbook by its first bytes, of whichever version; what cannot be read is none.</summary>
    public static bool IsLogbook(string path)
    {
        Span<byte> header = stackalloc byte[HeaderBytes];
        try
        {
            if (InputFile.IsPipe(path))
                return false;
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            return file.ReadAtLeast(header, HeaderBytes, throwOnEndOfStream: false) == HeaderBytes && IsLogbook(header);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static bool IsLogbook(ReadOnlySpan<byte> header) =>
        header.StartsWith("SQLite format 3\0"u8) && BinaryPrimitives.ReadInt32BigEndian(header[68..]) == Migrations.ApplicationId;

    // A logbook that was emptied or lost is not begun anew beside what would bring it back.
    private static void RefuseToBeginBesideABackup(string path)
    {
        if (!File.Exists(path + "-wal") && Backups.Of(path) is [string newest, ..])
            throw new LogbookException($"The logbook {path} is {(File.Exists(path) ? "empty" : "not there")}, but its backup " +
                $"{Path.GetFileName(newest)} is; restore that, or move the backups elsewhere to begin anew.");
    }

    private static (SqliteConnection, bool) OpenToWrite(string path, IReadOnlyList<string> laterScripts)
    {
        if (!File.Exists(path))
            Begin(path, laterScripts);
        MakeLeftoversWritable(path);
        SqliteConnection connection = Connect(path, SqliteOpenMode.ReadWriteCreate);
        try
        {
            if (raw.sqlite3_db_readonly(connection.Handle, "main") == 1)
                throw new SqliteException("read-only", raw.SQLITE_READONLY);
            Prepare(connection, path, laterScripts);
            return (connection, false);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    // Whole under another name and on the disk before it has its own: a power cut while it is made must not leave half a logbook, which
    // could neither be opened nor begun again.
    private static void Begin(string path, IReadOnlyList<string> laterScripts)
    {
        string beside = $"{path}.{Guid.NewGuid():N}.part";
        try
        {
            OutputFile.Create(beside).Dispose();
            using (SqliteConnection connection = Connect(beside, SqliteOpenMode.ReadWriteCreate))
                Prepare(connection, beside, laterScripts);
            using (var file = new FileStream(beside, FileMode.Open, FileAccess.ReadWrite))
                file.Flush(flushToDisk: true);
            File.Move(beside, path, overwrite: false);
        }
        catch (IOException) when (File.Exists(path))
        {
            // Another process has made it just now.
        }
        catch (UnauthorizedAccessException)
        {
            // The database says so in its own words.
        }
        finally
        {
            foreach (string part in new[] { "", "-journal", "-wal", "-shm" })
                OutputFile.Discard(beside + part);
        }
    }

    // What a program that ran without the right to write left behind would lock the logbook for good.
    private static void MakeLeftoversWritable(string path)
    {
        if (OperatingSystem.IsWindows())
            return;
        foreach (string left in new[] { path + "-wal", path + "-shm" }.Where(File.Exists))
        {
            try
            {
                if (!File.GetUnixFileMode(left).HasFlag(UnixFileMode.UserWrite)
                    && File.GetUnixFileMode(path).HasFlag(UnixFileMode.UserWrite))
                    File.SetUnixFileMode(left, File.GetUnixFileMode(path));
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // Somebody else's: then the logbook can be read only.
            }
        }
    }

    private static void Prepare(SqliteConnection connection, string path, IReadOnlyList<string> laterScripts)
    {
        int target = Migrations.Scripts.Count + laterScripts.Count;
        int version = connection.ExecuteScalar<int>("PRAGMA user_version");
        if (version > target)
            throw StoreTrouble.Newer(path);
        if (new FileInfo(path).Length <= SmallEnoughToCheck)
            CheckPages(connection, path);
        if (version < target)
            Migrate(connection, path, version, laterScripts);

        // The journal mode stays with the file. It is set only once all the rest is there, so that the mark of a logbook
        // is in the file itself and not still in its write-ahead log.
        if (connection.ExecuteScalar<string>("PRAGMA journal_mode") != "wal")
            connection.Execute("PRAGMA journal_mode = WAL");
        connection.Execute($"PRAGMA foreign_keys = ON; PRAGMA cache_size = -{CacheKibibytes}");
    }

    private static void Migrate(SqliteConnection connection, string path, int version, IReadOnlyList<string> laterScripts)
    {
        if (version > 0)
        {
            CheckPages(connection, path);
            Backups.Before(connection, path, Migrations.Scripts.Count + laterScripts.Count);
        }
        Migrations.Run(connection, laterScripts);
    }

    /// <summary>Opens a logbook of this version to read, whatever may be written.</summary>
    public static SqliteConnection OpenToRead(string path)
    {
        try
        {
            RefuseWhatIsNoLogbook(path, Migrations.Scripts.Count);
            return File.Exists(path) ? OpenToRead(path, Migrations.Scripts.Count) : throw new LogbookException($"{path} is not there.");
        }
        catch (SqliteException e)
        {
            throw StoreTrouble.Of(e, path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new LogbookException($"{path} cannot be read ({e.Message.TrimEnd('.')}); check that you may read it.", e);
        }
    }

    private static SqliteConnection OpenToRead(string path, int target)
    {
        SqliteConnection connection = Connect(path, SqliteOpenMode.ReadOnly);
        try
        {
            return CheckedToRead(connection, path, target);
        }
        catch (SqliteException e) when (StoreTrouble.IsReadOnlyPlace(e))
        {
            // A write-ahead log needs files beside the logbook, which cannot be made here. Where none is left over, the
            // file is whole by itself and nobody can be writing it.
            connection.Dispose();
            if (File.Exists(path + "-wal") && new FileInfo(path + "-wal").Length > 0)
                throw new LogbookException($"The logbook {path} was not closed properly and its folder cannot be written; copy it and " +
                    $"{Path.GetFileName(path)}-wal to a folder of your own and open that.", e);
            connection = Connect(new Uri(path).AbsoluteUri + "?immutable=1", SqliteOpenMode.ReadOnly);
            return CheckedToRead(connection, path, target);
        }
    }

    private static SqliteConnection CheckedToRead(SqliteConnection connection, string path, int target)
    {
        try
        {
            int version = connection.ExecuteScalar<int>("PRAGMA user_version");
            _ = connection.ExecuteScalar<int>("SELECT count(*) FROM sqlite_schema");
            return version == target ? connection
                : throw (
                    version > target ? StoreTrouble.Newer(path)
                    : new LogbookException($"The logbook {path} is from an older version, which cannot be read without bringing it up to " +
                    $"date; copy it to a folder of your own and open that with --store FILE."));
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>Connects, without pooling.</summary>
    public static SqliteConnection Connect(string source, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = source,
            Mode = mode,
            Pooling = false,
            DefaultTimeout = PatienceSeconds,
        }.ToString());
        try
        {
            connection.Open();
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>Looks over every page.</summary>
    /// <exception cref="LogbookException">One is damaged.</exception>
    public static void CheckPages(SqliteConnection connection, string path)
    {
        if (connection.ExecuteScalar<string>("PRAGMA quick_check(1)") != "ok")
            throw StoreTrouble.Damaged(path);
    }
}
