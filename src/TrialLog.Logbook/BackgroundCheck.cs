using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace TrialLog.Logbook;

/// <summary>
/// Looks over the pages of a logbook too large to be looked over at opening, beside whatever is done with it, for as long as it is open: so
/// the screens hear of damage while somebody is at them, and not only before the next backup.
/// </summary>
internal sealed class BackgroundCheck : IDisposable
{
    private const int StepsBetweenLooks = 10_000;

    private readonly SqliteConnection _connection;
    private readonly Thread _thread;
    private volatile bool _stop, _isSound, _isDamaged;

    private BackgroundCheck(SqliteConnection connection)
    {
        _connection = connection;
        raw.sqlite3_progress_handler(connection.Handle, StepsBetweenLooks, _ => _stop ? 1 : 0, null);
        _thread = new Thread(Run) { IsBackground = true, Priority = ThreadPriority.Lowest };
    }

    /// <summary>Begins; null where the file cannot be opened a second time, which is not the trouble to tell.</summary>
    public static BackgroundCheck? Start(string path)
    {
        try
        {
            var check = new BackgroundCheck(Opening.Connect(path, SqliteOpenMode.ReadOnly));
            check._thread.Start();
            return check;
        }
        catch (SqliteException)
        {
            return null;
        }
    }

    /// <summary>Whether it came to its end and found nothing.</summary>
    public bool IsSound => _isSound;

    /// <summary>Whether it found a damaged page.</summary>
    public bool IsDamaged => _isDamaged;

    /// <summary>Waits until it came to its end.</summary>
    public void Wait() => _thread.Join();

    /// <summary>Stops it where it is.</summary>
    public void Dispose()
    {
        _stop = true;
        _thread.Join();
        _connection.Dispose();
    }

    private void Run()
    {
        try
        {
            bool sound = _connection.ExecuteScalar<string>("PRAGMA quick_check(1)") == "ok";
            // One that is stopped says of the page it was at that it could not be read.
            (_isSound, _isDamaged) = (sound && !_stop, !sound && !_stop);
        }
        catch (SqliteException e)
        {
            _isDamaged = !_stop && StoreTrouble.IsDamage(e);
        }
    }
}
