using System.CommandLine;
using TrialLog.Application.Setup;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary><c>triallog hull add | set | list | remove</c>.</summary>
internal static class HullCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("hull", "The craft: add, set crew and seat height, list, remove.");
        command.Subcommands.Add(Add(frame));
        command.Subcommands.Add(Set(frame));
        command.Subcommands.Add(List(frame));
        command.Subcommands.Add(Remove(frame));
        return command;
    }

    private static Option<string?> SeatHeight() => PaddlerCommand.Text("--seat-height", "Sit bones to waterline, paddler aboard.", "L");

    private static Command Add(CommandFrame frame)
    {
        var name = new Argument<string>("NAME");
        var crew = new Option<int>("--crew") { Description = "Paddlers aboard, 1 to 24.", HelpName = "N", Required = true };
        Option<string?> seat = SeatHeight();
        var command = new Command("add", "Add a hull.") { name, crew, seat, frame.NewName };
        frame.OnDesk(command, (parsed, workspace) =>
            SayAndAsk(
                frame, workspace,
                SetUpHull.Add(workspace, parsed.GetRequiredValue(name), parsed.GetRequiredValue(crew),
                Measure(workspace, parsed.GetValue(seat)), parsed.GetValue(frame.NewName))), begins: true);
        return command;
    }

    private static Command Set(CommandFrame frame)
    {
        var name = new Argument<string>("NAME");
        var crew = new Option<int?>("--crew") { Description = "Paddlers aboard, 1 to 24.", HelpName = "N" };
        Option<string?> seat = SeatHeight();
        Option<string?> rename = PaddlerCommand.Text("--name", "A new name.", "NEW");
        var command = new Command("set", "Change a hull; none clears the seat height.") { name, crew, seat, rename, frame.NewName };
        frame.OnDesk(command, (parsed, workspace) =>
            SayAndAsk(frame, workspace, SetUpHull.Change(
                workspace, parsed.GetRequiredValue(name), parsed.GetValue(crew),
                    Spelling.IsNone(parsed.GetValue(seat)) ? null : Measure(workspace, parsed.GetValue(seat)),
                parsed.GetValue(rename), Spelling.IsNone(parsed.GetValue(seat)), parsed.GetValue(frame.NewName))));
        return command;
    }

    private static Command List(CommandFrame frame)
    {
        var command = new Command("list", "List the hulls.") { frame.Json };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (parsed.GetValue(frame.Json))
            {
                JsonOutput.Write<IReadOnlyList<HullFacts>>(frame.Out, [.. workspace.Logbook.Hulls().Select(HullFacts.Of)]);
                return;
            }

            foreach (Hull hull in workspace.Logbook.Hulls())
                Tell(frame, hull, workspace.Unit);
        });
        return command;
    }

    private static Command Remove(CommandFrame frame)
    {
        var name = new Argument<string>("NAME");
        var command = new Command("remove", "Remove a hull that no outing uses.") { name };
        frame.OnDesk(
            command, (parsed, workspace) =>
            frame.Out.WriteLine($"Removed the hull {SetUpHull.Remove(workspace, parsed.GetRequiredValue(name)).Name}."));
        return command;
    }

    private static Length? Measure(Workspace workspace, string? text) => text is null ? null : Length.Parse(text, workspace.Unit);

    private static void SayAndAsk(CommandFrame frame, Workspace workspace, Hull hull)
    {
        Tell(frame, hull, workspace.Unit);
        foreach (string question in HullChecks.Questions(workspace.Logbook.Hulls(), workspace.Unit))
            Wrapped.Write(frame.Out, question, frame.ConsoleHost.Width, "Please check: ", 2);
    }

    private static void Tell(CommandFrame frame, Hull hull, LengthUnit unit) => frame.Out.WriteLine(
        $"{Quoted.Visible(hull.Name)}: crew {hull.Crew}, seat height " +
            $"{(hull.SeatHeight is { } height ? height.ToText(unit) : "by the rule")}");
}
