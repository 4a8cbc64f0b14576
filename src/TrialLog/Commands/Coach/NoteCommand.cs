using System.CommandLine;
using TrialLog.Commands.Json;
using TrialLog.Domain;
using TrialLog.UseCases;
using TrialLog.UseCases.Coach;

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
        var card = new Option<string?>("--card") { Description = "On one trial card: its number in history --advice.", HelpName = "NUMBER" };
        var command = new Command("add", "Write a note.") { text, by, outing, card, frame.Paddler };
        frame.OnDesk(command, (parsed, desk) =>
        {
            Paddler paddler = desk.PaddlerNamed(parsed.GetValue(frame.Paddler));
            CoachNote note = CoachNotes.Add(desk, paddler, parsed.GetRequiredValue(text), parsed.GetValue(by), parsed.GetValue(outing), parsed.GetValue(card));
            frame.Out.WriteLine($"{Quoted.Visible(note.Author)}'s note on {Quoted.Visible(CoachNotes.Subject(desk, paddler, note))} is kept. To take it back: triallog undo");
        });
        return command;
    }

    private static Command List(CommandFrame frame)
    {
        var command = new Command("list", "The notes on a paddler, the outings and the cards.") { frame.Paddler, frame.Json };
        frame.OnDesk(command, (parsed, desk) =>
        {
            Paddler paddler = desk.PaddlerNamed(parsed.GetValue(frame.Paddler));
            IReadOnlyList<CoachNote> notes = CoachNotes.About(desk, paddler);
            if (parsed.GetValue(frame.Json))
            {
                Facts.Write<IReadOnlyList<NoteFacts>>(frame.Out, [.. notes.Select((note, at) => NoteFacts.Of(at + 1, note, paddler, CoachNotes.Subject(desk, paddler, note)))]);
                return;
            }

            if (notes.Count == 0)
                frame.Out.WriteLine($"No note on {Quoted.Visible(paddler.Name)} yet.");
            for (int i = 0; i < notes.Count; i++)
            {
                CoachNote note = notes[i];
                frame.Out.WriteLine($"{i + 1,2}.  {desk.DayOf(note.WrittenAt):yyyy-MM-dd}  {Quoted.Visible(note.Author)} on {Quoted.Visible(CoachNotes.Subject(desk, paddler, note))}");
                foreach (string line in note.Text.ReplaceLineEndings("\n").Split('\n'))
                    Wrapped.Write(frame.Out, Quoted.Visible(line), frame.Surroundings.Width, "     ", 5);
            }
        });
        return command;
    }

    private static Command Remove(CommandFrame frame)
    {
        var number = new Argument<int>("NUMBER") { Description = "The note's number in note list." };
        var command = new Command("remove", "Remove a note.") { number, frame.Paddler };
        frame.OnDesk(command, (parsed, desk) =>
        {
            CoachNote note = CoachNotes.Remove(desk, desk.PaddlerNamed(parsed.GetValue(frame.Paddler)), parsed.GetRequiredValue(number));
            frame.Out.WriteLine($"Removed {Quoted.Visible(note.Author)}'s note “{Quoted.Brief(note.Text)}”. To take it back: triallog undo");
        });
        return command;
    }
}
