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
using TrialLog.Screens.Forms;

namespace TrialLog.Commands;

/// <summary><c>triallog paddler add | set | join | list | remove</c>.</summary>
internal static class PaddlerCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("paddler", "Who paddles: add, set what is known, join two records of one person, list, remove.");
        command.Subcommands.Add(AddOrSet(frame, "add", "Add a paddler.", SetUpPaddler.Add));
        command.Subcommands.Add(AddOrSet(frame, "set", "Change what is known of a paddler; none clears a value.", SetUpPaddler.Change));
        command.Subcommands.Add(Join(frame));
        command.Subcommands.Add(List(frame));
        command.Subcommands.Add(Remove(frame));
        return command;
    }

    private static Command AddOrSet(
        CommandFrame frame, string verb, string description, Func<Workspace, string, PaddlerDetails, bool, Paddler> act)
    {
        var name = new Argument<string>("NAME");
        BodyOptions body = new();
        TrialOptions trials = new();
        Option<string?> rename = Text("--name", "A new name.", "NEW");
        Option<string?> goal = Text("--goal", "The race it is for: \"OC1, 10km\" or \"OC6, 1:30:00\".", "\"HULL, DISTANCE or TIME\"");
        Option<string?> unit = Text("--unit", "Unit of bare lengths and of what is shown: in or cm.", "in|cm");
        Option<string?> swaps = Text("--swaps", "Whether lengths can be changed on the water: yes or no.", "yes|no");
        Option<string?> worthwhile = Text("--worthwhile", "Smallest change of speed that matters, percent; 0.3 at first.", "PCT");
        Option<string?> price = Text("--price", "What an outing of testing is worth, percent of speed; 0.005 at first.", "PCT");
        var command = new Command(verb, description)
        {
            name, goal, unit, swaps, worthwhile, price,
        };
        foreach (Option<string?> option in body.All.Concat(trials.All))
            command.Options.Add(option);
        command.Options.Add(frame.NewName);
        if (verb == "set")
            command.Options.Add(rename);
        frame.OnDesk(command, (parsed, workspace) =>
        {
            LengthUnit? chosen = TextForms.Unit.ReadIfAny(parsed.GetValue(unit));
            LengthUnit bare = chosen ?? (verb == "set" ? workspace.PaddlerNamed(parsed.GetRequiredValue(name)).Unit : workspace.Unit);
            PaddlerDetails told = body.Read(parsed, bare);
            double? Percent(Option<string?> option) =>
                Spelling.IsNone(parsed.GetValue(option)) ? null : PercentText(parsed.GetValue(option));
            PaddlerFields Clears(Option<string?> option, PaddlerFields field) =>
                Spelling.IsNone(parsed.GetValue(option)) ? field : PaddlerFields.None;
            Paddler paddler = act(workspace, parsed.GetRequiredValue(name), told with
            {
                NewName = verb == "set" ? parsed.GetValue(rename) : null,
                Unit = chosen,
                Goal = parsed.GetValue(goal) is { } text && !Spelling.IsNone(text) ? SetUpPaddler.Goal(workspace, text) : null,
                SwapsOnWater = TextForms.YesOrNo.ReadIfAny(parsed.GetValue(swaps)),
                WorthwhilePercent = Percent(worthwhile),
                Trials = trials.Read(parsed) with { PricePercent = Percent(price) },
                ClearToo = told.ClearToo | trials.Cleared(parsed) | Clears(goal, PaddlerFields.Goal) | Clears(
                    worthwhile, PaddlerFields.Worthwhile) | Clears(price, PaddlerFields.Price),
            }, parsed.GetValue(frame.NewName));
            frame.Out.WriteLine($"{Quoted.Visible(paddler.Name)}: {StartWords.InASoloHull(StartLength.Of(paddler), paddler.Unit)}.");
            foreach (string question in BodyChecks.Questions(paddler.Body, paddler.KnownLength, paddler.Unit))
                Wrapped.Write(frame.Out, question, frame.ConsoleHost.Width, "Please check: ", 2);
            if (StartWords.WhatNext(paddler.Body, paddler.KnownLength, paddler.Unit) is { Length: > 0 } improve)
                Wrapped.Write(frame.Out, improve, frame.ConsoleHost.Width);
        }, begins: verb == "add");
        return command;
    }

    private static Command Join(CommandFrame frame)
    {
        var from = new Argument<string>("NAME") { Description = "The record to take up." };
        var into = new Argument<string>("INTO") { Description = "The record that stays." };
        var keep = new Option<bool>("--keep") { Description = "Where the two differ, keep what INTO says." };
        var take = new Option<bool>("--take") { Description = "Where the two differ, take what NAME says." };
        var command = new Command("join", "Make one paddler of two records of one person; undo parts them again.") { from, into,
            keep, take };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Paddler other = workspace.PaddlerNamed(parsed.GetRequiredValue(from)),
                stays = workspace.PaddlerNamed(parsed.GetRequiredValue(into));
            IReadOnlyList<JoinQuestion> questions = JoinPaddlers.Questions(workspace, stays, other);
            HashSet<JoinQuestion> takes = parsed.GetValue(take) ? [.. questions] : [];
            if (questions.Count > 0 && !parsed.GetValue(keep) && !parsed.GetValue(take))
            {
                if (!frame.ConsoleHost.Interactive)
                    throw new RequestException(
                        $"They differ: {string.Join("; ", questions.Select(one => $"{one.Field} {one.Ours} or {one.Theirs}"))}. Keep " +
                        $"what {stays.Name} has with --keep, or take what {other.Name} has with --take.");
                foreach (JoinQuestion question in questions)
                {
                    if (Asks(frame, $"{question.Field}: (k)eep {question.Ours} or (t)ake {question.Theirs}? ", 'k', 't') == 't')
                        takes.Add(question);
                }
            }

            Paddler joined = JoinPaddlers.Join(workspace, stays, other, takes.Contains);
            frame.Out.WriteLine($"{Quoted.Visible(other.Name)} is {Quoted.Visible(joined.Name)} now: " +
                $"{Say.Count(workspace.Logbook.Outings(joined.Id).Count, "outing")}. To undo: triallog undo");
        });
        return command;
    }

    /// <summary>Asks on the terminal until one of the letters is given.</summary>
    /// <exception cref="RequestException">The input ended; nothing was changed.</exception>
    internal static char Asks(CommandFrame frame, string question, params char[] letters)
    {
        while (true)
        {
            frame.Out.Write(question);
            frame.Out.Flush();
            if (frame.ConsoleHost.In.ReadLine() is not { } line)
                throw new RequestException("Nothing was changed.");
            if (line.Trim().ToLowerInvariant() is [var letter, ..] && letters.Contains(letter))
                return letter;
        }
    }

    /// <summary>A percentage as it is typed: <c>0.3</c>, <c>0,3 %</c>.</summary>
    /// <exception cref="InvalidValueException">It is no number.</exception>
    internal static double? PercentText(string? text) => string.IsNullOrWhiteSpace(text) ? null
        : double.TryParse(text.Trim().TrimEnd('%').TrimEnd().Replace(',', '.'), System.Globalization.NumberStyles.AllowDecimalPoint,
            System.Globalization.CultureInfo.InvariantCulture, out double percent)
            ? percent
            : throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a percentage; write it like 0.3.");

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
                frame.Out.WriteLine($"{Quoted.Visible(paddler.Name)}: {StartWords.InASoloHull(start, paddler.Unit)}{goal}");
            }
        });
        return command;
    }

    private static Command Remove(CommandFrame frame)
    {
        var name = new Argument<string>("NAME");
        var command = new Command("remove", "Remove a paddler with all outings; undo brings them back.") { name };
        frame.OnDesk(command, (parsed, workspace) =>
            frame.Out.WriteLine(
                $"Removed {SetUpPaddler.Remove(workspace, parsed.GetRequiredValue(name)).Name} with all outings. To undo: triallog undo"));
        return command;
    }

    internal static Option<string?> Text(string name, string description, string value) =>
        new(name) { Description = description, HelpName = value };
}
