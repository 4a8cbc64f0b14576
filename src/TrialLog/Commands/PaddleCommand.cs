using System.CommandLine;
using TrialLog.Application.Setup;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary><c>triallog paddle add | set | list | remove</c>.</summary>
internal static class PaddleCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("paddle", "The paddles: add, set blade and lengths, list, remove.");
        command.Subcommands.Add(AddOrSet(frame, "add", "Add a paddle.", SetUpPaddle.Add));
        command.Subcommands.Add(AddOrSet(frame, "set", "Change a paddle.", (workspace, name, details, _) => SetUpPaddle.Change(workspace, name, details)));
        command.Subcommands.Add(List(frame));
        command.Subcommands.Add(Remove(frame));
        return command;
    }

    private static Command AddOrSet(CommandFrame frame, string verb, string description, Func<Workspace, string, PaddleDetails, bool, Paddle> act)
    {
        var name = new Argument<string>("NAME");
        Option<string?> blade = PaddlerCommand.Text("--blade", "Blade length, tip to throat.", "L");
        Option<string?> range = PaddlerCommand.Text("--range", "Shortest and longest overall length of an adjustable paddle.", "L..L");
        Option<string?> step = PaddlerCommand.Text("--step", "Step between settings; a quarter inch at first.", "L");
        Option<string?> fixedAt = PaddlerCommand.Text("--fixed", "Overall length of a fixed paddle.", "L");
        Option<double?> area = new("--blade-area") { Description = "Blade area in square inches, where known.", HelpName = "IN2" };
        Option<string?> steering = PaddlerCommand.Text("--steering", "Whether it is a steering blade: yes or no.", "yes|no");
        var command = new Command(verb, description) { name, blade, range, step, fixedAt, area, steering };
        if (verb == "add")
            command.Options.Add(frame.NewName);
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (parsed.GetValue(range) is not null && parsed.GetValue(fixedAt) is not null)
                throw new RequestException("A paddle is adjustable (--range) or fixed (--fixed), not both.");
            Length? Measure(Option<string?> option) => parsed.GetValue(option) is { } text ? Length.Parse(text, workspace.Unit) : null;
            Paddle paddle = act(workspace, parsed.GetRequiredValue(name), new PaddleDetails
            {
                Blade = Measure(blade),
                Range = Measure(fixedAt) is { } length ? (length, length)
                    : parsed.GetValue(range) is { } ends ? SetUpPaddle.Range(ends, workspace.Unit) : null,
                Step = Measure(step),
                BladeAreaSquareInches = parsed.GetValue(area),
                Steering = PaddlerCommand.YesOrNo(parsed.GetValue(steering)),
            }, verb == "add" && parsed.GetValue(frame.NewName));
            Tell(frame, paddle, workspace.Unit);
        });
        return command;
    }

    private static Command List(CommandFrame frame)
    {
        var command = new Command("list", "List the paddles.") { frame.Json };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (parsed.GetValue(frame.Json))
            {
                JsonOutput.Write<IReadOnlyList<PaddleFacts>>(frame.Out, [.. workspace.Logbook.Paddles().Select(PaddleFacts.Of)]);
                return;
            }

            foreach (Paddle paddle in workspace.Logbook.Paddles())
                Tell(frame, paddle, workspace.Unit);
        });
        return command;
    }

    private static Command Remove(CommandFrame frame)
    {
        var name = new Argument<string>("NAME");
        var command = new Command("remove", "Remove a paddle that no piece uses.") { name };
        frame.OnDesk(command, (parsed, workspace) => frame.Out.WriteLine($"Removed the paddle {SetUpPaddle.Remove(workspace, parsed.GetRequiredValue(name)).Name}."));
        return command;
    }

    private static void Tell(CommandFrame frame, Paddle paddle, LengthUnit unit) => frame.Out.WriteLine(
        $"{Quoted.Visible(paddle.Name)}: blade {paddle.Blade.ToText(unit)}, " + (paddle.IsFixed
            ? $"fixed at {paddle.Longest.ToText(unit)}"
            : $"{paddle.Shortest.ToText(unit)} to {paddle.Longest.ToText(unit)} by {paddle.Step.ToText(unit)}") + (paddle.Steering ? ", for steering" : ""));
}
