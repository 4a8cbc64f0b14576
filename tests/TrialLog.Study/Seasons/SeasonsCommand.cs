using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Bodies;
using TrialLog.Study.Seasons.Methods;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Study.Seasons;

/// <summary><c>seasons</c>: simulated seasons in one world or all, every method side by side.</summary>
internal static class SeasonsCommand
{
    internal const double WrongAbove = 0.3;
    private static readonly int[] Shown = [0, 1, 2, 3, 5, 8, 14];
    internal static readonly double[] ChanceBins = [0, 0.02, 0.05, 0.1, 0.2, 0.35, 0.6, 1.001],
        NearBins = [0, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 1.001];
    internal static readonly int[] ForecastAfter = [1, 2, 3, 5, 8];

    public static Command Create()
    {
        Option<string> world = new(
            "--world")
        {
            Description = "One or several (with commas) of " + string.Join(", ", World.All.Select(one => one.Name))
            + ", or all.", DefaultValueFactory = _ => "all"
        };
        Option<int> paddlers = new("--paddlers") { Description = "Paddlers a world.", DefaultValueFactory = _ => 500 };
        Option<ulong> seed = new("--seed") { Description = "Seed of all chance.", DefaultValueFactory = _ => 1 };
        Option<int> threads = new("--threads")
        {
            Description = "Threads; the result is the same for any number.",
            DefaultValueFactory = _ => Environment.ProcessorCount
        };
        Option<bool> own = new("--own") { Description = "Only this model, without the other methods." };
        Option<double?> startSpread = new("--start-spread") { Description = "Spread of the best length around the start length, in." };
        Option<double?> curvature = new("--curvature") { Description = "Median curvature, percent per square inch." };
        Option<double?> outing = new("--outing-noise") { Description = "Spread between outings, percent." };
        Option<double?> piece = new("--piece-noise") { Description = "Spread between pieces, percent." };
        Option<double?> fade = new("--fade") { Description = "Change of speed from piece to piece, percent." };
        Option<double?> trend = new("--trend") { Description = "Change of speed per week, percent." };
        Option<double?> spoiled = new("--spoiled") { Description = "Share of spoiled pieces, 0 to 1." };
        Option<double?> effort = new("--effort-noise") { Description = "Spread of effort, CR10 points." };
        Option<string[]> setting = new(
            "--setting")
        {
            Description = "A setting of the model, NAME=VALUE, by its name in TuningSettings; may be repeated.",
            AllowMultipleArgumentsPerToken = true
        };
        Option<int?> pieces = new(
            "--pieces")
        { Description = "Pieces an outing as told to the tool, an even number from 4 to 16; without it the tool chooses." };
        Option<string?> rows = new("--rows")
        {
            Description = "Also add what was said and what was true to this file, one row a paddler and outing; see season-tables. " +
                "Only with "
                + "--brief.",
        };
        Option<int> first = new("--first") { Description = "Number of the first paddler.", DefaultValueFactory = _ => 0 };
        Option<bool> brief = new(
            "--brief")
        { Description = "One row a world for the tool's own figures, without reliability and forecasts." };
        Command command = new(
            "seasons", "Simulated seasons: mean true loss of speed (%) at the recommended length, every method side by side.")
        {
            world, paddlers, seed, threads, own, startSpread, curvature, outing, piece, fade, trend, spoiled, effort, pieces,
                setting, brief, rows, first,
        };
        command.SetAction(parsed =>
        {
            string name = parsed.GetValue(world)!;
            string[] names = name.Split(',', StringSplitOptions.TrimEntries);
            List<World> chosen = [.. World.All.Where(one => name == "all" || names.Contains(one.Name))];
            if (chosen.Count < names.Length && name != "all")
            {
                Console.Error.WriteLine(
                    $"There is no world “{name}”; choose one of {string.Join(", ", World.All.Select(one => one.Name))}, or all.");
                return 2;
            }

            if (SettingOverrides.Read(parsed.GetValue(setting) ?? [], out string? problem) is not { } settings)
            {
                Console.Error.WriteLine(problem);
                return 2;
            }

            if (parsed.GetValue(brief))
                Console.WriteLine(
                    "| world | loss after 1, 2, 3, 5, 8, 14 outings, % | within ¼ in after 5, % | ranges held after 1, 2, 3, 5, 8, 14, % " +
                    "| wrong stops, % | settled, flat, % | outings to stop | forecasts held after 1, 2, 3, 5, 8, % " +
                    "|\n|---|---|---|---|---|---|---|---|");
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
                    PiecesTold = parsed.GetValue(pieces) ?? one.PiecesTold,
                };
                if (parsed.GetValue(brief))
                {
                    SeasonResult[] results = Timed(tried, SearchMethods.Own, (world, _) => new ThisModel(world, settings),
                        parsed.GetValue(paddlers), parsed.GetValue(seed), parsed.GetValue(threads), parsed.GetValue(first));
                    Brief(tried, results);
                    if (parsed.GetValue(rows) is { } file)
                        SeasonRows.Append(file, tried, parsed.GetValue(seed), parsed.GetValue(first), results);
                }
                else
                    Report(tried, parsed.GetValue(paddlers), parsed.GetValue(seed), parsed.GetValue(threads),
                        parsed.GetValue(own), settings);
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
            Console.WriteLine(
                $"| {name} | " + string.Join(
                " | ", Shown.Select(outings => Text(Estimate.Of([.. results.Select(one => one.Loss[outings])]), "0.000"))) + " |");
        }

        Console.WriteLine();
        Console.WriteLine(Rule(ours));
        Console.WriteLine(Ranges(ours));
        Console.WriteLine(Carried(ours));
        Console.WriteLine(Forecasts(ours));
        Reliability("chance of a worthwhile gain", ChanceBins, ours, claim => claim.WorthwhileLeft,
            (one, outings) => one.Loss[outings] > WrongAbove);
        Reliability("within a quarter inch", NearBins, ours, claim => claim.WithinQuarterInch, (one, outings) => one.Near[outings]);
        Console.WriteLine($"Gain left, said and true, %: " + string.Join(", ", Shown.Where(outings => outings > 0).Select(outings =>
            $"{ours.Average(one => one.Claims[outings].GainLeftPercent).ToString("0.000", CultureInfo.InvariantCulture)} and " +
                $"{ours.Average(one => one.Loss[outings]).ToString("0.000", CultureInfo.InvariantCulture)} after {outings}")) + ".");
        Console.WriteLine();
    }

    private static void Brief(World world, SeasonResult[] results)
    {
        int[] after = [1, 2, 3, 5, 8, 14];
        SeasonResult[] stopped = [.. results.Where(one => one.StoppedAfter is not null)];
        int[] stops = [.. results.Select(one => one.StoppedAfter ?? int.MaxValue).Order()];
        Console.WriteLine(
            $"| {world.Name} | {string.Join(" ", after.Select(outings => Number(results.Average(one => one.Loss[outings]), "0.000")))} "
            + $"| {Number(results.Average(one => one.Near[5] ? 100.0 : 0), "0")} "
            + $"| {string.Join(" ", after.Select(outings => Number(results.Average(one => one.Covered![outings] ? 100.0 : 0), "0.0")))} "
            + $"| {(stopped.Length == 0 ? "no stop" : Number(stopped.Average(one => one.LossAtStop > WrongAbove ? 100.0 : 0), "0.0"))} "
            + $"| {Number(results.Average(one => one.StoppedAs == Standing.Settled ? 100.0 : 0), "0")}, "
            + $"{Number(results.Average(one => one.StoppedAs == Standing.Flat ? 100.0 : 0), "0")} "
            + $"| {Outings(stops[stops.Length / 2])} "
            + $"| {string.Join(" ", ForecastAfter.Select(outings => Share(Held(results, outings))))} |");

        static string Share(List<bool> held) =>
            held.Count == 0 ? "–" : $"{Number(held.Average(one => one ? 100.0 : 0), "0")} ({held.Count})";

        static string Number(double value, string digits) => value.ToString(digits, CultureInfo.InvariantCulture);
    }

    /// <summary>
    /// For each who was told to go on: whether as many outings followed as the range said. Who never stopped within the season counts as
    /// held if the range reaches beyond it.
    /// </summary>
    internal static List<bool> Held(SeasonResult[] results, int outings)
    {
        List<bool> held = [];
        foreach (SeasonResult one in results)
        {
            Claims said = one.Claims[outings];
            if (said.Stop || said.ToGo.Median == 0)
                continue;
            int? next = Enumerable.Range(outings + 1, SimulatedPaddler.Outings - outings).Where(later => one.Claims[later].Stop)
                .Select(static later => (int?)later).FirstOrDefault();
            held.Add(next is { } stop ? stop - outings >= said.ToGo.Low
                && stop - outings <= said.ToGo.High : said.ToGo.High > SimulatedPaddler.Outings - outings);
        }

        return held;
    }

    private static string Forecasts(SeasonResult[] results) =>
        "The forecast's 80 % range held: " + string.Join(", ", ForecastAfter.Select(outings =>
    {
        List<bool> held = Held(results, outings);
        return held.Count == 0 ? $"nobody to go on after {outings}"
            : $"{Text(Estimate.Of([.. held.Select(one => one ? 100.0 : 0)]), "0")} % after {outings} ({held.Count} going on, median said " +
                $"{Said(outings).Order().ElementAt(held.Count / 2)})";

        IEnumerable<int> Said(int outings) =>
            results.Where(one => !one.Claims[outings].Stop).Select(one => one.Claims[outings].ToGo.Median);
    })) + ".";

    internal static string Carried(SeasonResult[] results)
    {
        string Of(string where, Func<SeasonResult, IReadOnlyDictionary<int, bool>> held) =>
            results[0] is { } first && held(first).Count == 0 ? "" :
            $"Ranges carried {where} held: "
                + string.Join(
                ", ", held(results[0]).Keys.Order()
                .Select(
                outings => $"{Text(Estimate.Of([.. results.Select(one => held(one)[outings] ? 100.0 : 0)]), "0.0")} % after {outings}"))
                + ". ";
        return Of("to another hull", static one => one.OtherHullHeld) + Of("to a goal of an hour", static one => one.GoalHeld);
    }

    private static void Reliability(
        string what, double[] bins, SeasonResult[] results, Func<Claims, double> claim, Func<SeasonResult, int, bool> truth)
    {
        Console.WriteLine();
        Console.WriteLine($"| {what}: claimed between | answers | claimed on average | true |");
        Console.WriteLine("|---|---|---|---|");
        List<(double Claimed, bool True)> all = [
            .. results.SelectMany(
            one => Enumerable.Range(1, SimulatedPaddler.Outings).Select(outings => (claim(one.Claims[outings]), truth(one, outings))))];
        for (int k = 0; k + 1 < bins.Length; k++)
        {
            List<(double Claimed, bool True)> here = [.. all.Where(one => one.Claimed >= bins[k] && one.Claimed < bins[k + 1])];
            if (here.Count > 0)
                Console.WriteLine(
                    string.Create(CultureInfo.InvariantCulture,
                    $"| {100 * bins[k]:0} and {Math.Min(100, 100 * bins[k + 1]):0} % | {here.Count} | " +
                    $"{100 * here.Average(one => one.Claimed):0.0} % | {100 * here.Average(one => one.True ? 1.0 : 0):0.0} % |"));
        }

        Console.WriteLine();
    }

    private static SeasonResult[] Timed(
        World world, string name, Func<World, SimulatedPaddler, ISearchMethod> begin, int paddlers, ulong seed, int threads,
        int first = 0)
    {
        Stopwatch watch = Stopwatch.StartNew();
        long shown = -1000;
        SeasonResult[] results = SeasonRunner.Run(world, begin, first, paddlers, seed, threads, done =>
        {
            if (Console.IsErrorRedirected)
                return;
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
        return $"Time to stop: said in {100.0 * stopped.Count / results.Length:0} % of seasons, "
            + $"after a median of {Outings(after[after.Count / 2])} outings (80 %: {Outings(after[after.Count / 10])} to "
            + $"{Outings(after[after.Count * 9 / 10])}); "
            + (stopped.Count == 0
                ? "wrong stops: none, since it never stopped."
                : $"wrong stops (true loss above {WrongAbove} %): " +
                    $"{Text(Estimate.Of([.. stopped.Select(one => one.LossAtStop > WrongAbove ? 100.0 : 0)]), "0.0")} % of them"
                    + $" (settled {stopped.Count(one => one.StoppedAs == Standing.Settled && one.LossAtStop > WrongAbove)} of "
                    + $"{stopped.Count(one => one.StoppedAs == Standing.Settled)}, flat "
                    + $"{stopped.Count(one => one.StoppedAs == Standing.Flat && one.LossAtStop > WrongAbove)} of "
                    + $"{stopped.Count(one => one.StoppedAs == Standing.Flat)}).");
    }

    private static string Ranges(SeasonResult[] results) =>
        "90 % ranges held the true best length: " + string.Join(", ", Shown.Where(outings => outings > 0).Select(outings =>
            $"{Text(Estimate.Of([.. results.Select(one => one.Covered![outings] ? 100.0 : 0)]), "0.0")} % after {outings}"))
        + $"; {Text(Estimate.Of([.. results.Select(one => one.Covered!.Skip(1).Average(held => held ? 100.0 : 0))]), "0.0")} "
        + $"% over all outings.";

    internal static string Outings(int after) =>
        after == int.MaxValue ? $"more than {SimulatedPaddler.Outings}" : after.ToString(CultureInfo.InvariantCulture);

    private static string Text(Estimate estimate, string digits) =>
        double.IsNaN(estimate.Mean) ? "none" : $"{estimate.Mean.ToString(digits, CultureInfo.InvariantCulture)} ± " +
        $"{estimate.Error.ToString(digits, CultureInfo.InvariantCulture)}";
}
