using System.CommandLine;
using TrialLog.Application.Coaching;
using TrialLog.Commands.Json;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands.Coach;

/// <summary><c>triallog note add | list | remove</c>: what coaches write.</summary>
internal static class NoteCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("note", "Coach's notes on a paddler, an outing or a card.");
        command.Subcommands.Add(Add(frame));
        command.Subcommands.Add(List(frame));
        command.Subcommands.Add(Remove(frame));
        return command;
    }

    private static Command Add(CommandFrame frame)
    {
        var text = new Argument<string>("TEXT") { Description = "The note." };
        var by = new Option<string?>("--by") { Description = "Who writes; else whoever wrote last.", HelpName = "NAME" };
        var outing = new Option<string?>("--outing") { Description = "On one outing: its date, or last.", HelpName = "OUTING" };
        var card = new Option<string?>(
            "--card")
        { Description = "On one trial card: its number in history --advice.", HelpName = "NUMBER" };
        var command = new Command("add", "Write a note.") { text, by, outing, card, frame.Paddler };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            CoachNote note = CoachNotes.Add(
                workspace, paddler, parsed.GetRequiredValue(text), parsed.GetValue(by), parsed.GetValue(outing), parsed.GetValue(card));
            frame.Out.WriteLine($"{Quoted.Visible(note.Author)}'s note on {Quoted.Visible(CoachNotes.Subject(workspace, paddler, note))} " +
                $"is kept. To take it back: triallog undo");
        });
        return command;
    }

    private static Command List(CommandFrame frame)
    {
        var command = new Command("list", "The notes on a paddler, the outings and the cards.") { frame.Paddler, frame.Json };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            IReadOnlyList<CoachNote> notes = CoachNotes.About(workspace, paddler);
            if (parsed.GetValue(frame.Json))
            {
                JsonOutput.Write<IReadOnlyList<NoteFacts>>(
                    frame.Out,
                    [.. notes.Select((note, at) => NoteFacts.Of(at + 1, note, paddler, CoachNotes.Subject(workspace, paddler, note)))]);
                return;
            }

            if (notes.Count == 0)
                frame.Out.WriteLine($"No note on {Quoted.Visible(paddler.Name)} yet.");
            for (int i = 0; i < notes.Count; i++)
            {
                CoachNote note = notes[i];
                frame.Out.WriteLine($"{i + 1,2}.  {workspace.DayOf(note.WrittenAt):yyyy-MM-dd}  {Quoted.Visible(note.Author)} on " +
                    $"{Quoted.Visible(CoachNotes.Subject(workspace, paddler, note))}");
                foreach (string line in note.Text.ReplaceLineEndings("\n").Split('\n'))
                    Wrapped.Write(frame.Out, Quoted.Visible(line), frame.ConsoleHost.Width, "     ", 5);
            }
        });
        return command;
    }

    private static Command Remove(CommandFrame frame)
    {
        var number = new Argument<int>("NUMBER") { Description = "The note's number in note list." };
        var command = new Command("remove", "Remove a note.") { number, frame.Paddler };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            CoachNote note = CoachNotes.Remove(
                workspace, workspace.PaddlerNamed(parsed.GetValue(frame.Paddler)), parsed.GetRequiredValue(number));
            frame.Out.WriteLine(
                $"Removed {Quoted.Visible(note.Author)}'s note “{Quoted.Brief(note.Text)}”. To take it back: triallog undo");
        });
        return command;
    }
}
