using System.CommandLine;
using TrialLog.Application.Next;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Coach;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands;

/// <summary><c>triallog next</c>: the next trial card and what the log says.</summary>
internal static class NextCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("next", "The next trial card, and what the log says so far.") { frame.Paddler, frame.Hull, frame.Paddle, frame.Json };
        Option<string?> watch = PaddlerCommand.Text("--watch", "Also the card as a workout for the watch: a step a piece, named by its length, rests between.", "FILE.fit");
        command.Options.Add(watch);
        var week = new Coach.WeekOptions(command);
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (week.IsSquad(parsed))
            {
                week.ShowSquad(frame, parsed, workspace);
                return;
            }

            Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            Analysis analysis = NextOuting.For(workspace, chosen);
            week.PutIntoCalendar(parsed, workspace, [analysis]);
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(frame.Out, NextFacts.Of(analysis));
            else
                NextText.Write(frame.Out, analysis, frame.ConsoleHost.Width);
            week.SayCalendar(frame, parsed, workspace);
            if (parsed.GetValue(watch) is { } file)
                WatchText.Write(frame, workspace, chosen, file, quiet: parsed.GetValue(frame.Json));
        });
        return command;
    }
}
