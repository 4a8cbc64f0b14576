using System.CommandLine;
using TrialLog.Commands.Coach;
using TrialLog.Commands.Json;
using TrialLog.Commands.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary>The command line as a whole: which commands there are, and what a wrong one is told.</summary>
internal static class CommandLineProgram
{
    private const int WrongUsage = 2;

    /// <summary>Runs one command line and gives its exit code: 0 done, 1 cannot be met, 2 wrong usage.</summary>
    public static int Run(string[] arguments, ConsoleHost surroundings)
    {
        var frame = new CommandFrame(surroundings);
        // A word that begins with @ is a word: nobody's note reads a file.
        ParseResult parsed;
        try
        {
            parsed = Root(frame).Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
        }
        catch (InvalidOperationException wrong)
        {
            // The library's own sentence about a value that is missing or of the wrong kind, where a check of several options asked for it.
            return Wrong(arguments, surroundings, wrong.Message, "triallog --help");
        }

        if (parsed.Errors.Count > 0)
        {
            string command = string.Join(' ', CommandPath(parsed));
            return Wrong(arguments, surroundings, string.Join(Environment.NewLine, parsed.Errors.Select(error => error.Message)),
                $"triallog {command}{(command.Length > 0 ? " " : "")}--help");
        }

        return parsed.Invoke(new InvocationConfiguration
        {
            Output = surroundings.Out,
            Error = surroundings.Error,
            EnableDefaultExceptionHandler = false,
        });
    }

    private static int Wrong(string[] arguments, ConsoleHost surroundings, string wrong, string help)
    {
        if (arguments.Contains("--json"))
            JsonOutput.Write(surroundings.Error, new ErrorFacts(wrong, $"See: {help}"));
        else
            surroundings.Error.WriteLine($"{wrong}{Environment.NewLine}See: {help}");
        return WrongUsage;
    }

    private static RootCommand Root(CommandFrame frame)
    {
        var root = new RootCommand("Finds the paddle length that suits a paddler, outing by outing, and says when to stop searching.");
        root.Options.Add(frame.Store);
        root.Options.Add(frame.NewLogbook);
        foreach (Command command in Commands(frame))
            root.Subcommands.Add(command);
        OpeningCommand.Attach(root, frame);
        return root;
    }

    private static IEnumerable<Command> Commands(CommandFrame frame) =>
    [
        DemoCommand.Build(frame),
        PaddlerCommand.Build(frame),
        HullCommand.Build(frame),
        PaddleCommand.Build(frame),
        LogCommand.Build(frame),
        ImportCommand.Build(frame),
        ExportCommand.Build(frame),
        NextCommand.Build(frame),
        PlanCommand.Build(frame),
        CurveCommand.Build(frame),
        ProgressCommand.Build(frame),
        CheckCommand.Build(frame),
        HistoryCommand.Build(frame),
        StartLengthCommand.Build(frame),
        TransferCommand.Build(frame),
        TechniqueCommand.Build(frame),
        OrderSheetCommand.Build(frame),
        SteeringCommand.Build(frame),
        DecideCommand.Build(frame),
        SorenessCommand.Build(frame),
        EditCommand.Build(frame),
        ExcludeCommand.Build(frame),
        IncludeCommand.Build(frame),
        DeleteCommand.Build(frame),
        UndoCommand.Build(frame),
        RedoCommand.Build(frame),
        Coach.ReportCommand.Build(frame),
        Coach.NoteCommand.Build(frame),
        Coach.ShareCommand.Build(frame),
        Coach.MergeCommand.Build(frame),
        Coach.SyncCommand.Build(frame),
        Coach.SquadLessonsCommand.Build(frame),
        BackupCommand.Build(frame),
        RestoreCommand.Build(frame),
        VerifyCommand.Build(frame),
    ];

    private static IEnumerable<string> CommandPath(ParseResult parsed)
    {
        var names = new Stack<string>();
        for (System.CommandLine.Parsing.SymbolResult? at = parsed.CommandResult; at is not null; at = at.Parent)
        {
            if (at is System.CommandLine.Parsing.CommandResult { Command: not RootCommand } command)
                names.Push(command.Command.Name);
        }

        return names;
    }
}
