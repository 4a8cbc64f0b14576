using System.CommandLine;
using System.Globalization;
using TrialLog.Application.Files;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary><c>triallog backup [FILE]</c>: a copy of the logbook.</summary>
internal static class BackupCommand
{
    public static Command Build(CommandFrame frame)
    {
        var to = new Argument<string?>("FILE")
        {
            Description = "The file to write; else one beside the logbook, named by day and time.",
            Arity = ArgumentArity.ZeroOrOne
        };
        var command = new Command("backup", "Copy the logbook, whole, even while it is open elsewhere.") { to, frame.Json };
        frame.WithoutLogbook(command, parsed =>
        {
            using LogbookFile logbook = LogbookFile.Open(StoredLogbook.Path(frame, parsed));
            // Not named by the day alone: of those that the program makes by itself only the newest stay.
            string file = parsed.GetValue(to)
                ?? $"{logbook.Path}." +
                    $"{frame.ConsoleHost.Clock.GetLocalNow().ToString("yyyy-MM-dd-HHmmss", CultureInfo.InvariantCulture)}.bak";
            NewFile.Refuse(new Workspace(logbook, frame.ConsoleHost.Clock), file);
            Backups.Make(logbook, file);
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(frame.Out, new BackupFacts(logbook.Path, Path.GetFullPath(file)));
            else
                frame.Out.WriteLine($"The logbook is copied to {Quoted.Visible(file)}. To go back to it: triallog restore FILE");
        });
        return command;
    }
}

/// <summary><c>triallog restore FILE</c>: puts a backup in the logbook's place.</summary>
internal static class RestoreCommand
{
    public static Command Build(CommandFrame frame)
    {
        var from = new Argument<string>("FILE") { Description = "The backup. It stays where it is." };
        var command = new Command("restore", "Put a backup in the logbook's place; what was there is kept beside it. Close the " +
            "program elsewhere first.") { from, frame.Json };
        frame.WithoutLogbook(command, parsed =>
        {
            string backup = parsed.GetRequiredValue(from), store = Path.GetFullPath(frame.StorePath(parsed));
            if (string.IsNullOrWhiteSpace(backup))
                throw new RequestException("A backup needs a name; those beside the logbook are listed by: triallog verify");
            if (string.Equals(Path.GetFullPath(backup), store, StringComparison.OrdinalIgnoreCase))
                throw new RequestException($"{Quoted.Visible(backup)} is the logbook itself; name a backup of it.");
            string? kept = Backups.Restore(store, backup);
            if (parsed.GetValue(frame.Json))
            {
                JsonOutput.Write(frame.Out, new RestoreFacts(store, Path.GetFullPath(backup), kept));
                return;
            }

            using LogbookFile restored = LogbookFile.OpenToRead(store);
            frame.Out.WriteLine($"The logbook is as it was in {Quoted.Visible(backup)}: {StoredLogbook.Contents(restored)}.");
            if (kept is not null)
                frame.Out.WriteLine($"What was there until now is kept in {Quoted.Visible(kept)}.");
        });
        return command;
    }
}

/// <summary><c>triallog verify</c>: whether the logbook is sound. It writes nothing.</summary>
internal static class VerifyCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("verify", "Read the whole logbook and say whether it is sound, and which backups lie beside it. With " +
            "--store FILE a backup is looked over alike.") { frame.Json };
        frame.WithoutLogbook(command, parsed =>
        {
            using LogbookFile logbook = LogbookFile.OpenToRead(StoredLogbook.Path(frame, parsed));
            IReadOnlyList<string> problems = logbook.Verify(), backups = Backups.Of(logbook.Path);
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(frame.Out, new VerifyFacts(logbook.Path, problems.Count == 0, problems, backups));
            else
                WriteText(frame, logbook, problems, backups);
            if (problems.Count > 0)
            {
                throw new RequestException($"The logbook {logbook.Path} is not sound ({Say.Count(problems.Count, "problem")}); "
                    + (backups.Count > 0 ? "put back a backup: triallog restore FILE"
                        : "no backup lies beside it: put back a copy, or export what can still be read."));
            }
        });
        return command;
    }

    private static void WriteText(CommandFrame frame, LogbookFile logbook, IReadOnlyList<string> problems, IReadOnlyList<string> backups)
    {
        if (problems.Count == 0)
            frame.Out.WriteLine($"The logbook {Quoted.Visible(logbook.Path)} is sound: {StoredLogbook.Contents(logbook)}.");
        foreach (string problem in problems)
            Wrapped.Write(frame.Out, Quoted.Visible(problem), frame.ConsoleHost.Width, "- ", 2);
        frame.Out.WriteLine(
            backups.Count > 0 ? "Backups beside it, newest first:" : "No backup lies beside it. To make one: triallog backup");
        foreach (string backup in backups)
            frame.Out.WriteLine($"- {Quoted.Visible(backup)}");
    }
}

/// <summary>A logbook that is there: unlike other commands, these begin none.</summary>
file static class StoredLogbook
{
    /// <exception cref="RequestException">There is none, nor a backup of it.</exception>
    public static string Path(CommandFrame frame, ParseResult parsed)
    {
        var file = new FileInfo(frame.StorePath(parsed));
        // What lies beside a lost one is for the logbook's own sentence to tell.
        return file is { Exists: true, Length: > 0 } || Backups.Of(file.FullName).Count > 0 ? file.FullName
            : throw new RequestException($"There is no logbook at {file.FullName}; name another with --store FILE.");
    }

    /// <summary>How much it holds: <c>2 paddlers, 14 outings, 56 pieces</c>.</summary>
    public static string Contents(LogbookFile logbook)
    {
        IReadOnlyList<Domain.Log.Outing> outings = logbook.Outings();
        return $"{Say.Count(logbook.Paddlers().Count, "paddler")}, {Say.Count(outings.Count, "outing")}, " +
            $"{Say.Count(outings.Sum(outing => outing.Pieces.Count), "piece")}";
    }
}
