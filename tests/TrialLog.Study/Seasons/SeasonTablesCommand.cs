using System.CommandLine;
using System.Globalization;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Study.Seasons.Methods;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Study.Seasons;

/// <summary><c>season-tables</c>: the tables of docs/study.md from the rows that <c>seasons --rows</c> has written.</summary>
internal static class SeasonTablesCommand
{
    private const int Fewest = 50;

    /// <summary>The world whose claims nothing in the log can make true, left out of the worst bins.</summary>
    private const string NothingShowsIt = "lean";

    private static readonly int[] LossAfter = [1, 2, 3, 5, 14], HeldAfter = [1, 2, 3, 5, 8, 14];

    public static Command Create()
    {
        Argument<string[]> files = new("files") { Description = "Files of rows.", Arity = ArgumentArity.OneOrMore };
        Command command = new("season-tables", "The tables of docs/evidence.md, from the rows that seasons --rows has written.") { files };
        command.SetAction(parsed =>
        {
            IReadOnlyList<(World World, SeasonResult[] Results)> worlds = SeasonRows.Read(parsed.GetValue(files)!);
            Worlds(worlds);
            foreach ((World world, SeasonResult[] results) in worlds)
                if (results[0].OtherHullHeld.Count + results[0].GoalHeld.Count > 0)
                    Console.WriteLine($"`{world.Name}`: {SeasonsCommand.Carried(results)}");
            Reliability(worlds, "chance of a worthwhile gain", SeasonsCommand.ChanceBins, static claim => claim.WorthwhileLeft,
                static (one, outings) => one.Loss[outings] > SeasonsCommand.WrongAbove, static over => over is < -0.05 or > 0.08,
                "less is said to be left than is by more than 5 points, or more by over 8,");
            Reliability(worlds, "within a quarter inch", SeasonsCommand.NearBins, static claim => claim.WithinQuarterInch,
                static (one, outings) => one.Near[outings], static over => Math.Abs(over) > 0.08, "off by more than 8 points");
            return 0;
        });
        return command;
    }

    private static void Worlds(IReadOnlyList<(World World, SeasonResult[] Results)> worlds)
    {
        Console.WriteLine(
            "| world | paddlers | loss after 1, 2, 3, 5, 14 outings, % | within ¼ in after 5, % | ranges held after 1, 2, 3, 5, 8, 14, % " +
            "| wrong stops, % (wrong of settled, of flat) | median outings to stop | forecasts held after 1, 2, 3, 5, 8, % |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|");
        foreach ((World world, SeasonResult[] results) in worlds)
        {
            SeasonResult[] stopped = [.. results.Where(static one => one.StoppedAfter is not null)];
            int[] stops = [.. results.Select(static one => one.StoppedAfter ?? int.MaxValue).Order()];
            string wrong = stopped.Length == 0 ? "no stop"
                : $"{Percent([.. stopped.Select(static one => Wrong(one))])} ({Wrongly(Standing.Settled)}, {Wrongly(Standing.Flat)})";
            Console.WriteLine(
                $"| {world.Name} | {results.Length} | {Each(LossAfter, outings => results.Average(one => one.Loss[outings]), "0.000")} "
                + $"| {Percent([.. results.Select(static one => one.Near[5])])} "
                + $"| {Each(HeldAfter, outings => 100 * results.Average(one => one.Covered![outings] ? 1.0 : 0), "0")} "
                + $"| {wrong} | {SeasonsCommand.Outings(stops[stops.Length / 2])} "
                + $"| {string.Join(", ", SeasonsCommand.ForecastAfter.Select(outings => Share(SeasonsCommand.Held(results, outings))))} |");

            string Wrongly(Standing standing) => $"{stopped.Count(one => one.StoppedAs == standing && Wrong(one))} of "
                + $"{stopped.Count(one => one.StoppedAs == standing)}";
        }

        Console.WriteLine();

        static bool Wrong(SeasonResult one) => one.LossAtStop > SeasonsCommand.WrongAbove;
        static string Each(int[] after, Func<int, double> of, string digits) =>
            string.Join(" ", after.Select(outings => of(outings).ToString(digits, CultureInfo.InvariantCulture)));
        static string Share(List<bool> held) => held.Count == 0 ? "–"
            : (held.Count < Fewest ? "({0})" : "{0}")
                .Replace("{0}", $"{100 * held.Average(one => one ? 1.0 : 0):0}", StringComparison.Ordinal);
    }

    /// <summary>All worlds together, each counting alike, then how many bins of single worlds are off by more than they may be.</summary>
    private static void Reliability(IReadOnlyList<(World World, SeasonResult[] Results)> worlds, string what, double[] bins,
        Func<Claims, double> claim, Func<SeasonResult, int, bool> truth, Func<double, bool> off, string offBy)
    {
        Console.WriteLine();
        Console.WriteLine($"| {what}: claimed between | answers | claimed on average | true |");
        Console.WriteLine("|---|---|---|---|");
        List<(string World, double Claimed, double True)> bad = [];
        int checkedBins = 0;
        for (int k = 0; k + 1 < bins.Length; k++)
        {
            double weight = 0, claimed = 0, right = 0;
            int answers = 0;
            foreach ((World world, SeasonResult[] results) in worlds)
            {
                (double Claimed, bool True)[] here =
                [
                    .. results.SelectMany(one => Enumerable.Range(1, SimulatedPaddler.Outings)
                        .Select(outings => (claim(one.Claims[outings]), truth(one, outings))))
                        .Where(said => said.Item1 >= bins[k] && said.Item1 < bins[k + 1]),
                ];
                if (here.Length == 0)
                    continue;
                (double said, double true_) = (here.Average(one => one.Claimed), here.Average(one => one.True ? 1.0 : 0));
                answers += here.Length;
                double counts = here.Length / (double)results.Length;
                (weight, claimed, right) = (weight + counts, claimed + counts * said, right + counts * true_);
                if (here.Length < Fewest || world.Name == NothingShowsIt)
                    continue;
                checkedBins++;
                if (off(said - true_))
                    bad.Add((world.Name, said, true_));
            }

            if (answers > 0)
                Console.WriteLine(
                    string.Create(CultureInfo.InvariantCulture, $"| {100 * bins[k]:0} and {Math.Min(100, 100 * bins[k + 1]):0} % "
                    + $"| {answers} | {100 * claimed / weight:0.0} % | {100 * right / weight:0.0} % |"));
        }

        Console.WriteLine();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"One world at a time, where {Fewest} answers or more fall into a bin, without `{NothingShowsIt}`: {offBy} in {bad.Count} of "
            + $"{checkedBins} bins{(bad.Count == 0 ? "" : ", the worst ")}")
            + string.Join("; ", bad.OrderByDescending(one => Math.Abs(one.Claimed - one.True)).Take(6).Select(one => string.Create(
                CultureInfo.InvariantCulture, $"`{one.World}` {100 * one.Claimed:0.0} % claimed, {100 * one.True:0.0} % true"))) + ".");
    }

    private static string Percent(bool[] values)
    {
        Estimate estimate = Estimate.Of([.. values.Select(static value => value ? 100.0 : 0)]);
        return string.Create(CultureInfo.InvariantCulture, $"{estimate.Mean:0.0} ± {estimate.Error:0.0}");
    }
}
