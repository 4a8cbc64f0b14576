using System.CommandLine;
using TrialLog.Commands.Json;
using TrialLog.Domain;
using TrialLog.UseCases;

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
        frame.OnDesk(command, (parsed, desk) =>
            SayAndAsk(frame, desk, SetUpHull.Add(desk, parsed.GetRequiredValue(name), parsed.GetRequiredValue(crew), Measure(desk, parsed.GetValue(seat)), parsed.GetValue(frame.NewName))));
        return command;
    }

    private static Command Set(CommandFrame frame)
    {
        var name = new Argument<string>("NAME");
        var crew = new Option<int?>("--crew") { Description = "Paddlers aboard, 1 to 24.", HelpName = "N" };
        Option<string?> seat = SeatHeight();
        var command = new Command("set", "Change a hull.") { name, crew, seat };
        frame.OnDesk(command, (parsed, desk) =>
            SayAndAsk(frame, desk, SetUpHull.Change(desk, parsed.GetRequiredValue(name), parsed.GetValue(crew), Measure(desk, parsed.GetValue(seat)))));
        return command;
    }

    private static Command List(CommandFrame frame)
    {
        var command = new Command("list", "List the hulls.") { frame.Json };
        frame.OnDesk(command, (parsed, desk) =>
        {
            if (parsed.GetValue(frame.Json))
            {
                Facts.Write<IReadOnlyList<HullFacts>>(frame.Out, [.. desk.Logbook.Hulls().Select(HullFacts.Of)]);
                return;
            }

            foreach (Hull hull in desk.Logbook.Hulls())
                Say(frame, hull, desk.Unit);
        });
        return command;
    }

    private static Command Remove(CommandFrame frame)
    {
        var name = new Argument<string>("NAME");
        var command = new Command("remove", "Remove a hull that no outing uses.") { name };
        frame.OnDesk(command, (parsed, desk) => frame.Out.WriteLine($"Removed the hull {SetUpHull.Remove(desk, parsed.GetRequiredValue(name)).Name}."));
        return command;
    }

    private static Length? Measure(Desk desk, string? text) => text is null ? null : Length.Parse(text, desk.Unit);

    private static void SayAndAsk(CommandFrame frame, Desk desk, Hull hull)
    {
        Say(frame, hull, desk.Unit);
        foreach (string question in HullChecks.Questions(desk.Logbook.Hulls(), desk.Unit))
            Wrapped.Write(frame.Out, question, frame.Surroundings.Width, "Is that right? ", 2);
    }

    private static void Say(CommandFrame frame, Hull hull, LengthUnit unit) => frame.Out.WriteLine(
        $"{Quoted.Visible(hull.Name)}: crew {hull.Crew}, seat height {(hull.SeatHeight is { } height ? height.ToText(unit) : "by the rule")}");
}
