using System.CommandLine;
using TrialLog.Application.Coaching;
using TrialLog.Application.Deciding;
using TrialLog.Application.Sizing;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Commands.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Commands.Sizing;

/// <summary><c>triallog steering</c>: a length to begin with for a steering paddle, with its cautions.</summary>
internal static class SteeringCommand
{
    public static Command Build(CommandFrame frame)
    {
        Option<string?> hull = PaddlerCommand.Text("--hull", "The hull to steer; else OC6.", "NAME");
        Option<string?> paddle = PaddlerCommand.Text("--paddle", "A steering paddle of the logbook; else say its blade.", "NAME");
        Option<string?> blade = PaddlerCommand.Text("--blade", "Length of the steering blade, tip to throat.", "L");
        var area = new Option<double?>("--area") { Description = "Area of the steering blade, square inches.", HelpName = "IN2" };
        var command = new Command(
            "steering", "A length to begin with for a steering paddle, and what to take care of; never tuned for speed.")
        {
            frame.Paddler, hull, paddle, blade, area, frame.Json,
        };
        frame.OnDesk(command, (parsed, workspace) =>
        {
            Paddler paddler = workspace.PaddlerNamed(parsed.GetValue(frame.Paddler));
            Hull steered = parsed.GetValue(hull) is { } name ? workspace.HullNamed(name) : workspace.HullNamed("OC6");
            Paddle steering = Steering(workspace, paddler, parsed.GetValue(paddle), parsed.GetValue(blade), parsed.GetValue(area));
            SteeringProposal proposal = ProposeSteering.For(workspace, paddler, steered, steering);
            StandingSoreness? sore = ClearSoreness.Standing(workspace, paddler);
            if (parsed.GetValue(frame.Json))
                JsonOutput.Write(frame.Out, SteeringFacts.Of(steered.Name, steering.Name, RestFirst.Of(sore), proposal));
            else if (!RestText.Instead(frame.Out, Quoted.Visible(paddler.Name), RestFirst.Page(sore), frame.ConsoleHost.Width))
                Write(frame.Out, paddler, steered, steering, proposal, frame.ConsoleHost.Width);
        });
        return command;
    }

    private static Paddle Steering(Workspace workspace, Paddler paddler, string? name, string? blade, double? area)
    {
        if (name is not null)
            return workspace.PaddleNamed(name);
        if (blade is null)
        {
            return workspace.Logbook.Paddles().Where(paddle => paddle.Steering).ToList() is [var only] ? only
                : throw new RequestException(
                    "Say which steering paddle: --paddle NAME, or the size of its blade: --blade 21in --area 140.");
        }

        Length length = Length.Parse(blade, paddler.Unit);
        if (Plausible.ProblemWithBlade(length, Plausible.LongestPaddle) is { } problem)
            throw new InvalidValueException(problem);
        if (area is { } square && square is not (>= 20 and <= 250))
            throw new InvalidValueException($"A blade of {square} square inches is not believable (20 to 250).");
        return new Paddle
        {
            Id = Guid.Empty,
            Name = "steering paddle",
            Blade = length,
            BladeAreaSquareInches = area,
            Steering = true,
            Shortest = Plausible.ShortestPaddle,
            Longest = Plausible.LongestPaddle,
            Step = Length.QuarterInch,
        };
    }

    private static void Write(TextWriter to, Paddler paddler, Hull hull, Paddle paddle, SteeringProposal proposal, int width)
    {
        LengthUnit unit = paddler.Unit;
        to.WriteLine($"{Quoted.Visible(paddler.Name)} steering {Quoted.Visible(hull.Name)} with {Quoted.Visible(paddle.Name)} (blade " +
            $"{Say.Quarter(paddle.Blade, unit)})");
        to.WriteLine();
        Wrapped.Write(to, $"Begin with about {Say.Quarter(proposal.Length, unit)} " +
            $"({Say.Range(proposal.Low, proposal.High, unit)}). {SteeringWords.Why(proposal)}", width);
        to.WriteLine();
        foreach (string advice in SteeringWords.Advice(proposal.Large))
            Wrapped.Write(to, advice, width, "  - ", 4);
        foreach (string caution in SteeringWords.Cautions)
            Wrapped.Write(to, caution, width, "Caution: ", 9);
    }
}
