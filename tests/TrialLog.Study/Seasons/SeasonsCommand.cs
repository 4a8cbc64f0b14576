using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Study.Seasons.Methods;
using TrialLog.Tuning;

namespace TrialLog.Study.Seasons;

/// <summary><c>seasons</c>: simulated seasons in one world or all, every method side by side.</summary>
internal static class SeasonsCommand
{
    private const double WrongAbove = 0.3;
    private static readonly int[] Shown = [0, 1, 2, 3, 5, 8, 14];

    public static Command Create()
    {
        Option<string> world = new("--world") { Description = "One of " + string.Join(", ", World.All.Select(one => one.Name)) + ", or all.", DefaultValueFactory = _ => "all" };
        Option<int> paddlers = new("--paddlers") { Description = "Paddlers a world.", DefaultValueFactory = _ => 500 };
        Option<ulong> seed = new("--seed") { Description = "Seed of all chance.", DefaultValueFactory = _ => 1 };
        Option<int> threads = new("--threads") { Description = "Threads; the result is the same for any number.", DefaultValueFactory = _ => Environment.ProcessorCount };
        Option<bool> own = new("--own") { Description = "Only this model, without the other methods." };
        Option<double?> startSpread = new("--start-spread") { Description = "Spread of the best length around the start length, in." };
        Option<double?> curvature = new("--curvature") { Description = "Median curvature, percent per square inch." };
        Option<double?> outing = new("--outing-noise") { Description = "Spread between outings, percent." };
        Option<double?> piece = new("--piece-noise") { Description = "Spread between pieces, percent." };
        Option<double?> fade = new("--fade") { Description = "Change of speed from piece to piece, percent." };
        Option<double?> trend = new("--trend") { Description = "Change of speed per week, percent." };
        Option<double?> spoiled = new("--spoiled") { Description = "Share of spoiled pieces, 0 to 1." };
        Option<double?> effort = new("--effort-noise") { Description = "Spread of effort, CR10 points." };
        Option<string[]> setting = new("--setting") { Description = "A setting of the model, NAME=VALUE, by its name in TuningSettings; may be repeated.", AllowMultipleArgumentsPerToken = true };
        Option<int?> pieces = new("--pieces") { Description = "Pieces an outing, a multiple of four." };
        Command command = new("seasons", "Simulated seasons: mean true loss of speed (%) at the recommended length, every method side by side.")
        {
            world, paddlers, seed, threads, own, startSpread, curvature, outing, piece, fade, trend, spoiled, effort, pieces, setting,
        };
        command.SetAction(parsed =>
        {
            string name = parsed.GetValue(world)!;
            List<World> chosen = [.. World.All.Where(one => name == "all" || one.Name == name)];
            if (chosen.Count == 0)
            {
                Console.Error.WriteLine($"There is no world “{name}”; choose one of {string.Join(", ", World.All.Select(one => one.Name))}, or all.");
                return 2;
            }

            if (SettingOverrides.Read(parsed.GetValue(setting) ?? [], out string? problem) is not { } settings)
            {
                Console.Error.WriteLine(problem);
                return 2;
            }

            foreach (World one in chosen)
            {
                World tried = one with
                {
                    StartSpread = parsed.GetValue(startSpread) ?? one.StartSpread,
                    CurvatureMedian = parsed.GetValue(curvature) ?? one.CurvatureMedian,
                    OutingSpread = parsed.GetValue(outing) ?? one.OutingSpread,
                    PieceSpread = parsed.GetValue(piece) ?? one.PieceSpread,
                    FadePerPiece = parsed.GetValue(fade) ?? one.FadePerPiece,
                    TrendPerWeek = parsed.GetValue(trend) ?? one.TrendPerWeek,
                    SpoiledShare = parsed.GetValue(spoiled) ?? one.SpoiledShare,
                    EffortSpread = parsed.GetValue(effort) ?? one.EffortSpread,
                    Pieces = parsed.GetValue(pieces) ?? one.Pieces,
                };
                Report(tried, parsed.GetValue(paddlers), parsed.GetValue(seed), parsed.GetValue(threads), parsed.GetValue(own), settings);
            }

            return 0;
        });
        return command;
    }

    private static void Report(World world, int paddlers, ulong seed, int threads, bool own, TuningSettings settings)
    {
        Console.WriteLine($"### {world.Name}: {world.Says}");
        Console.WriteLine();
        Console.WriteLine("| method | " + string.Join(" | ", Shown) + " |");
        Console.WriteLine("|---|" + string.Concat(Enumerable.Repeat("---|", Shown.Length)));
        SeasonResult[] ours = [];
        foreach ((string name, Func<World, SimulatedPaddler, ISearchMethod> begin) in SearchMethods.With(settings))
        {
            if (own && name != SearchMethods.Own)
                continue;
            SeasonResult[] results = Timed(world, name, begin, paddlers, seed, threads);
            if (name == SearchMethods.Own)
                ours = results;
            Console.WriteLine($"| {name} | " + string.Join(" | ", Shown.Select(outings => Text(Estimate.Of([.. results.Select(one => one.Loss[outings])]), "0.000"))) + " |");
        }

        Console.WriteLine();
        Console.WriteLine(Rule(ours));
        Console.WriteLine(Ranges(ours));
        Console.WriteLine();
    }

    private static SeasonResult[] Timed(World world, string name, Func<World, SimulatedPaddler, ISearchMethod> begin, int paddlers, ulong seed, int threads)
    {
        Stopwatch watch = Stopwatch.StartNew();
        long shown = -1000;
        SeasonResult[] results = SeasonRunner.Run(world, begin, paddlers, seed, threads, done =>
        {
            long now = watch.ElapsedMilliseconds;
            long last = Interlocked.Read(ref shown);
            if (now - last >= 1000 && Interlocked.CompareExchange(ref shown, now, last) == last)
                Console.Error.Write($"\r{world.Name}: {name}: {done} of {paddlers} paddlers   ");
        });
        Console.Error.WriteLine($"\r{world.Name}: {name}: {paddlers} paddlers in {watch.Elapsed.TotalSeconds:0.0} s          ");
        return results;
    }

    private static string Rule(SeasonResult[] results)
    {
        List<SeasonResult> stopped = [.. results.Where(one => one.StoppedAfter is not null)];
        List<int> after = [.. results.Select(one => one.StoppedAfter ?? int.MaxValue).Order()];
        return $"Diminishing returns: said in {100.0 * stopped.Count / results.Length:0} % of seasons, "
            + $"after a median of {Outings(after[after.Count / 2])} outings (80 %: {Outings(after[after.Count / 10])} to {Outings(after[after.Count * 9 / 10])}); "
            + (stopped.Count == 0
                ? "wrong stops: none, since it never stopped."
                : $"wrong stops (true loss above {WrongAbove} %): {Text(Estimate.Of([.. stopped.Select(one => one.LossAtStop > WrongAbove ? 100.0 : 0)]), "0.0")} % of them.");
    }

    private static string Ranges(SeasonResult[] results) =>
        "90 % ranges held the true best length: " + string.Join(", ", Shown.Where(outings => outings > 0).Select(outings =>
            $"{Text(Estimate.Of([.. results.Select(one => one.Covered![outings] ? 100.0 : 0)]), "0.0")} % after {outings}"))
        + $"; {Text(Estimate.Of([.. results.Select(one => one.Covered!.Skip(1).Average(held => held ? 100.0 : 0))]), "0.0")} % over all outings.";

    private static string Outings(int after) => after == int.MaxValue ? $"more than {SimulatedPaddler.Outings}" : after.ToString(CultureInfo.InvariantCulture);

    private static string Text(Estimate estimate, string digits) => double.IsNaN(estimate.Mean) ? "none" : $"{estimate.Mean.ToString(digits, CultureInfo.InvariantCulture)} ± {estimate.Error.ToString(digits, CultureInfo.InvariantCulture)}";
}
