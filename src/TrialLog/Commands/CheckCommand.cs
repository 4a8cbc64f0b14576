using System.CommandLine;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands;

/// <summary><c>triallog check</c>: what may mislead in the trials themselves.</summary>
internal static class CheckCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("check", "Warnings: what may mislead in the trials themselves, if anything.") { frame.Paddler, frame.Hull,
            frame.Paddle, frame.Json };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            Analysis analysis = Tuner.Analyse(workspace.Question(chosen));
            if (parsed.GetValue(frame.Json))
            {
                JsonOutput.Write<IReadOnlyList<CheckFacts>>(
                    frame.Out, [.. analysis.Checks.Select(check => new CheckFacts(check.Name, Warnings.Of(check, analysis)))]);
                return;
            }

            if (RestFirst.Page(analysis) is { } rest)
            {
                RestText.Instead(frame.Out, $"{Quoted.Visible(analysis.Paddler.Name)} · {Quoted.Visible(analysis.Hull.Name)} · " +
                    $"{Quoted.Visible(analysis.Paddle.Name)}", rest, frame.ConsoleHost.Width);
                return;
            }

            if (analysis.Checks.Count == 0)
                frame.Out.WriteLine(Warnings.None);
            foreach (string warning in Warnings.Of(analysis))
                Wrapped.Write(frame.Out, warning, frame.ConsoleHost.Width, "- ", 2);
        });
        return command;
    }
}
