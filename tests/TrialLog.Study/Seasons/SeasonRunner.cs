using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Study.Seasons.Methods;

namespace TrialLog.Study.Seasons;

/// <summary>Runs seasons, in parallel over paddlers; each paddler's result depends on world, seed and number alone.</summary>
internal static class SeasonRunner
{
    private static readonly Hull Canoe = StandardHulls.All[0];
    private static readonly Paddler Nobody = new() { Id = new Guid(1, 0, 0, new byte[8]), Name = "Ilse Maro" };
    private static readonly Paddle Plain = new()
    {
        Id = new Guid(2, 0, 0, new byte[8]),
        Name = "adjustable",
        Blade = ExposedShaftRule.ReferenceBlade,
        Shortest = Length.FromInches(40),
        Longest = Length.FromInches(60),
        Step = Length.FromInches(0.25),
    };

    /// <summary>How much longer a paddle is in the other hull by its seat alone, inches.</summary>
    private static double OtherHullBySeat { get; } = OffsetOf(ThisModel.Other);

    /// <summary>Results by paddler for one method in one world.</summary>
    public static SeasonResult[] Run(
        World world, Func<World, SimulatedPaddler, ISearchMethod> begin, int first, int paddlers, ulong seed, int threads,
        Action<int> progress)
    {
        SeasonResult[] results = new SeasonResult[paddlers];
        int done = 0;
        Parallel.For(0, paddlers, new ParallelOptions { MaxDegreeOfParallelism = threads }, number =>
        {
            results[number] = Season(world, begin, new SimulatedPaddler(world, seed, first + number));
            progress(Interlocked.Increment(ref done));
        });
        return results;
    }

    private static SeasonResult Season(World world, Func<World, SimulatedPaddler, ISearchMethod> begin, SimulatedPaddler paddler)
    {
        ISearchMethod method = begin(world, paddler);
        double[] loss = new double[SimulatedPaddler.Outings + 1];
        bool[] covered = new bool[SimulatedPaddler.Outings + 1], near = new bool[SimulatedPaddler.Outings + 1];
        bool ranges = false;
        List<Claims> claims = [];
        List<Outing> paddled = [];
        Dictionary<int, bool> otherHull = [], goal = [];
        for (int outing = 0; ; outing++)
        {
            Recommendation said = method.Recommend();
            loss[outing] = paddler.Loss(said.Inches);
            ranges = !double.IsNaN(said.Low);
            covered[outing] = said.Low <= paddler.Best && paddler.Best <= said.High;
            near[outing] = Math.Abs(said.Inches - paddler.Best) <= 0.25;
            if (said.Claims is { } more)
            {
                claims.Add(more);
                if (more.OtherHull is { } other)
                    otherHull[outing] = Holds(other, paddler.Best + OtherHullBySeat + paddler.HullOffset);
                if (more.Goal is { } over)
                    goal[outing] = Holds(over, paddler.BestOverGoal);
            }

            if (outing == SimulatedPaddler.Outings)
                return new(loss, ranges ? covered : null, near, claims, otherHull, goal);
            paddled.Add(paddler.Paddle(outing, method.Plan(), paddled, Nobody, Canoe, Plain));
            method.Learn(paddled[^1]);
        }
    }

    private static bool Holds((double Low, double High) range, double best) => range.Low <= best && best <= range.High;

    private static double OffsetOf(Hull hull)
    {
        Alignment alignment = new(SimulatedPaddler.Start, [Canoe, hull]);
        return alignment.SeatHeightOffsetInches(hull) - alignment.SeatHeightOffsetInches(Canoe);
    }
}
