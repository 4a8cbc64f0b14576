using Dapper;
using Microsoft.Data.Sqlite;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Rows;

namespace TrialLog.Logbook;

/// <summary>
/// An open logbook: one SQLite file. Everything the user does to it is one <see cref="Change"/>, which happens whole or
/// not at all and can be taken back. Several programs may have the same logbook open. Members may be called from any
/// thread; they wait for each other.
/// </summary>
public sealed class LogbookFile : IDisposable
{
    private readonly SqliteConnection _connection;
    // About a third of a second; beyond, a log is not kept waiting, and only what reads the whole checks it.
    private const long MostToCheckBeforeAChange = 64 << 20;

    private readonly Lock _turn = new();
    private readonly Remembered<Paddler> _paddlers = new(LogbookReader.Paddlers);
    private readonly Remembered<Hull> _hulls = new(LogbookReader.Hulls);
    private readonly Remembered<Paddle> _paddles = new(LogbookReader.Paddles);
    private bool _changing, _isChecked, _isBackedUp;
    private Action? _provided;

    // The journal as well as the records are read by column names with underscores, whichever a process reads first.
    static LogbookFile() => DefaultTypeMap.MatchNamesWithUnderscores = true;

    private LogbookFile(string path, SqliteConnection connection, bool isReadOnly)
    {
        Path = path;
        _connection = connection;
        IsReadOnly = isReadOnly;
        if (!isReadOnly && new FileInfo(path).Length > Opening.SmallEnoughToCheck)
            Background = BackgroundCheck.Start(path);
    }

    /// <summary>
    /// Opens a logbook. One that is not there is created, with the standard hulls; one of an older version is backed up beside itself and
    /// migrated.
    /// </summary>
    /// <exception cref="LogbookException">It cannot be opened: the sentence says why and what to do. The file is untouched.</exception>
    public static LogbookFile Open(string path) => Open(path, []);

    internal static LogbookFile Open(string path, IReadOnlyList<string> laterScripts)
    {
        string full = System.IO.Path.GetFullPath(path);
        (SqliteConnection connection, bool isReadOnly) = Opening.Open(full, laterScripts);
        return new LogbookFile(full, connection, isReadOnly);
    }

    /// <summary>Opens a logbook of this version to be read, such as a backup; nothing is written beside it or into it.</summary>
    /// <exception cref="LogbookException">It cannot be opened: the sentence says why and what to do.</exception>
    public static LogbookFile OpenToRead(string path)
    {
        string full = System.IO.Path.GetFullPath(path);
        return new LogbookFile(full, Opening.OpenToRead(full), isReadOnly: true);
    }

    /// <summary>Whether a file is a logbook by its first bytes, of whichever version.</summary>
    public static bool IsAt(string path) => Opening.IsLogbook(path);

    /// <summary>The full path of the file.</summary>
    public string Path { get; }

    /// <summary>Whether the logbook has never been written to, as one that was just begun: what a slip in its name looks like.</summary>
    public bool IsNew => LastChange == 0;

    /// <summary>Whether the file or its folder cannot be written, so that the logbook can be read but not changed.</summary>
    public bool IsReadOnly { get; }

    /// <summary>What looks over a large file while it is open; null for a small one, which was looked over at opening.</summary>
    internal BackgroundCheck? Background { get; }

    /// <summary>The connection, for tests that bring about what a disk or another program may do.</summary>
    internal SqliteConnection Connection => _connection;

    /// <summary>The paddlers, by name.</summary>
    public IReadOnlyList<Paddler> Paddlers() => Ask(_paddlers.Of);

    /// <summary>The hulls, by name.</summary>
    public IReadOnlyList<Hull> Hulls() => Ask(_hulls.Of);

    /// <summary>The paddles, by name.</summary>
    public IReadOnlyList<Paddle> Paddles() => Ask(_paddles.Of);

    /// <summary>Outings with their pieces, by date, time (unknown first) and label: one paddler's, or all.</summary>
    public IReadOnlyList<Outing> Outings(Guid? paddlerId = null) => Ask(connection => LogbookReader.Outings(connection, paddlerId));

    /// <summary>The outings of some days, and those that have a piece of some origin, by date, time and label.</summary>
    /// <param name="days">The days.</param>
    /// <param name="isOrigin">Whether it is one of the origins.</param>
    public IReadOnlyList<Outing> Outings(IEnumerable<DateOnly> days, Func<string, bool> isOrigin) =>
        Ask(connection => LogbookReader.Outings(connection, days, isOrigin));

    /// <summary>How many outings each paddler has; those who have none are left out.</summary>
    public IReadOnlyDictionary<Guid, int> OutingCounts() => Ask(LogbookReader.OutingCounts);

    /// <summary>How many pieces there are, of one paddler or of all.</summary>
    public long CountOfPieces(Guid? paddlerId) => Ask(connection => LogbookReader.CountOfPieces(connection, paddlerId));

    /// <summary>Who has paddled with which paddle, and how many pieces.</summary>
    public IReadOnlyList<PaddleUse> PaddleUses() => Ask(LogbookReader.PaddleUses);

    /// <summary>What the logs that were weighed say to others, as that build weighed them; the log of one that is not among them was
    /// changed since, or never weighed.</summary>
    public IReadOnlyList<KeptLesson> Lessons(string weighedBy) => Ask(connection => KeptLessons.Of(connection, weighedBy));

    /// <summary>
    /// Keeps what logs say to others, unless the logbook was changed since. It follows from the rest and is no change: where it cannot be
    /// written, or another program writes just now, it is left.
    /// </summary>
    /// <param name="weighedBy">The build that weighed them.</param>
    /// <param name="asOf">The change after which the logs were read.</param>
    /// <param name="lessons">What they say.</param>
    public void KeepLessons(string weighedBy, long asOf, IReadOnlyList<KeptLesson> lessons)
    {
        lock (_turn)
        {
            if (IsReadOnly || _changing)
                return;
            int patience = _connection.DefaultTimeout;
            try
            {
                _connection.DefaultTimeout = 1;
                using var transaction = Transaction.ToWrite(_connection);
                if (KeptLessons.Keep(_connection, weighedBy, asOf, lessons))
                    transaction.Commit();
            }
            catch (SqliteException)
            {
                // They are weighed again when they are asked for.
            }
            finally
            {
                _connection.DefaultTimeout = patience;
            }
        }
    }

    /// <summary>Trial cards in the order given: one paddler's, or all.</summary>
    public IReadOnlyList<GivenCard> Cards(Guid? paddlerId = null) => Ask(connection => LogbookReader.Cards(connection, paddlerId));

    /// <summary>Technique checks by date: one paddler's, or all.</summary>
    public IReadOnlyList<TechniqueCheck> TechniqueChecks(Guid? paddlerId = null) =>
        Ask(connection => LogbookReader.TechniqueChecks(connection, paddlerId));

    /// <summary>Words that soreness is gone, by date: one paddler's, or all.</summary>
    public IReadOnlyList<SorenessClearance> SorenessClearances(Guid? paddlerId = null) =>
        Ask(connection => LogbookReader.SorenessClearances(connection, paddlerId));

    /// <summary>What was decided, by date: for one paddler, or all.</summary>
    public IReadOnlyList<Decision> Decisions(Guid? paddlerId = null) => Ask(connection => LogbookReader.Decisions(connection, paddlerId));

    /// <summary>Coaches' notes in the order written.</summary>
    public IReadOnlyList<CoachNote> Notes() => Ask(LogbookReader.Notes);

    /// <summary>All of the above at one moment.</summary>
    /// <exception cref="LogbookException">It is damaged.</exception>
    public LogbookSnapshot Everything() => Ask(connection =>
    {
        CheckPagesOnce();
        return LogbookReader.Everything(connection);
    });

    /// <summary>Passes over all outings by day without holding them, as often as asked, at one moment; the pages are looked over
    /// first.</summary>
    /// <param name="look">Is given the names of all things, but no outings in them, and the outings.</param>
    /// <exception cref="LogbookException">It is damaged.</exception>
    public T OverOutings<T>(Func<LogbookSnapshot, IEnumerable<Outing>, T> look) => AskAtOneMoment(connection => look(
        new LogbookSnapshot
        {
            Paddlers = LogbookReader.Paddlers(connection),
            Hulls = LogbookReader.Hulls(connection),
            Paddles = LogbookReader.Paddles(connection),
        }, LogbookReader.OutingsByDay(connection)));

    /// <summary>
    /// Looks over every page of a file too large to be looked over at opening, once: before the whole of it goes anywhere.
    /// </summary>
    /// <exception cref="LogbookException">A page is damaged.</exception>
    public void CheckPages() => Ask(_ => CheckPagesOnce());

    /// <summary>
    /// What is wrong with the file, a sentence each, as far as reading all of it tells: pages, references, and every record.
    /// </summary>
    public IReadOnlyList<string> Verify() => LogbookCheck.Problems(this);

    /// <summary>Asks several questions of the logbook as it is at one moment.</summary>
    internal T AskAtOneMoment<T>(Func<SqliteConnection, T> question) => Ask(connection =>
    {
        CheckPagesOnce();
        using var oneMoment = Transaction.ToRead(connection);
        return question(connection);
    });

    /// <summary>Brings in what another logbook holds, as a change that can be taken back; where it alters no record, as a note.</summary>
    internal void Merge(string what, bool altersRecords, Action<LogbookWriter> write) =>
        Write(altersRecords ? Journal.BeginMerge : Journal.BeginLearning, what, write);

    /// <summary>The number of the newest change, undoing and redoing included; 0 for a new logbook. It only rises.</summary>
    public long LastChange => Ask(Journal.LastChange);

    /// <summary>What the user did, newest first, at most so many.</summary>
    public IReadOnlyList<ChangeSummary> Changes(int most) => Ask(connection => Journal.Changes(connection, most));

    /// <summary>The log as it was right after that change; 0 for how it began.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such change.</exception>
    public LogbookSnapshot AsOf(long change) => Ask(connection =>
    {
        ArgumentOutOfRangeException.ThrowIfNegative(change);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(change, Journal.LastChange(connection));
        using var copy = new SqliteConnection("Data Source=:memory:");
        copy.Open();
        connection.BackupDatabase(copy);
        Journal.GoBackTo(copy, change);
        return LogbookReader.Everything(copy);
    });

    /// <summary>
    /// Does one thing to the logbook: all that <paramref name="write"/> writes, or nothing if it throws. A change that
    /// alters nothing is not recorded.
    /// </summary>
    /// <param name="what">What is done, in a sentence: undo shows it.</param>
    /// <param name="write">Writes the records. The writer is of no use afterwards.</param>
    /// <exception cref="LogbookException">It cannot be written; nothing was changed.</exception>
    /// <exception cref="InvalidValueException">A record cannot be right; nothing was changed.</exception>
    public void Change(string what, Action<LogbookWriter> write) => Write(Journal.Begin, what, write);

    /// <summary>
    /// As <see cref="Change"/>, for what the program notes on its own, such as a card that was given: undo passes over it
    /// and <see cref="Changes"/> does not list it, but <see cref="AsOf"/> knows it.
    /// </summary>
    /// <exception cref="LogbookException">It cannot be written; nothing was changed.</exception>
    public void Note(string what, Action<LogbookWriter> write) => Write(Journal.BeginNote, what, write);

    /// <summary>
    /// Changes the logbook only if what the change rests on still stands: the check runs within the transaction of the first thing
    /// that is written, so that no other program can write between the two.
    /// </summary>
    /// <param name="check">Reads this logbook, and throws where the change must not be made.</param>
    /// <param name="change">Makes the change.</param>
    public void Provided(Action check, Action change)
    {
        lock (_turn)
        {
            _provided = check;
            try
            {
                change();
            }
            finally
            {
                _provided = null;
            }
        }
    }

    /// <summary>Takes back the newest change not yet taken back; null if there is none.</summary>
    /// <exception cref="LogbookException">It cannot be written; nothing was changed.</exception>
    public ChangeSummary? Undo()
    {
        ChangeSummary? undone = null;
        Write(connection => (undone = Journal.Undo(connection)) is not null);
        return undone;
    }

    /// <summary>Does again what was last taken back; null if there is none, or if something else was done since.</summary>
    /// <exception cref="LogbookException">It cannot be written; nothing was changed.</exception>
    public ChangeSummary? Redo()
    {
        ChangeSummary? redone = null;
        Write(connection => (redone = Journal.Redo(connection)) is not null);
        return redone;
    }

    /// <summary>Half-typed input kept under a name; null if there is none.</summary>
    public string? Draft(string name) =>
        Ask(connection => connection.QueryFirstOrDefault<string>("SELECT text FROM drafts WHERE name = @name", new { name }));

    /// <summary>Keeps half-typed input. Not a change: undo leaves it alone.</summary>
    /// <exception cref="LogbookException">It cannot be written.</exception>
    public void SaveDraft(string name, string text) => Write(connection => connection.Execute("""
        INSERT INTO drafts (name, text, saved_at) VALUES (@name, @text, @at)
        ON CONFLICT (name) DO UPDATE SET text = @text, saved_at = @at
        """, new { name, text, at = Stored.Moment(DateTimeOffset.UtcNow) }) > 0);

    /// <summary>Forgets half-typed input.</summary>
    /// <exception cref="LogbookException">It cannot be written.</exception>
    public void DropDraft(string name) =>
        Write(connection => connection.Execute("DELETE FROM drafts WHERE name = @name", new { name }) > 0);

    /// <summary>A choice of the user; null where none was made.</summary>
    public string? Setting(string name) =>
        Ask(connection => connection.QueryFirstOrDefault<string>("SELECT value FROM settings WHERE name = @name", new { name }));

    /// <summary>Keeps a choice of the user, or forgets it where the value is null. Not a change: undo leaves it alone.</summary>
    /// <exception cref="LogbookException">It cannot be written.</exception>
    public void SaveSetting(string name, string? value) => Write(connection => connection.Execute(value is null
        ? "DELETE FROM settings WHERE name = @name"
        : "INSERT INTO settings (name, value) VALUES (@name, @value) ON CONFLICT (name) DO UPDATE SET value = @value",
        new { name, value }) > 0);

    /// <summary>Whether a file was imported before, by the hash of its bytes.</summary>
    public bool HasImported(string fileHash) => Ask(connection =>
        connection.ExecuteScalar<bool>("SELECT EXISTS (SELECT 1 FROM imports WHERE id = @fileHash)", new { fileHash }));

    /// <summary>Closes the file.</summary>
    public void Dispose()
    {
        Background?.Dispose();
        _connection.Dispose();
    }

    /// <summary>Copies the database.</summary>
    internal void Copying(Action<SqliteConnection> copy) => Ask(connection =>
    {
        copy(connection);
        return true;
    });

    private bool CheckPagesOnce()
    {
        if (!_isChecked && Background?.IsSound != true && new FileInfo(Path).Length > Opening.SmallEnoughToCheck)
            Opening.CheckPages(_connection, Path);
        return _isChecked = true;
    }

    private T Ask<T>(Func<SqliteConnection, T> question)
    {
        try
        {
            lock (_turn)
                return question(_connection);
        }
        catch (SqliteException e)
        {
            throw StoreTrouble.Of(e, Path);
        }
        catch (Exception e) when (e is InvalidValueException or FormatException or InvalidCastException or System.Data.DataException)
        {
            throw StoreTrouble.Damaged(Path, e);
        }
    }

    private void Write(Func<SqliteConnection, string, long> begin, string what, Action<LogbookWriter> write) => Write(connection =>
    {
        long change = begin(connection, what);
        using (var statements = new Statements(connection))
            write(new LogbookWriter(connection, statements));
        return Journal.Touched(connection, change);
    });

    /// <summary>Runs the work in a transaction, and keeps what it did if it says so.</summary>
    private void Write(Func<SqliteConnection, bool> work)
    {
        if (IsReadOnly)
            throw StoreTrouble.ReadOnlyLogbook(Path);
        lock (_turn)
        {
            if (_changing)
                throw new InvalidOperationException("A change cannot be made within another.");
            if (Background is { IsDamaged: true })
                throw StoreTrouble.Damaged(Path);
            _changing = true;
            try
            {
                if (!_isBackedUp)
                {
                    // A backup of what is damaged would take the place of a good one.
                    if (new FileInfo(Path).Length <= MostToCheckBeforeAChange || Backups.IsDue(_connection, Path))
                        CheckPagesOnce();
                    Backups.Daily(_connection, Path);
                    _isBackedUp = true;
                }

                using var transaction = Transaction.ToWrite(_connection);
                (Action? check, _provided) = (_provided, null);
                check?.Invoke();
                if (work(_connection))
                    transaction.Commit();
            }
            catch (SqliteException e)
            {
                throw StoreTrouble.Of(e, Path);
            }
            finally
            {
                _changing = false;
            }
        }
    }
}
