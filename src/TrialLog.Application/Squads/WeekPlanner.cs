using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Squads;

/// <summary>A paddler as the plan sees them.</summary>
/// <param name="WonAfter">Percent of speed that so many outings of testing are expected to win; the first is for none, 0; it never
/// falls.</param>
/// <param name="Price">What an outing must win to be worth it, percent of speed.</param>
/// <param name="Paddles">The paddles that fit this paddler, by their number, the most fitting first.</param>
/// <param name="LastWeek">The last week, from 1, in which an outing still comes before the race; the plan's last where no race is
/// near.</param>
public sealed record Tester(IReadOnlyList<double> WonAfter, double Price, IReadOnlyList<int> Paddles, int LastWeek);

/// <summary>One outing of the plan.</summary>
/// <param name="Week">Week, from 1.</param>
/// <param name="Paddle">The paddle's number.</param>
/// <param name="Tester">The paddler's number.</param>
public readonly record struct PlannedTest(int Week, int Paddle, int Tester);

/// <summary>
/// Who tests in which week with which paddle, so that the squad as a whole is expected to win the most by each one's race or the end
/// of the plan; of plans that win the same, the one in which more is won sooner. A paddler tests once a week, a paddle is lent out so often
/// a week.
/// <para>
/// What an outing adds falls with each outing, so the best plan is a flow of least cost (Ahuja, Magnanti and Orlin, "Network Flows", 1993,
/// ch. 9): each paddler's first, second, third outing to a week of theirs, and from there to a paddle that is free in that week. Found by
/// successive shortest paths.
/// </para>
/// </summary>
public static class WeekPlanner
{
    /// <summary>
    /// How much more an outing counts for each week that it comes sooner, as a share of what it wins: only ever decides between equals.
    /// </summary>
    public const double Sooner = 1e-4;

    /// <summary>What a paddle further down a paddler's list costs, percent of speed: only ever decides between equals.</summary>
    private const double LessFitting = 1e-9;

    /// <summary>The plan, by week, paddle and tester.</summary>
    /// <param name="testers">Who may test.</param>
    /// <param name="paddles">How many paddles there are.</param>
    /// <param name="weeks">How many weeks.</param>
    /// <param name="outingsAWeek">How often a week a paddle can be lent out.</param>
    public static IReadOnlyList<PlannedTest> Plan(IReadOnlyList<Tester> testers, int paddles, int weeks, int outingsAWeek = 1)
    {
        int[] most = [.. testers.Select(static tester => tester.WonAfter.Count - 1)];
        while (true)
        {
            List<PlannedTest> plan = Solve(testers, most, paddles, weeks, outingsAWeek);
            // Where one outing tells nothing and two do (no swaps on the water), half of a pair is not worth lending a paddle for.
            int half = Enumerable.Range(0, testers.Count)
                .FirstOrDefault(
                at => Whole(testers[at], plan.Count(test => test.Tester == at)) < plan.Count(test => test.Tester == at), -1);
            if (half < 0)
                return [.. plan.OrderBy(test => test.Week).ThenBy(test => test.Paddle).ThenBy(test => test.Tester)];
            most[half] = Whole(testers[half], plan.Count(test => test.Tester == half));
        }
    }

    /// <summary>What a plan is expected to win, percent of speed summed over the squad, less what its outings cost.</summary>
    public static double Worth(IReadOnlyList<Tester> testers, IReadOnlyList<PlannedTest> plan, int weeks)
    {
        double worth = 0;
        foreach (IGrouping<int, PlannedTest> tests in plan.GroupBy(test => test.Tester))
        {
            Tester tester = testers[tests.Key];
            int outings = 0;
            foreach (PlannedTest test in tests.OrderBy(test => test.Week))
            {
                double adds = tester.WonAfter[outings + 1] - tester.WonAfter[outings] - tester.Price;
                worth += adds * (1 + Sooner * (weeks - test.Week));
                outings++;
            }
        }

        return worth;
    }

    /// <summary>
    /// What each further outing adds, never more than the one before it: the steps of the least concave line over
    /// <see cref="Tester.WonAfter"/>.
    /// </summary>
    private static double[] Steps(IReadOnlyList<double> wonAfter)
    {
        double[] steps = new double[wonAfter.Count - 1];
        for (int from = 0; from < steps.Length;)
        {
            int to = Enumerable.Range(from + 1, steps.Length - from).MaxBy(at => ((wonAfter[at] - wonAfter[from]) / (at - from), at));
            Array.Fill(steps, (wonAfter[to] - wonAfter[from]) / (to - from), from, to - from);
            from = to;
        }

        return steps;
    }

    /// <summary>The most outings, up to so many, whose worth is not borrowed from a later one.</summary>
    private static int Whole(Tester tester, int outings)
    {
        double[] steps = Steps(tester.WonAfter);
        double line = 0;
        int whole = 0;
        for (int at = 1; at <= outings; at++)
        {
            line += steps[at - 1];
            if (tester.WonAfter[at] - tester.WonAfter[0] > line - 1e-12)
                whole = at;
        }

        return whole;
    }

    private static List<PlannedTest> Solve(IReadOnlyList<Tester> testers, int[] most, int paddles, int weeks, int outingsAWeek)
    {
        var net = new Network();
        int source = net.Node(), sink = net.Node();
        int[,] slots = new int[weeks + 1, paddles];
        for (int week = 1; week <= weeks; week++)
            for (int paddle = 0; paddle < paddles; paddle++)
                net.Arc(slots[week, paddle] = net.Node(), sink, outingsAWeek, 0);

        List<(int Arc, PlannedTest Test)> lent = [];
        for (int at = 0; at < testers.Count; at++)
        {
            Tester tester = testers[at];
            double[] steps = Steps(tester.WonAfter);
            int[] outings = [.. steps.Take(most[at]).TakeWhile(step => step > tester.Price).Select(_ => net.Node())];
            foreach (int outing in outings)
                net.Arc(source, outing, 1, 0);
            for (int week = 1; week <= Math.Min(weeks, tester.LastWeek); week++)
            {
                int ready = net.Node(), afloat = net.Node();
                net.Arc(ready, afloat, 1, 0);
                for (int outing = 0; outing < outings.Length; outing++)
                    net.Arc(outings[outing], ready, 1, -(steps[outing] - tester.Price) * (1 + Sooner * (weeks - week)));
                for (int place = 0; place < tester.Paddles.Count; place++)
                    lent.Add(
                        (net.Arc(afloat, slots[week, tester.Paddles[place]], 1, LessFitting * place),
                        new(week, tester.Paddles[place], at)));
            }
        }

        net.SendAllThatPays(source, sink);
        return [.. lent.Where(one => net.Used(one.Arc)).Select(one => one.Test)];
    }

    /// <summary>Nodes and arcs with what is left of each arc; arc and counter-arc stand beside each other.</summary>
    private sealed class Network
    {
        private readonly List<(int From, int To, double Cost)> _arcs = [];
        private readonly List<int> _left = [];
        private int _nodes;

        public int Node() => _nodes++;

        public int Arc(int from, int to, int capacity, double cost)
        {
            _arcs.Add((from, to, cost));
            _arcs.Add((to, from, -cost));
            _left.Add(capacity);
            _left.Add(0);
            return _arcs.Count - 2;
        }

        public bool Used(int arc) => _left[arc + 1] > 0;

        // Bellman and Ford's shortest path each time, since costs are negative; the networks are small.
        public void SendAllThatPays(int source, int sink)
        {
            while (true)
            {
                double[] cost = new double[_nodes];
                int[] by = new int[_nodes];
                Array.Fill(cost, double.PositiveInfinity);
                Array.Fill(by, -1);
                cost[source] = 0;
                for (bool better = true; better;)
                {
                    better = false;
                    for (int arc = 0; arc < _arcs.Count; arc++)
                    {
                        (int from, int to, double add) = _arcs[arc];
                        if (_left[arc] > 0 && cost[from] + add < cost[to] - 1e-13)
                            (cost[to], by[to], better) = (cost[from] + add, arc, true);
                    }
                }

                if (!(cost[sink] < 0))
                    return;
                for (int node = sink; node != source; node = _arcs[by[node]].From)
                    (_left[by[node]], _left[by[node] ^ 1]) = (_left[by[node]] - 1, _left[by[node] ^ 1] + 1);
            }
        }
    }
}
