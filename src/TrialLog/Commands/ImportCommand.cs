using System.CommandLine;
using TrialLog.Commands.Json;
using TrialLog.Domain;
using TrialLog.Recordings.Csv;
using TrialLog.UseCases;

namespace TrialLog.Commands;

/// <summary><c>triallog import FILE...</c>: CSV or recordings.</summary>
internal static class ImportCommand
{
    public static Command Build(CommandFrame frame)
    {
        var files = new Argument<string[]>("FILE") { Description = "CSV, or a recording (GPX, TCX, FIT, also gzipped), told apart by content.", Arity = ArgumentArity.OneOrMore };
        var skipBad = new Option<bool>("--skip-bad") { Description = "Import the good rows of a CSV and list what is left out." };
        RecordingOptions recording = new();
        var command = new Command("import", "Import a CSV or a recording; the same file twice adds nothing.") { files, frame.Paddler, frame.Hull, frame.Paddle, skipBad, frame.NewName, frame.Json };
        foreach (Option option in recording.All)
            command.Options.Add(option);
        frame.OnDesk(command, (parsed, desk) =>
        {
            List<ImportFacts> done = [];
            foreach (string file in parsed.GetRequiredValue(files))
            {
                using FileStream stream = FileToImport.Open(file);
                done.Add(FileToImport.LooksLikeRecording(stream)
                    ? ImportRecordingCommand.Run(frame, parsed, desk, recording, stream, Path.GetFileName(file))
                    : Csv(frame, desk, stream, Path.GetFileName(file), new CsvReadOptions
                    {
                        Today = desk.Today,
                        Unit = desk.Unit,
                        SkipBad = parsed.GetValue(skipBad),
                        NewNames = parsed.GetValue(frame.NewName),
                        Paddler = parsed.GetValue(frame.Paddler),
                        Paddle = parsed.GetValue(frame.Paddle),
                    }, parsed.GetValue(recording.Again), quiet: parsed.GetValue(frame.Json)));
            }

            if (parsed.GetValue(frame.Json))
                Facts.Write<IReadOnlyList<ImportFacts>>(frame.Out, done);
        });
        return command;
    }

    private static ImportFacts Csv(CommandFrame frame, Desk desk, FileStream stream, string name, CsvReadOptions options, bool again, bool quiet)
    {
        CsvAdditions additions = ImportCsv.From(desk, stream, name, options, again);
        if (!quiet)
        {
            frame.Out.WriteLine($"{Quoted.Brief(name, 80)}: {additions.Says()}");
            foreach (CsvProblem problem in additions.Problems)
                Wrapped.Write(frame.Out, problem.ToString(), frame.Surroundings.Width, "  left out: ", 4);
            foreach (string warning in additions.Warnings)
                Wrapped.Write(frame.Out, warning, frame.Surroundings.Width, "  ", 2);
        }

        return new ImportFacts(
            name, additions.PiecesAdded, additions.PiecesAlreadyThere, additions.RefusedRows,
            [.. additions.Problems.Select(problem => new RefusedRowFacts(problem.Line, problem.Column, problem.Reason))], additions.Warnings);
    }
}
