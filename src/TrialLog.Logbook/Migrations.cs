using System.Reflection;
using Dapper;
using DbUp;
using DbUp.Engine;
using DbUp.Sqlite.Helpers;
using Microsoft.Data.Sqlite;

namespace TrialLog.Logbook;

/// <summary>
/// The scripts that bring a logbook to the current version. The version is the number of scripts that were run, held in
/// the database's <c>user_version</c>, so that opening a current logbook need not ask which were.
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
    /// <param name="further">Scripts beyond the embedded ones, by name: a test's stand-in for those of a later version.</param>
    public static void Run(SqliteConnection connection, IReadOnlyList<(string Name, string Sql)> further)
    {
        int target = Scripts.Count + further.Count;
        using SqliteTransaction transaction = connection.BeginTransaction(deferred: false);

        // Another process may have done it while this one waited for its turn.
        if (connection.ExecuteScalar<int>("PRAGMA user_version") >= target)
            return;

        using var shared = new SharedConnection(connection);
        DatabaseUpgradeResult result = DeployChanges.To.SqliteDatabase(shared)
            .WithScriptsEmbeddedInAssembly(Here)
            .WithScripts(further.Select(script => new SqlScript(script.Name, script.Sql)))
            .WithVariablesDisabled()
            .WithoutTransaction()
            .LogToNowhere()
            .Build()
            .PerformUpgrade();
        if (!result.Successful)
            throw result.Error;
        connection.Execute($"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {target}");
        transaction.Commit();
    }
}
