using System.CommandLine;
using TrialLog.Plots;

namespace TrialLog.Commands.Coach;

/// <summary><c>triallog squad-lessons</c>: whether what others' logs say of their start lengths helps each paddler here.</summary>
internal static class SquadLessonsCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command(
            "squad-lessons", "Whether the settled logs of others here teach about a paddler's start length; on at first.");
        command.Subcommands.Add(Switch("on", "Let others' logs teach.", teaches: true));
        command.Subcommands.Add(Switch("off", "Start each from their own body alone.", teaches: false));
        return command;

        Command Switch(string name, string description, bool teaches)
        {
            var to = new Command(name, description);
            frame.OnDesk(to, (_, workspace) =>
            {
                workspace.LearnsFromSquad = teaches;
                Wrapped.Write(frame.Out, teaches
                    ? "Where others of this logbook have settled, their logs help to start the next paddler."
                    : "Each paddler starts from their own body alone. To let others' logs help again: triallog squad-lessons on",
                    frame.ConsoleHost.Width);
            });
            return to;
        }
    }
}
