using System.CommandLine;
using TrialLog.Application.Files;
using TrialLog.Application.Setup;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Reports.Documents;

namespace TrialLog.Commands;

/// <summary><c>triallog import FILE...</c>: CSV or recordings.</summary>
internal static class ImportCommand
{
    public static Command Build(CommandFrame frame)
    {
        var files = new Argument<string[]>(
            "FILE")
        {
            Description = "CSV, or a recording (GPX, TCX, FIT, also gzipped), told apart by content.",
            Arity = ArgumentArity.OneOrMore
        };
        var skipBad = new Option<bool>("--skip-bad") { Description = "Import the good rows of a CSV and list what is left out." };
        RecordingOptions recording = new();
        var command = new Command("import", "Import a CSV or a recording; the same file twice adds nothing.") { files, frame.Paddler,
            frame.Hull, frame.Paddle, skipBad, frame.NewName, frame.Json };
        foreach (Option option in recording.All)
            command.Options.Add(option);
        frame.OnDesk(command, (parsed, workspace) =>
        {
            List<ImportFacts> done = [];
            foreach (string file in parsed.GetRequiredValue(files))
            {
                using FileStream stream = FileToImport.Open(file);
                done.Add(FileToImport.LooksLikeRecording(stream)
                    ? new ImportRecordingCommand(frame, parsed, workspace, recording).Run(stream, Path.GetFileName(file))
                    : Csv(frame, workspace, stream, Path.GetFileName(file), new CsvReadOptions
                    {
                        Today = workspace.Today,
                        Unit = workspace.Unit,
                        SkipBad = parsed.GetValue(skipBad),
                        NewNames = parsed.GetValue(frame.NewName),
                        Paddler = parsed.GetValue(frame.Paddler),
                        Paddle = parsed.GetValue(frame.Paddle),
                    }, parsed.GetValue(recording.Again), quiet: parsed.GetValue(frame.Json)));
            }

            if (parsed.GetValue(frame.Json))
                JsonOutput.Write<IReadOnlyList<ImportFacts>>(frame.Out, done);
        }, begins: true);
        return command;
    }

    private static ImportFacts Csv(
        CommandFrame frame, Workspace workspace, FileStream stream, string name, CsvReadOptions options, bool again, bool quiet)
    {
        CsvAdditions additions = ImportCsv.From(workspace, stream, name, options, again);
        if (!quiet)
        {
            frame.Out.WriteLine($"{Quoted.Brief(name, 80)}: {additions.Says()}");
            foreach (CsvProblem problem in additions.Problems)
                Wrapped.Write(frame.Out, problem.ToString(), frame.ConsoleHost.Width, "  left out: ", 4);
            foreach (string warning in additions.Warnings)
                Wrapped.Write(frame.Out, warning, frame.ConsoleHost.Width, "  ", 2);
        }

        return new ImportFacts(
            name, additions.PiecesAdded, additions.PiecesAlreadyThere, additions.RefusedRows,
            [.. additions.Problems.Select(problem => new RefusedRowFacts(problem.Line, problem.Column, problem.Reason))],
                additions.Warnings);
    }
}
