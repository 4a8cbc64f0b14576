using System.CommandLine;
using TrialLog.Application.Files;
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
            workspace.Logbook.CheckPages();
            using var written = new MemoryStream();
            IReadOnlyList<Outing> outings = workspace.Logbook.Outings();
            CsvLog.Write(
                written, new KnownLog(workspace.Logbook.Paddlers(), workspace.Logbook.Hulls(), workspace.Logbook.Paddles(), outings));
            written.Position = 0;
            if (parsed.GetValue(csv) is not { } file)
            {
                using var text = new StreamReader(written);
                frame.ConsoleHost.Raw.Write(text.ReadToEnd());
                return;
            }

            NewFile.Write(workspace, file, written.ToArray());
            frame.Out.WriteLine($"{outings.Sum(outing => outing.Pieces.Count):N0} pieces in {outings.Count:N0} outings written to " +
                $"{Quoted.Brief(file, 200)}.");
        });
        return command;
    }
}
