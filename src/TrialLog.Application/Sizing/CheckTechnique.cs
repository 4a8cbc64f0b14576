using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;

namespace TrialLog.Application.Sizing;

/// <summary>A technique check and what it implies.</summary>
internal sealed record TechniqueAnswer(TechniqueCheck Check, Paddler Paddler, Hull Hull, Paddle Paddle, TechniqueImplication Implied)
{
    /// <summary>The length that the check points to, to the quarter inch.</summary>
    public Length PointsTo => Check.Length.PlusInches(Implied.ChangeInches).RoundedTo(Length.QuarterInch);

    /// <summary>Whether the paddle can be set to it.</summary>
    public bool InRange => Paddle.Reaches(PointsTo);

    /// <summary>The length that the check points to and its range, nine times in ten as every range.</summary>
    public string InWords(LengthUnit unit)
    {
        double half = 1.645 * Implied.SpreadInches;
        return $"{Say.Quarter(PointsTo, unit)}, likely {Say.Range(PointsTo.PlusInches(-half), PointsTo.PlusInches(half), unit)}";
    }
}

/// <summary>Takes, keeps and removes technique checks: the top hand against the eye with the blade just buried.</summary>
internal static class CheckTechnique
{
    /// <summary>What a check implies; nothing is kept.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="chosen">Whose, in which hull, with which paddle.</param>
    /// <param name="length">At which length; null for the length last paddled in that hull with that paddle.</param>
    /// <param name="handAboveEyeInches">Top hand above eye level in inches, negative below.</param>
    /// <param name="leanDegrees">Shaft lean from upright; null where not measured.</param>
    /// <param name="fromPhoto">Whether it was measured in a photo.</param>
    /// <param name="date">The day.</param>
    /// <exception cref="InvalidValueException">A measure cannot be right.</exception>
    /// <exception cref="RequestException">No length is known.</exception>
    public static TechniqueAnswer Of(
        Workspace workspace, Chosen chosen, Length? length, double handAboveEyeInches, double? leanDegrees, bool fromPhoto, DateOnly date)
    {
        if (chosen.Paddle.Steering)
            throw new RequestException("The technique check is for forward paddling; for a steering paddle see: triallog steering");
        Length at = length ?? LastPaddled(workspace, chosen)
            ?? throw new RequestException(
                $"No piece in {Quoted.Visible(chosen.Hull.Name)} with {Quoted.Visible(chosen.Paddle.Name)} tells the length; say " +
                $"it with --length L.");
        if (Plausible.ProblemWithPaddleLength(at) is { } problem)
            throw new InvalidValueException(problem);
        if (at <= chosen.Paddle.Blade)
            throw new InvalidValueException($"A paddle of {at} is no longer than its blade of {chosen.Paddle.Blade}; check the length.");
        if (!(Math.Abs(handAboveEyeInches) <= HandHeight.MostInches))
            throw new InvalidValueException(HandHeight.TooFar(handAboveEyeInches));
        if (leanDegrees is { } lean && lean is not (>= 0 and <= 60))
            throw new InvalidValueException("The shaft's lean is measured from upright, 0 to 60 degrees.");
        if (date > workspace.Today.AddDays(1))
            throw new InvalidValueException($"{date:yyyy-MM-dd} is in the future; check the date.");
        var check = new TechniqueCheck
        {
            Id = Guid.CreateVersion7(workspace.Now),
            PaddlerId = chosen.Paddler.Id,
            HullId = chosen.Hull.Id,
            PaddleId = chosen.Paddle.Id,
            Length = at,
            HandAboveEyeInches = handAboveEyeInches,
            ShaftLeanDegrees = leanDegrees,
            FromPhoto = fromPhoto,
            Date = date,
        };
        return new(check, chosen.Paddler, chosen.Hull, chosen.Paddle, TechniqueRule.Implied(check));
    }

    /// <summary>
    /// The best length by everything else, and with this check too: how much so weak a piece of evidence moves.
    /// </summary>
    public static (Length Without, Length With) Effect(Workspace workspace, TechniqueAnswer answer)
    {
        AnalysisInput question = workspace.Question(new Chosen(answer.Paddler, answer.Hull, answer.Paddle));
        IReadOnlyList<TechniqueCheck> others = [.. question.TechniqueChecks.Where(check => check.Id != answer.Check.Id)];
        return (Best(others), Best([.. others, answer.Check]));

        Length Best(IReadOnlyList<TechniqueCheck> checks) =>
            Tuner.Carry(question with { TechniqueChecks = checks }, [answer.Hull], [answer.Paddle])[0].Ideal.Length;
    }

    /// <summary>Keeps a check, so that it counts as weak evidence on the best length.</summary>
    public static void Keep(Workspace workspace, TechniqueAnswer answer)
    {
        workspace.Logbook.Change($"Kept a technique check of {answer.Paddler.Name} in {answer.Hull.Name}",
            logbook => logbook.Put(answer.Check));
        workspace.Remember(answer.Paddler);
    }

    /// <summary>The checks kept of a paddler, oldest first.</summary>
    public static IReadOnlyList<TechniqueAnswer> Kept(Workspace workspace, Paddler paddler)
    {
        Dictionary<Guid, Hull> hulls = workspace.Logbook.Hulls().ToDictionary(hull => hull.Id);
        Dictionary<Guid, Paddle> paddles = workspace.Logbook.Paddles().ToDictionary(paddle => paddle.Id);
        return
        [
            .. from check in workspace.Logbook.TechniqueChecks(paddler.Id)
               where hulls.ContainsKey(check.HullId) && paddles.ContainsKey(check.PaddleId)
               select new TechniqueAnswer(check, paddler, hulls[check.HullId], paddles[check.PaddleId], TechniqueRule.Implied(check)),
        ];
    }

    /// <summary>Removes the check that stands at that place in <see cref="Kept"/>, from 1.</summary>
    /// <exception cref="RequestException">There is none.</exception>
    public static TechniqueAnswer Remove(Workspace workspace, Paddler paddler, int number)
    {
        IReadOnlyList<TechniqueAnswer> kept = Kept(workspace, paddler);
        if (number < 1 || number > kept.Count)
            throw new RequestException(kept.Count == 0
                ? $"No technique check of {Quoted.Visible(paddler.Name)} is kept."
                : $"There is no technique check {number}; {Quoted.Visible(paddler.Name)} has {kept.Count}, see them " +
                    $"with: triallog technique");
        TechniqueAnswer gone = kept[number - 1];
        workspace.Logbook.Change($"Removed a technique check of {paddler.Name} in {gone.Hull.Name}",
            logbook => logbook.RemoveTechniqueCheck(gone.Check.Id));
        return gone;
    }

    private static Length? LastPaddled(Workspace workspace, Chosen chosen) => workspace.Logbook.Outings(chosen.Paddler.Id)
        .Where(outing => outing.HullId == chosen.Hull.Id)
        .SelectMany(outing => outing.Pieces)
        .LastOrDefault(piece => piece.PaddleId == chosen.Paddle.Id)?.Length;
}
