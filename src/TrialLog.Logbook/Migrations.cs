using System.Reflection;
using Dapper;
using Microsoft.Data.Sqlite;

namespace TrialLog.Logbook;

/// <summary>
/// The scripts that bring a logbook to the current version. The version is the number of scripts that were run, held in
/// the database's <c>user_version</c>.
/// </summary>
internal static class Migrations
{
    private static readonly Assembly Here = typeof(Migrations).Assembly;

    /// <summary>Marks a database as a logbook: "TrlL" in its <c>application_id</c>.</summary>
    public const int ApplicationId = 0x54726C4C;

    /// <summary>The names of the embedded scripts, in the order to run them.</summary>
    public static readonly IReadOnlyList<string> Scripts =
        [.. Here.GetManifestResourceNames().Where(name => name.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>Runs the scripts not yet run, all of them or, if one fails, none.</summary>
    /// <param name="connection">Open, and not in a transaction.</param>
    /// <param name="further">Scripts beyond the embedded ones: a test's stand-in for those of a later version.</param>
    public static void Run(SqliteConnection connection, IReadOnlyList<string> further)
    {
        using var transaction = Transaction.ToWrite(connection);

        // Asked within the transaction: another process may have done it while this one waited for its turn.
        int version = connection.ExecuteScalar<int>("PRAGMA user_version");
        List<string> scripts = [.. Scripts.Select(Text), .. further];
        if (version >= scripts.Count)
            return;
        foreach (string script in scripts.Skip(version))
            connection.Execute(script);
        JournalTriggers.Make(connection);
        connection.Execute($"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {scripts.Count}");
        transaction.Commit();
    }

    private static string Text(string script)
    {
        using var reader = new StreamReader(Here.GetManifestResourceStream(script)!);
        return reader.ReadToEnd();
    }
}
