using System.CommandLine;
using TrialLog.Application.Setup;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Commands.Sizing;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Commands;

/// <summary><c>triallog paddler add | set | list | remove</c>.</summary>
internal static class PaddlerCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("paddler", "Who paddles: add, set what is known, list, remove.");
        command.Subcommands.Add(AddOrSet(frame, "add", "Add a paddler.", SetUpPaddler.Add));
        command.Subcommands.Add(AddOrSet(frame, "set", "Change what is known of a paddler.", (workspace, name, details, _) => SetUpPaddler.Change(workspace, name, details)));
        command.Subcommands.Add(List(frame));
        command.Subcommands.Add(Remove(frame));
        return command;
    }

    private static Command AddOrSet(CommandFrame frame, string verb, string description, Func<Workspace, string, PaddlerDetails, bool, Paddler> act)
    {
        var name = new Argument<string>("NAME");
        BodyOptions body = new();
        Option<string?> goal = Text("--goal", "The race it is for: \"OC1, 10km\" or \"OC6, 1:30:00\".", "\"HULL, DISTANCE or TIME\"");
        Option<string?> unit = Text("--unit", "Unit of bare lengths and of what is shown: in or cm.", "in|cm");
        Option<string?> swaps = Text("--swaps", "Whether lengths can be changed on the water: yes or no.", "yes|no");
        Option<double?> worthwhile = new("--worthwhile") { Description = "Smallest change of speed that matters, percent; 0.3 at first.", HelpName = "PCT" };
        var command = new Command(verb, description)
        {
            name, goal, unit, swaps, worthwhile,
        };
        foreach (Option<string?> option in body.All)
            command.Options.Add(option);
        if (verb == "add")
            command.Options.Add(frame.NewName);
        frame.OnDesk(command, (parsed, workspace) =>
        {
            LengthUnit? chosen = UnitOf(parsed.GetValue(unit));
            LengthUnit bare = chosen ?? (verb == "set" ? workspace.PaddlerNamed(parsed.GetRequiredValue(name)).Unit : workspace.Unit);
            Paddler paddler = act(workspace, parsed.GetRequiredValue(name), body.Read(parsed, bare) with
            {
                Unit = chosen,
                Goal = parsed.GetValue(goal) is { } text ? SetUpPaddler.Goal(workspace, text) : null,
                SwapsOnWater = YesOrNo(parsed.GetValue(swaps)),
                WorthwhilePercent = parsed.GetValue(worthwhile),
            }, verb == "add" && parsed.GetValue(frame.NewName));
            StartLength from = StartLength.Of(paddler);
            frame.Out.WriteLine($"{paddler.Name}: start length {Say.Quarter(from.Length, paddler.Unit)} in a solo canoe, give or take {Say.Amount(from.SpreadInches, paddler.Unit)}.");
            foreach (string question in BodyChecks.Questions(paddler.Body, paddler.KnownLength, paddler.Unit))
                Wrapped.Write(frame.Out, question, frame.ConsoleHost.Width, "Is that right? ", 2);
            if (StartLengthAdvice.WhatNext(paddler.Body, paddler.KnownLength, paddler.Unit) is { Length: > 0 } improve)
                Wrapped.Write(frame.Out, improve, frame.ConsoleHost.Width);
        });
        return command;
    }

    private static Command List(CommandFrame frame)
    {
        var command = new Command("list", "List the paddlers.") { frame.Json };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            IReadOnlyList<Hull> hulls = workspace.Logbook.Hulls();
            IReadOnlyList<PaddlerFacts> all = [.. workspace.Logbook.Paddlers().Select(paddler => PaddlerFacts.Of(paddler, hulls))];
            if (parsed.GetValue(frame.Json))
            {
                JsonOutput.Write(frame.Out, all);
                return;
            }

            foreach (Paddler paddler in workspace.Logbook.Paddlers())
            {
                StartLength start = StartLength.Of(paddler);
                string goal = GoalText.Of(paddler.Goal, hulls) is { } text ? $"; goal {text}" : "";
                frame.Out.WriteLine($"{Quoted.Visible(paddler.Name)}: start {Say.Quarter(start.Length, paddler.Unit)} ± {Say.Amount(start.SpreadInches, paddler.Unit)}{goal}");
            }
        });
        return command;
    }

    private static Command Remove(CommandFrame frame)
    {
        var name = new Argument<string>("NAME");
        var command = new Command("remove", "Remove a paddler with all outings; undo brings them back.") { name };
        frame.OnDesk(command, (parsed, workspace) =>
            frame.Out.WriteLine($"Removed {SetUpPaddler.Remove(workspace, parsed.GetRequiredValue(name)).Name} with all outings. To take it back: triallog undo"));
        return command;
    }

    internal static Option<string?> Text(string name, string description, string value) => new(name) { Description = description, HelpName = value };

    internal static LengthUnit? UnitOf(string? text) => text?.Trim().ToLowerInvariant() switch
    {
        null => null,
        "in" or "inch" or "inches" => LengthUnit.Inches,
        "cm" => LengthUnit.Centimetres,
        _ => throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a unit; it is in or cm."),
    };

    internal static bool? YesOrNo(string? text) => text?.Trim().ToLowerInvariant() switch
    {
        null => null,
        "yes" or "y" => true,
        "no" or "n" => false,
        _ => throw new InvalidValueException($"“{Quoted.Brief(text)}” is neither yes nor no."),
    };
}
