using System.CommandLine;
using System.Text;
using TrialLog.Application.Files;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary><c>triallog export [--csv FILE]</c>.</summary>
internal static class ExportCommand
{
    public static Command Build(CommandFrame frame)
    {
        Option<string?> csv = PaddlerCommand.Text("--csv", "The file to write; without it the CSV goes to the standard output.", "FILE");
        var command = new Command(
            "export", "Paddlers, hulls, paddles, outings and pieces as CSV. For cards, technique checks and notes use share.") { csv };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (parsed.GetValue(csv) is not { } file)
            {
                Write(workspace, frame.ConsoleHost.Raw);
                return;
            }

            (int outings, int pieces) = (0, 0);
            NewFile.Write(workspace, file, stream =>
            {
                using var text = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
                (outings, pieces) = Write(workspace, text);
            });
            frame.Out.WriteLine($"{pieces:N0} pieces in {outings:N0} outings written to {Quoted.Brief(file, 200)}.");
        });
        return command;
    }

    // Two passes: the counts are those of the last.
    private static (int Outings, int Pieces) Write(Workspace workspace, TextWriter to) => workspace.Logbook.OverOutings((things, outings) =>
    {
        (int Outings, int Pieces) count = default;
        CsvLog.Write(to, new KnownLog(things.Paddlers, things.Hulls, things.Paddles, []), Counted());
        return count;

        IEnumerable<Outing> Counted()
        {
            count = default;
            foreach (Outing outing in outings)
            {
                count = (count.Outings + 1, count.Pieces + outing.Pieces.Count);
                yield return outing;
            }
        }
    });
}
