using System.CommandLine;
using TrialLog.Application.Deciding;
using TrialLog.Application.Wording;
using TrialLog.Commands.Json;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands;

/// <summary><c>triallog soreness clear</c>: word that soreness is gone, by whom and why.</summary>
internal static class SorenessCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("soreness", "Soreness that stands: until a later outing says that it is gone, or it is cleared.");
        var by = new Option<string>("--by")
        {
            Description = "Who says that it is gone: the paddler, a coach, a clinician.",
            HelpName = "WHO", Required = true
        };
        Option<string?> because = PaddlerCommand.Text("--because", "Why.", "TEXT");
        var clear = new Command("clear", "Take down that soreness is gone; undo takes it back.") { frame.Paddler, by, because, frame.Json };
        frame.OnDesk(clear, (parsed, workspace) =>
        {
            Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            (SorenessClearance clearance, StandingSoreness was) = ClearSoreness.Of(
                workspace, paddler, parsed.GetRequiredValue(by), parsed.GetValue(because));
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(
                    frame.Out, new ClearanceFacts(
                    paddler.Name, Say.Day(clearance.Date), clearance.By, clearance.Because, was.Worst.Points, Say.Day(was.LastTold)));
            else
                Wrapped.Write(
                    frame.Out, $"{Quoted.Visible(clearance.By)} says that {Quoted.Visible(paddler.Name)}'s soreness of {was.Worst} is " +
                    $"gone (last told on {Say.DayInWords(was.LastTold)}). {Cautions.Pain} To undo: triallog undo", frame.ConsoleHost.Width);
        });
        command.Subcommands.Add(clear);
        return command;
    }
}
