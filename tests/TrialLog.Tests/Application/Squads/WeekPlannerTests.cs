using CsCheck;
using TrialLog.Application.Squads;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Application.Squads;

/// <summary>The plan against every plan there is, on squads small enough to try them all.</summary>
public class WeekPlannerTests
{
    private const string Seed = "0N0XIzNsQ0O2";

    // What each outing adds falls from one to the next; now and then nothing is to be won.
    private static readonly Gen<Tester> Anybody = Gen.Select(
        Gen.Double[0, 0.3], Gen.Double[0.2, 0.9], Gen.Int[1, 3], Gen.Int[0, 3], (first, shrinks, paddles, last) =>
        new Tester(Adding(first, shrinks), 0.005, paddles switch { 1 => [0], 2 => [1], _ => [0, 1] }, last));

    private static double[] Adding(double first, double shrinks)
    {
        double[] won = new double[4];
        for (int at = 1; at < won.Length; at++)
            won[at] = won[at - 1] + first * Math.Pow(shrinks, at - 1);
        return won;
    }

    [Fact]
    public void No_other_plan_of_a_small_squad_wins_more() => Gen.Select(Anybody.Array[1, 3], Gen.Int[1, 3]).Sample((testers, weeks) =>
    {
        IReadOnlyList<PlannedTest> plan = WeekPlanner.Plan(testers, paddles: 2, weeks);
        double best = Every(testers, 2, weeks).Max(other => WeekPlanner.Worth(testers, other, weeks));
        Assert.Equal(best, WeekPlanner.Worth(testers, plan, weeks), 1e-7);
    }, iter: 300, seed: Seed);

    [Fact]
    public void A_paddle_is_lent_once_a_week_a_paddler_tests_once_a_week_before_the_race_and_with_a_paddle_that_fits() =>
        Gen.Select(Anybody.Array[1, 12], Gen.Int[1, 8], Gen.Int[1, 2]).Sample((testers, weeks, uses) =>
        {
            IReadOnlyList<PlannedTest> plan = WeekPlanner.Plan(testers, paddles: 2, weeks, uses);
            Assert.All(plan.GroupBy(test => (test.Week, test.Paddle)), lent => Assert.InRange(lent.Count(), 1, uses));
            Assert.All(plan.GroupBy(test => (test.Week, test.Tester)), one => Assert.Single(one));
            Assert.All(
                plan, test =>
                Assert.True(test.Week >= 1 && test.Week <= Math.Min(weeks, testers[test.Tester].LastWeek)
                && testers[test.Tester].Paddles.Contains(test.Paddle)));
        }, iter: 200, seed: Seed);

    [Fact]
    public void A_race_comes_first_where_time_is_short()
    {
        Tester late = new([0, 0.2, 0.3], 0.005, [0], 4), early = new([0, 0.1], 0.005, [0], 1);
        Assert.Equal([new(1, 0, 1), new(2, 0, 0), new(3, 0, 0)], WeekPlanner.Plan([late, early], paddles: 1, weeks: 4));
    }

    [Fact]
    public void Who_wins_less_than_an_outing_costs_is_left_alone() =>
        Assert.Empty(WeekPlanner.Plan([new([0, 0.004, 0.006], 0.005, [0], 8)], paddles: 1, weeks: 8));

    [Fact]
    public void Where_one_outing_tells_nothing_and_two_do_a_paddler_gets_two_or_none()
    {
        Tester pair = new([0, 0, 0.1, 0.1, 0.14], 0.005, [0], 8);
        Assert.Equal(4, WeekPlanner.Plan([pair], paddles: 1, weeks: 8).Count);
        Assert.Equal(2, WeekPlanner.Plan([pair], paddles: 1, weeks: 3).Count);
        Assert.Empty(WeekPlanner.Plan([pair], paddles: 1, weeks: 1));
    }

    /// <summary>Every way to lend the paddles out.</summary>
    private static IEnumerable<List<PlannedTest>> Every(Tester[] testers, int paddles, int weeks)
    {
        List<(int Week, int Paddle)> slots = [
            .. from week in Enumerable.Range(1, weeks) from paddle in Enumerable.Range(0, paddles) select (week, paddle)];
        return From(0, []);

        IEnumerable<List<PlannedTest>> From(int slot, List<PlannedTest> sofar)
        {
            if (slot == slots.Count)
            {
                yield return sofar;
                yield break;
            }

            (int week, int paddle) = slots[slot];
            foreach (List<PlannedTest> rest in From(slot + 1, sofar))
                yield return rest;
            for (int at = 0; at < testers.Length; at++)
            {
                Tester tester = testers[at];
                if (week > tester.LastWeek || !tester.Paddles.Contains(paddle)
                    || sofar.Exists(test => test.Week == week && test.Tester == at)
                    || sofar.Count(test => test.Tester == at) >= tester.WonAfter.Count - 1)
                    continue;
                foreach (List<PlannedTest> rest in From(slot + 1, [.. sofar, new(week, paddle, at)]))
                    yield return rest;
            }
        }
    }
}
