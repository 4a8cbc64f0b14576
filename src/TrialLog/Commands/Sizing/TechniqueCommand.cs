using System.CommandLine;
using TrialLog.Application.Deciding;
using TrialLog.Application.Sizing;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Sizing;

/// <summary><c>triallog technique</c>: the top hand against the eye with the blade just buried.</summary>
internal static class TechniqueCommand
{
    public static Command Build(CommandFrame frame)
    {
        Option<string?> hand = PaddlerCommand.Text(
            "--hand", "How far the top hand is above the eye: 2in, -1.5in or \"2in below\", level. Without it the " +
            "kept checks are listed.", "L");
        Option<string?> length = PaddlerCommand.Text("--length", "At which paddle length; else the one last paddled.", "L");
        var lean = new Option<double?>(
            "--lean")
        { Description = "Shaft lean from upright, degrees; else 20 is assumed.", HelpName = "0..60" };
        var photo = new Option<bool>("--photo") { Description = "Measured in a photo, not judged by eye." };
        Option<string?> date = PaddlerCommand.Text("--date", "The day; else today.", "DATE");
        var save = new Option<bool>("--save") { Description = "Keep it, so that it counts as weak evidence on the best length." };
        var remove = new Option<int?>("--remove") { Description = "Remove the kept check of that number.", HelpName = "N" };
        var command = new Command("technique", "Top hand against eye with the blade just buried: what it implies for the length.")
        {
            frame.Paddler, frame.Hull, frame.Paddle, hand, length, lean, photo, date, save, remove, frame.Json,
        };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            bool json = parsed.GetValue(frame.Json);
            if (parsed.GetValue(remove) is { } number)
            {
                TechniqueAnswer gone = CheckTechnique.Remove(workspace, workspace.PaddlerNamed(parsed.GetValue(frame.Paddler)), number);
                frame.Out.WriteLine($"Removed: {TechniqueText.Line(gone)}. To take it back: triallog undo");
                return;
            }

            if (parsed.GetValue(hand) is not { } text)
            {
                List(frame, workspace, workspace.PaddlerNamed(parsed.GetValue(frame.Paddler)), json);
                return;
            }

            Chosen chosen = workspace.Choose(parsed.GetValue(frame.Paddler), parsed.GetValue(frame.Hull), parsed.GetValue(frame.Paddle));
            LengthUnit unit = chosen.Paddler.Unit;
            TechniqueAnswer answer = CheckTechnique.Of(
                workspace, chosen, parsed.GetValue(length) is { } at ? Length.Parse(at, unit) : null, HandHeight.Parse(text, unit),
                parsed.GetValue(lean), parsed.GetValue(photo), parsed.GetValue(date) is { } day ? TextForms.Date(workspace.Today).Read(day)
                    : workspace.Today);
            if (parsed.GetValue(save))
                CheckTechnique.Keep(workspace, answer);
            (Length without, Length with) = CheckTechnique.Effect(workspace, answer);
            StandingSoreness? sore = ClearSoreness.Standing(workspace, chosen.Paddler);
            if (json)
                JsonOutput.Write(frame.Out, TechniqueFacts.Of(answer, RestFirst.Of(sore), parsed.GetValue(save))
                    with
                { BestWithoutIn = JsonOutput.Inches(without), BestWithIn = JsonOutput.Inches(with) });
            else if (!RestText.Instead(frame.Out, TechniqueText.Title(answer), RestFirst.Page(sore), frame.ConsoleHost.Width))
                TechniqueText.Write(frame.Out, answer, without, with, parsed.GetValue(save), frame.ConsoleHost.Width);
            else
                TechniqueText.WriteAtRest(frame.Out, answer, parsed.GetValue(save), frame.ConsoleHost.Width);
        });
        return command;
    }

    private static void List(CommandFrame frame, Workspace workspace, Paddler paddler, bool json)
    {
        IReadOnlyList<TechniqueAnswer> kept = CheckTechnique.Kept(workspace, paddler);
        if (json)
        {
            JsonOutput.Write<IReadOnlyList<TechniqueFacts>>(
                frame.Out, [.. kept.Select(answer => TechniqueFacts.Of(answer, null, saved: true))]);
            return;
        }

        if (kept.Count == 0)
            frame.Out.WriteLine($"No technique check of {Quoted.Visible(paddler.Name)} is kept yet.");
        for (int i = 0; i < kept.Count; i++)
            frame.Out.WriteLine($"{i + 1}. {TechniqueText.Line(kept[i])}");
        frame.Out.WriteLine();
        frame.Out.WriteLine("How to take one");
        for (int i = 0; i < Measuring.Technique.Steps.Count; i++)
            Wrapped.Write(frame.Out, Measuring.Technique.Steps[i], frame.ConsoleHost.Width, $"  {i + 1}. ", 5);
        frame.Out.WriteLine("Then, for a hand 2 in above the eye: triallog technique --hand 2in --photo --lean 20");
    }
}
