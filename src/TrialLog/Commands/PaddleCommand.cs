using System.CommandLine;
using System.Globalization;
using TrialLog.Application.Setup;
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

namespace TrialLog.Commands;

/// <summary><c>triallog paddle add | set | owners | list | remove</c>.</summary>
internal static class PaddleCommand
{
    public static Command Build(CommandFrame frame)
    {
        var command = new Command("paddle", "The paddles: add, set blade, lengths and owner, say whose they are, list, remove.");
        command.Subcommands.Add(AddOrSet(frame, "add", "Add a paddle.", SetUpPaddle.Add));
        command.Subcommands.Add(AddOrSet(frame, "set", "Change a paddle; none clears a value.", SetUpPaddle.Change));
        command.Subcommands.Add(Owners(frame));
        command.Subcommands.Add(List(frame));
        command.Subcommands.Add(Remove(frame));
        return command;
    }

    private static Command AddOrSet(
        CommandFrame frame, string verb, string description, Func<Workspace, string, PaddleDetails, bool, Paddle> act)
    {
        var name = new Argument<string>("NAME");
        Option<string?> blade = PaddlerCommand.Text("--blade", "Blade length, tip to throat.", "L");
        Option<string?> range = PaddlerCommand.Text("--range", "Shortest and longest overall length of an adjustable paddle.", "L..L");
        Option<string?> step = PaddlerCommand.Text("--step", "Step between settings; a quarter inch at first.", "L");
        Option<string?> fixedAt = PaddlerCommand.Text("--fixed", "Overall length of a fixed paddle.", "L");
        Option<string?> area = PaddlerCommand.Text("--blade-area", "Blade area in square inches, where known.", "IN2");
        Option<string?> owner = PaddlerCommand.Text("--owner", "Whose it is; nobody else is ever given it unasked.", "PADDLER");
        var club = new Option<bool>("--club") { Description = "It is the club's, for everybody to use." };
        Option<string?> rename = PaddlerCommand.Text("--name", "A new name.", "NEW");
        Option<string?> steering = PaddlerCommand.Text("--steering", "Whether it is a steering blade: yes or no.", "yes|no");
        var command = new Command(verb, description) { name, blade, range, step, fixedAt, area, steering, owner, club, frame.NewName };
        if (verb == "set")
            command.Options.Add(rename);
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (parsed.GetValue(range) is not null && parsed.GetValue(fixedAt) is not null)
                throw new RequestException("A paddle is adjustable (--range) or fixed (--fixed), not both.");
            if (parsed.GetValue(owner) is not null && parsed.GetValue(club))
                throw new RequestException("A paddle is somebody's (--owner) or the club's (--club), not both.");
            string? whose = parsed.GetValue(owner);
            Length? Measure(Option<string?> option) =>
                parsed.GetValue(option) is { } text ? TextForms.Length(workspace.Unit).Read(text) : null;
            Paddle paddle = act(workspace, parsed.GetRequiredValue(name), new PaddleDetails
            {
                Blade = Measure(blade),
                Range = Measure(fixedAt) is { } length ? (length, length)
                    : parsed.GetValue(range) is { } ends ? SetUpPaddle.Range(ends, workspace.Unit) : null,
                Step = Measure(step),
                BladeAreaSquareInches = Spelling.IsNone(parsed.GetValue(area)) ? null : Area(parsed.GetValue(area)),
                ClearBladeArea = Spelling.IsNone(parsed.GetValue(area)),
                Owner = whose is null || Spelling.IsNone(whose) ? null : workspace.PaddlerNamed(whose),
                ClearOwner = Spelling.IsNone(whose),
                Club = parsed.GetValue(club),
                NewName = verb == "set" ? parsed.GetValue(rename) : null,
                Steering = TextForms.YesOrNo.ReadIfAny(parsed.GetValue(steering)),
            }, parsed.GetValue(frame.NewName));
            Tell(frame, workspace, paddle);
        }, begins: verb == "add");
        return command;
    }

    private static Command List(CommandFrame frame)
    {
        var command = new Command("list", "List the paddles.") { frame.Json };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            if (parsed.GetValue(frame.Json))
            {
                Dictionary<Guid, string> names = workspace.Logbook.Paddlers().ToDictionary(paddler => paddler.Id, paddler => paddler.Name);
                JsonOutput.Write<IReadOnlyList<PaddleFacts>>(
                    frame.Out, [.. workspace.Logbook.Paddles().Select(paddle => PaddleFacts.Of(paddle, names))]);
                return;
            }

            foreach (Paddle paddle in workspace.Logbook.Paddles())
                Tell(frame, workspace, paddle);
        });
        return command;
    }

    private static Command Remove(CommandFrame frame)
    {
        var name = new Argument<string>("NAME");
        var command = new Command("remove", "Remove a paddle that no piece uses.") { name };
        frame.OnDesk(
            command, (parsed, workspace) =>
            frame.Out.WriteLine($"Removed the paddle {SetUpPaddle.Remove(workspace, parsed.GetRequiredValue(name)).Name}."));
        return command;
    }

    private static double? Area(string? text) => text is null ? null
        : double.TryParse(text.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double area)
            ? area
        : throw new InvalidValueException($"“{Quoted.Brief(text)}” is not an area in square inches.");

    private static Command Owners(CommandFrame frame)
    {
        var command = new Command(
            "owners", "Say whose the paddles are, by who used what; asked once in a logbook from before paddles had owners.");
        frame.OnDesk(command, (_, workspace) =>
        {
            IReadOnlyList<OwnerQuestion> questions = PaddleOwners.Questions(workspace);
            if (questions.Count == 0)
            {
                frame.Out.WriteLine("It is said of every paddle whose it is.");
                return;
            }

            List<(Paddle, Paddler?)> answers = [];
            foreach (OwnerQuestion question in questions)
            {
                string name = Quoted.Visible(question.Paddle.Name);
                Wrapped.Write(frame.Out, question.Says, frame.ConsoleHost.Width);
                if (!frame.ConsoleHost.Interactive)
                {
                    string whose = question.Suggestion is { } likely ? $"--owner \"{Quoted.Visible(likely.Name)}\""
                        : question.UsedBy.Count > 1 ? "--club" : "--owner PADDLER";
                    frame.Out.WriteLine($"  triallog paddle set \"{name}\" {whose}");
                    continue;
                }

                frame.Out.Write($"  A paddler's name, club, or empty for " +
                    $"{(question.Suggestion is { } owner ? Quoted.Visible(owner.Name) : question.UsedBy.Count > 1 ? "club" : "later")}: ");
                frame.Out.Flush();
                string answer = (frame.ConsoleHost.In.ReadLine() ?? throw new RequestException("Nothing was changed.")).Trim();
                if (answer.Length == 0 && question.Suggestion is null && question.UsedBy.Count < 2)
                    continue;
                answers.Add(
                    (question.Paddle, answer.Length == 0 ? question.Suggestion : answer.Equals("club", StringComparison.OrdinalIgnoreCase)
                    ? null : workspace.PaddlerNamed(answer)));
            }

            PaddleOwners.Answer(workspace, answers);
        });
        return command;
    }

    private static void Tell(CommandFrame frame, Workspace workspace, Paddle paddle)
    {
        LengthUnit unit = workspace.Unit;
        string whose = paddle.BelongsToClub ? ", the club's"
            : workspace.Logbook.Paddlers().FirstOrDefault(paddler => paddler.Id == paddle.OwnerId) is { } owner
                ? $", {Quoted.Visible(owner.Name)}'s" : "";
        frame.Out.WriteLine($"{Quoted.Visible(paddle.Name)}: blade {paddle.Blade.ToText(unit)}, " + (paddle.IsFixed
            ? $"fixed at {paddle.Longest.ToText(unit)}"
            : $"{paddle.Shortest.ToText(unit)} to {paddle.Longest.ToText(unit)} by {paddle.Step.ToText(unit)}")
                + (paddle.Steering ? ", for steering" : "") + whose);
    }
}
