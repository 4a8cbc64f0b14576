using System.CommandLine;
using System.Globalization;
using TrialLog.Study.Seasons;

namespace TrialLog.Study.Squads;

/// <summary><c>squad-weeks</c>: what a squad gains when few paddles are lent by the plan, and when by turns.</summary>
internal static class SquadWeeksCommand
{
    public static Command Create()
    {
        Option<int> squads = new("--squads") { Description = "Squads.", DefaultValueFactory = _ => 40 };
        Option<int> paddlers = new("--paddlers") { Description = "Paddlers a squad.", DefaultValueFactory = _ => 12 };
        Option<int> paddles = new("--paddles") { Description = "Paddles to lend, each once a week.", DefaultValueFactory = _ => 2 };
        Option<int> weeks = new("--weeks") { Description = "Weeks.", DefaultValueFactory = _ => 8 };
        Option<ulong> seed = new("--seed") { Description = "Seed of all chance.", DefaultValueFactory = _ => 1 };
        Option<int> threads = new("--threads")
        {
            Description = "Threads; the result is the same for any number.",
            DefaultValueFactory = _ => Environment.ProcessorCount
        };
        Command command = new(
            "squad-weeks", "Mean true loss of speed (%) of a squad by week, paddles lent by the plan and by turns.") { squads, paddlers,
            paddles, weeks, seed, threads };
        command.SetAction(parsed =>
        {
            int count = parsed.GetValue(squads), last = parsed.GetValue(weeks);
            Console.WriteLine(
                "| lent | " + string.Join(" | ", Enumerable.Range(0, last + 1).Select(week => week == 0 ? "before" : $"week {week}"))
                + " | gained |");
            Console.WriteLine("|---|" + string.Concat(Enumerable.Repeat("---|", last + 2)));
            Dictionary<Lending, double[][]> all = [];
            foreach (Lending lending in Enum.GetValues<Lending>())
            {
                double[][] loss = new double[count][];
                Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = parsed.GetValue(threads) },
                    number =>
                        loss[number] = SquadSeason.Run(
                        lending, parsed.GetValue(seed), number, parsed.GetValue(paddlers), parsed.GetValue(paddles), last));
                all[lending] = loss;
                string name = lending switch
                {
                    Lending.Planned => "by the plan",
                    Lending.Turns => "by turns",
                    _ => "by turns, who is done left out"
                };
                Console.WriteLine(
                    $"| {name} | "
                    + string.Join(" | ", Enumerable.Range(0, last + 1).Select(week => Text(loss.Average(squad => squad[week]))))
                    + $" | {Estimated([.. loss.Select(squad => squad[0] - squad[last])])} |");
            }

            Console.WriteLine();
            foreach (Lending other in new[] { Lending.Turns, Lending.TurnsOfTheUnfinished })
                Console.WriteLine(
                    $"The plan gains " +
                        $"{Estimated([.. all[Lending.Planned].Zip(all[other], (planned, turns) => turns[last] - planned[last])])} more " +
                        $"than {(other == Lending.Turns ? "turns" : "turns of those not done")}.");
        });
        return command;
    }

    private static string Text(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);

    private static string Estimated(double[] values)
    {
        Estimate estimate = Estimate.Of(values);
        return $"{Text(estimate.Mean)} ± {Text(estimate.Error)}";
    }
}
