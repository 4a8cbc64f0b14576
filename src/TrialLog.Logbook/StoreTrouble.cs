using Microsoft.Data.Sqlite;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook;

/// <summary>What the database says when something fails, put in a sentence for the user.</summary>
internal static class StoreTrouble
{
    // Result codes: https://sqlite.org/rescode.html
    private const int Busy = 5, Locked = 6, ReadOnly = 8, InputOutput = 10, Corrupt = 11, Full = 13, CannotOpen = 14, Constraint = 19,
        NotADatabase = 26;
    private const int ForeignKey = 787;

    public static bool IsReadOnlyPlace(SqliteException e) => e.SqliteErrorCode is ReadOnly or CannotOpen;

    public static bool IsDamage(SqliteException e) => e.SqliteErrorCode is Corrupt or NotADatabase;

    /// <summary>The exception that the user gets to see.</summary>
    public static Exception Of(SqliteException e, string path) => e.SqliteErrorCode switch
    {
        Busy or Locked =>
            new LogbookException($"The logbook {path} is being written by another program; nothing was changed, try again in a moment.", e),
        ReadOnly => ReadOnlyLogbook(path, e),
        InputOutput =>
            new LogbookException(
            $"The disk would not read or write the logbook {path}; nothing was changed, check the disk and its free space.", e),
        Corrupt => Damaged(path, e),
        Full => new LogbookException($"The disk is full, so the logbook {path} was left as it was; make room and try again.", e),
        CannotOpen => new LogbookException($"The logbook {path} cannot be opened; check that you may read and write it and its folder.", e),
        NotADatabase => NotALogbook(path, e),
        Constraint when e.SqliteExtendedErrorCode == ForeignKey =>
            new InvalidValueException("It refers to a paddler, hull, paddle or outing that is not in the logbook, or removes one that is " +
            "still in use; nothing was changed."),
        Constraint => new InvalidValueException($"The logbook will not hold such a value ({e.Message}); nothing was changed."),
        _ => new LogbookException($"The logbook {path} failed ({e.Message}); nothing was changed.", e),
    };

    public static LogbookException Damaged(string path, Exception? cause = null) => new(
        $"The logbook {path} is damaged; it was left untouched: put back a copy or a backup (the .bak files beside it), or export " +
            $"what can still be read.", cause!);

    public static LogbookException NotALogbook(string path, Exception? cause = null) => new(
        $"{path} is not a TrialLog logbook; it was left untouched: name another file, or import it if it is a CSV " +
            $"file or a recording.", cause!);

    public static LogbookException Newer(string path) => new(
        $"The logbook {path} was written by a newer version of TrialLog; it was left untouched: update TrialLog to open it.");

    public static LogbookException ReadOnlyLogbook(string path, Exception? cause = null) => new(
        $"The logbook {path} can be read but not written; nothing was changed: copy it to a folder of your own, or ask for " +
            $"the right to write it.", cause!);
}
