using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

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

    /// <summary>The priors and the rule for stopping.</summary>
    public TuningSettings Settings { get; init; } = TuningSettings.Default;

    /// <summary>The day on which it is asked: soreness of the last weeks counts from here.</summary>
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
