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

    /// <summary>A new name.</summary>
    public string? NewName { get; init; }

    /// <summary>Whose it is from now on.</summary>
    public Paddler? Owner { get; init; }

    /// <summary>Whether it belongs to the club from now on.</summary>
    public bool Club { get; init; }

    /// <summary>Whether nobody is its owner from now on.</summary>
    public bool ClearOwner { get; init; }

    /// <summary>Whether to forget the blade's area.</summary>
    public bool ClearBladeArea { get; init; }
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
        Paddle paddle = New(workspace, name, details, newName);
        workspace.Logbook.Change($"Added the paddle {paddle.Name}", logbook => logbook.Put(paddle));
        return paddle;
    }

    /// <summary>As <see cref="Add"/>, written by the caller as part of a larger change.</summary>
    public static Paddle New(Workspace workspace, string name, PaddleDetails details, bool newName)
    {
        string checkedName = Setup.NewName.Checked(workspace.Logbook.Paddles().Select(known => known.Name), name, "paddle", newName);
        if (details.Range is null)
            throw new RequestException(
                "Say what lengths the paddle has: --range 48in..54in if it is adjustable, --fixed 50in if it is not.");
        if (details.Blade is null)
            throw new RequestException("Say how long the blade is, tip to throat: --blade 18.5in.");
        return With(
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
    }

    /// <param name="workspace">The open logbook.</param>
    /// <param name="name">Which paddle.</param>
    /// <param name="details">What is told.</param>
    /// <param name="newName">Whether a new name is meant though it is close to a known one.</param>
    public static Paddle Change(Workspace workspace, string name, PaddleDetails details, bool newName = false)
    {
        Paddle before = workspace.PaddleNamed(name), paddle = With(before, details);
        if (details.NewName is { } other)
            paddle = paddle
                with
            {
                Name = Setup.NewName.Checked(
                workspace.Logbook.Paddles().Where(known => known.Id != before.Id).Select(known => known.Name), other, "paddle", newName)
            };
        workspace.Logbook.Change(paddle.Name == before.Name ? $"Changed the paddle {paddle.Name}"
            : $"Renamed the paddle {before.Name} to {paddle.Name}", logbook => logbook.Put(paddle));
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

    /// <summary>The paddle with what is told of it.</summary>
    public static Paddle With(Paddle before, PaddleDetails details)
    {
        Paddle paddle = before with
        {
            Blade = details.Blade ?? before.Blade,
            BladeAreaSquareInches = details.ClearBladeArea ? null : details.BladeAreaSquareInches ?? before.BladeAreaSquareInches,
            OwnerId = details.Owner is { } owner ? owner.Id : details.Club || details.ClearOwner ? null : before.OwnerId,
            BelongsToClub = details.Club || (details.Owner is null && !details.ClearOwner && before.BelongsToClub),
            Steering = details.Steering ?? before.Steering,
            Shortest = details.Range?.Shortest ?? before.Shortest,
            Longest = details.Range?.Longest ?? before.Longest,
            Step = details.Step ?? before.Step,
        };
        if (paddle.Shortest > paddle.Longest)
            throw new InvalidValueException(
                $"The range of lengths runs from {paddle.Shortest} down to {paddle.Longest}; give the shorter end first.");
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
