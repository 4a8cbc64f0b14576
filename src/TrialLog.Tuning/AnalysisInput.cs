using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning;

/// <summary>Everything an analysis looks at: one paddler's log, and the hull and paddle the answer is for.</summary>
public sealed record AnalysisInput
{
    /// <summary>The paddler.</summary>
    public required Paddler Paddler { get; init; }

    /// <summary>The hull the answer is for.</summary>
    public required Hull Hull { get; init; }

    /// <summary>The paddle the answer is for.</summary>
    public required Paddle Paddle { get; init; }

    /// <summary>Every hull that an outing or the goal event names.</summary>
    public required IReadOnlyList<Hull> Hulls { get; init; }

    /// <summary>Every paddle that a piece names.</summary>
    public required IReadOnlyList<Paddle> Paddles { get; init; }

    /// <summary>The paddler's outings, in any order, excluded pieces included.</summary>
    public required IReadOnlyList<Outing> Outings { get; init; }

    /// <summary>The paddler's technique checks.</summary>
    public IReadOnlyList<TechniqueCheck> TechniqueChecks { get; init; } = [];

    /// <summary>Word that soreness is gone.</summary>
    public IReadOnlyList<SorenessClearance> SorenessClearances { get; init; } = [];

    /// <summary>
    /// The cards given to this paddler so far, any hull and paddle: what was forecast then tells how far to trust the next forecast.
    /// </summary>
    public IReadOnlyList<GivenCard> GivenCards { get; init; } = [];

    /// <summary>
    /// What differs for the next outing alone from what the paddler's trial outings look like; what is null there is as usual.
    /// </summary>
    public TrialHabits ThisOuting { get; init; } = TrialHabits.Untold;

    /// <summary>What the next trial outing looks like: as told for it, else as usual.</summary>
    internal TrialHabits Trials => new()
    {
        Pieces = ThisOuting.Pieces ?? (ThisOuting.Minutes is null ? Paddler.Trials.Pieces : null),
        Distance = ThisOuting.Distance ?? Paddler.Trials.Distance,
        Minutes = ThisOuting.Minutes ?? (ThisOuting.Pieces is null ? Paddler.Trials.Minutes : null),
        TimedBy = ThisOuting.TimedBy ?? Paddler.Trials.TimedBy,
        PricePercent = ThisOuting.PricePercent ?? Paddler.Trials.PricePercent,
    };

    /// <summary>
    /// What the settled logs of other paddlers teach about the start length; null to leave them out. Never from the paddler's own log.
    /// </summary>
    public SquadPrior? Squad { get; init; }

    /// <summary>The priors and the rule for stopping.</summary>
    public TuningSettings Settings { get; init; } = TuningSettings.Default;

    /// <summary>The day on which it is asked: what is dated later does not make a shoulder sore yet.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The hull of that id, null if it is not among those given.</summary>
    internal Hull? HullWith(Guid id)
    {
        if (Hull.Id == id)
            return Hull;
        foreach (Hull hull in Hulls)
            if (hull.Id == id)
                return hull;
        return null;
    }

    /// <summary>The paddle of that id, null if it is not among those given.</summary>
    internal Paddle? PaddleWith(Guid id)
    {
        if (Paddle.Id == id)
            return Paddle;
        foreach (Paddle paddle in Paddles)
            if (paddle.Id == id)
                return paddle;
        return null;
    }
}
