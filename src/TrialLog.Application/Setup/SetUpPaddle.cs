using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Setup;

/// <summary>What is told of a paddle; null leaves it as it is.</summary>
internal sealed record PaddleDetails
{
    public Length? Blade { get; init; }

    public double? BladeAreaSquareInches { get; init; }

    public bool? Steering { get; init; }

    /// <summary>Shortest and longest overall length; the same for a fixed paddle.</summary>
    public (Length Shortest, Length Longest)? Range { get; init; }

    public Length? Step { get; init; }
}

/// <summary>Adds a paddle, or changes what is known of one.</summary>
internal static class SetUpPaddle
{
    private static readonly Length QuarterInch = Length.FromInches(0.25);

    /// <param name="workspace">The open logbook.</param>
    /// <param name="name">The name.</param>
    /// <param name="details">What is told.</param>
    /// <param name="newName">Whether the name is meant though it is close to a known one.</param>
    public static Paddle Add(Workspace workspace, string name, PaddleDetails details, bool newName = false)
    {
        string checkedName = NameRule.Checked(name, "paddle");
        if (workspace.Logbook.Paddles().Any(known => string.Equals(known.Name, checkedName, StringComparison.OrdinalIgnoreCase)))
            throw new RequestException($"There is a paddle “{checkedName}” already; change it with: triallog paddle set \"{checkedName}\" …");
        if (!newName)
            NewName.Refuse(workspace.Logbook.Paddles().Select(known => known.Name), checkedName, "paddle");
        if (details.Range is null)
            throw new RequestException("Say what lengths the paddle has: --range 48in..54in if it is adjustable, --fixed 50in if it is not.");
        if (details.Blade is null)
            throw new RequestException("Say how long the blade is, tip to throat: --blade 18.5in.");
        Paddle paddle = With(
            new Paddle
            {
                Id = Guid.CreateVersion7(workspace.Now),
                Name = checkedName,
                Blade = details.Blade.Value,
                Shortest = details.Range.Value.Shortest,
                Longest = details.Range.Value.Longest,
                Step = QuarterInch,
            },
            details);
        workspace.Logbook.Change($"Added the paddle {checkedName}", logbook => logbook.Put(paddle));
        return paddle;
    }

    public static Paddle Change(Workspace workspace, string name, PaddleDetails details)
    {
        Paddle paddle = With(workspace.PaddleNamed(name), details);
        workspace.Logbook.Change($"Changed the paddle {paddle.Name}", logbook => logbook.Put(paddle));
        return paddle;
    }

    public static Paddle Remove(Workspace workspace, string name)
    {
        Paddle paddle = workspace.PaddleNamed(name);
        workspace.Logbook.Change($"Removed the paddle {paddle.Name}", logbook => logbook.RemovePaddle(paddle.Id));
        return paddle;
    }

    /// <summary>Reads <c>48in..54in</c>, <c>48..54</c>, <c>120cm..135cm</c>.</summary>
    public static (Length Shortest, Length Longest) Range(string text, LengthUnit bare)
    {
        string[] ends = text.Split("..", StringSplitOptions.TrimEntries);
        return ends.Length == 2
            ? (Length.Parse(ends[0], bare), Length.Parse(ends[1], bare))
            : throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a range of lengths; write it like 48in..54in.");
    }

    private static Paddle With(Paddle before, PaddleDetails details)
    {
        Paddle paddle = before with
        {
            Blade = details.Blade ?? before.Blade,
            BladeAreaSquareInches = details.BladeAreaSquareInches ?? before.BladeAreaSquareInches,
            Steering = details.Steering ?? before.Steering,
            Shortest = details.Range?.Shortest ?? before.Shortest,
            Longest = details.Range?.Longest ?? before.Longest,
            Step = details.Step ?? before.Step,
        };
        if (paddle.Shortest > paddle.Longest)
            throw new InvalidValueException($"The range of lengths runs from {paddle.Shortest} down to {paddle.Longest}; give the shorter end first.");
        foreach (Length end in new[] { paddle.Shortest, paddle.Longest })
        {
            if (Plausible.ProblemWithPaddleLength(end) is { } problem)
                throw new InvalidValueException(problem);
        }

        if (Plausible.ProblemWithBlade(paddle.Blade, paddle.Shortest) is { } wrongBlade)
            throw new InvalidValueException(wrongBlade);
        if (paddle.Step.Inches is < 0.03 or > 3)
            throw new InvalidValueException($"A step of {paddle.Step} is not believable (1/32 in to 3 in).");
        if (paddle.BladeAreaSquareInches is { } area && area is not (>= 20 and <= 250))
            throw new InvalidValueException($"A blade of {area} square inches is not believable (20 to 250).");
        return paddle;
    }
}
