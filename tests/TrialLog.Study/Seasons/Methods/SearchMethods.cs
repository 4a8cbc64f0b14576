using TrialLog.Tuning;

namespace TrialLog.Study.Seasons.Methods;

/// <summary>The methods of the study, by the name the table shows.</summary>
internal static class SearchMethods
{
    /// <summary>Name, and how to begin a season with it.</summary>
    public static IReadOnlyList<(string Name, Func<World, SimulatedPaddler, ISearchMethod> Begin)> With(TuningSettings settings) =>
    [
        ("never move from the start length", static (world, _) => new NeverMove(world)),
        ("hill-climb by quarter inches, one length an outing", static (world, _) => new HillClimb(world)),
        ("parabola through one length an outing", static (world, _) => new ParabolaByOuting(world)),
        ("fixed mirrored pairs and least squares", static (world, _) => new FixedPairs(world)),
        (Own, (world, _) => new ThisModel(world, settings)),
        ("bound: curvature and noise known, best fixed pairs", static (world, paddler) => new KnownCurve(world, paddler)),
    ];

    /// <summary>The model's own place among them.</summary>
    public const string Own = "this model and planner";
}
