using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Deciding;

/// <summary>Takes down what was decided about a length: raced, ordered, cut, delivered, kept.</summary>
internal static class Decide
{
    /// <summary>Takes a decision down.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="chosen">For whom, which hull and which paddle.</param>
    /// <param name="length">The length decided on.</param>
    /// <param name="kind">What was done.</param>
    /// <param name="date">When.</param>
    /// <param name="by">Who decided; null where nobody is named.</param>
    /// <param name="because">Why; null where nothing is said.</param>
    /// <exception cref="InvalidValueException">The length or the day cannot be.</exception>
    /// <exception cref="RequestException">Soreness stands and the length is longer than what did not hurt.</exception>
    public static Decision On(Workspace workspace, Chosen chosen, Length length, DecisionKind kind, DateOnly date, string? by,
        string? because)
    {
        if (Plausible.ProblemWithPaddleLength(length) is { } problem)
            throw new InvalidValueException(problem);
        if (date > workspace.Today.AddDays(1))
            throw new InvalidValueException($"{date:yyyy-MM-dd} is in the future; take a decision down once it was taken.");
        if (!NoteRule.TryCheck(because, "reason", out string? why, out string? wrong))
            throw new InvalidValueException(wrong);
        var decision = new Decision
        {
            Id = Guid.CreateVersion7(workspace.Now),
            PaddlerId = chosen.Paddler.Id,
            HullId = chosen.Hull.Id,
            PaddleId = chosen.Paddle.Id,
            Length = length,
            Kind = kind,
            Date = date,
            By = by is null ? null : NameRule.Checked(by, "person who decided"),
            Because = why,
        };
        workspace.Logbook.Change($"Took down for {chosen.Paddler.Name}: {DecisionWords.Short(decision, chosen.Paddler.Unit)}",
            logbook => logbook.Put(decision));
        workspace.Remember(chosen.Paddler);
        return decision;
    }

    /// <summary>What was decided last for that paddler, hull and paddle; null where nothing was.</summary>
    public static Decision? Latest(Workspace workspace, Chosen chosen) => All(workspace, chosen.Paddler)
        .LastOrDefault(decision => decision.HullId == chosen.Hull.Id && decision.PaddleId == chosen.Paddle.Id);

    /// <summary>All decisions of a paddler, oldest first.</summary>
    public static IReadOnlyList<Decision> All(Workspace workspace, Paddler paddler) =>
        [.. workspace.Logbook.Decisions(paddler.Id).OrderBy(decision => decision.Date).ThenBy(decision => decision.Id)];

    /// <summary>Outings since it was decided, by which the length is followed up.</summary>
    public static int OutingsSince(Decision decision, IEnumerable<Outing> outings) =>
        outings.Count(outing => outing.Date > decision.Date && outing.HullId == decision.HullId);
}
