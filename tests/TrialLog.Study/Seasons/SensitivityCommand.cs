using System.CommandLine;
using System.Globalization;
using TrialLog.Recordings.Csv;
using TrialLog.Study.Seasons.Methods;
using TrialLog.Tuning;

namespace TrialLog.Study.Seasons;

/// <summary>
/// <c>sensitivity</c>: what happens if a chosen constant of the model is wrong. Each that can matter in that world is halved and doubled
/// in turn (or set as told), the same simulated paddlers search again, and what they lose by it is told.
/// </summary>
internal static class SensitivityCommand
{
    private const int LossAfter = 5;
    private const double WrongAbove = 0.3;

    /// <summary>Constants that are halved and doubled in turn.</summary>
    private static readonly string[] HalvedAndDoubled =
    [
        "StartOutlierShare", "StartOutlierFactor", "CurvatureMedian", "CurvatureLogSpread", "FlatShare", "FlatFactor", "SkewSpread",
        "SkewLimit",
        "OutingMedian", "PieceMedian", "PieceLogSpread", "OrderSpread", "TrendSpread", "DistanceErrorMetres", "StepLimitInches",
        "StopBelow",
        "WorthwhilePercent", "PricePercent", "PriceMinutes",
    ];

    /// <summary>The same in worlds where effort strays or leans.</summary>
    private static readonly string[] OfEffort =
    [
        "UntoldEffortMedian", "UntoldEffortLogSpread", "LeanShare", "LeanSpread", "HeartRateMedian", "HeartRatePerPointMean",
        "HeartRatePerPointSpread", "HeartRateDriftSpread", "HeartRateBendSpread", "HeartRatePerInchSpread",
    ];

    /// <summary>The same in worlds of several hulls and durations.</summary>
    private static readonly string[] OfCarrying = ["DurationSpreadInches", "HullSpreadInches"];

    /// <summary>Constant, and the values tried in its place: those that can matter in such a world.</summary>
    private static IEnumerable<(string Name, double[] Values)> Tried(World world) =>
        world.DurationSpread > 0 ? OfCarrying.Select(HalfAndTwice)
        : !world.EffortIsTold ? OfEffort.Select(HalfAndTwice)
        : [
            ("StartSpreadInches", [0.4, 1.6]), ("DegreesOfFreedom", [3, double.PositiveInfinity]), ("OrderMean", [0, -0.6]),
            .. HalvedAndDoubled.Select(HalfAndTwice),
        ];

    private static (string Name, double[] Values) HalfAndTwice(string name)
    {
        double chosen = (double)typeof(TuningSettings).GetProperty(name)!.GetValue(TuningSettings.Default)!;
        return (name, [chosen / 2, chosen * 2]);
    }

    public static Command Create()
    {
        Option<string> world = new("--world")
        {
            Description = "One of " + string.Join(", ", World.All.Select(one => one.Name)) + ".",
            DefaultValueFactory = _ => "main"
        };
        Option<int> paddlers = new("--paddlers") { Description = "Paddlers for each value.", DefaultValueFactory = _ => 100 };
        Option<ulong> seed = new("--seed") { Description = "Seed of all chance.", DefaultValueFactory = _ => 1 };
        Option<int> threads = new("--threads")
        {
            Description = "Threads; the result is the same for any number.",
            DefaultValueFactory = _ => Environment.ProcessorCount
        };
        Command command = new(
            "sensitivity", "What happens if a chosen constant of the model is wrong: the same simulated paddlers, one constant changed.")
        {
            world, paddlers, seed, threads,
        };
        command.SetAction(parsed =>
        {
            if (World.All.FirstOrDefault(one => one.Name == parsed.GetValue(world)) is not { } chosen)
            {
                Console.Error.WriteLine(
                    $"There is no world “{parsed.GetValue(world)}”; choose one of {string.Join(", ", World.All.Select(one => one.Name))}.");
                return 2;
            }

            Report(chosen, parsed.GetValue(paddlers), parsed.GetValue(seed), parsed.GetValue(threads));
            return 0;
        });
        return command;
    }

    private static void Report(World world, int paddlers, ulong seed, int threads)
    {
        bool carries = world.DurationSpread > 0;
        Console.WriteLine($"World {world.Name}: {world.Says}. {paddlers} paddlers, seed {seed}; ± is the Monte Carlo error.");
        Console.WriteLine();
        Console.WriteLine($"| constant | value | loss after {LossAfter} outings, % | change, the same paddlers | ranges held, % | stop " +
            $"after | wrong stops, % |{(carries ? " carried to another hull held, % | to an hour, % |" : "")}");
        Console.WriteLine($"|---|---|---|---|---|---|---|{(carries ? "---|---|" : "")}");
        SeasonResult[] usual = Run(TuningSettings.Default);
        Row("all as chosen", "", usual);
        foreach ((string name, double[] values) in Tried(world))
            foreach (double value in values)
            {
                string text = value.ToString("R", CultureInfo.InvariantCulture);
                TuningSettings settings = SettingOverrides.Read([$"{name}={text}"], out string? problem)
                    ?? throw new InvalidOperationException(problem);
                Row(name, double.IsInfinity(value) ? "∞ (normal)" : text, Run(settings));
            }

        SeasonResult[] Run(TuningSettings settings) =>
            SeasonRunner.Run(world, (tried, _) => new ThisModel(tried, settings), 0, paddlers, seed, threads, _ => { });

        static double More(SeasonResult now, SeasonResult then) => now.Loss[LossAfter] - then.Loss[LossAfter];

        void Row(string name, string value, SeasonResult[] results)
        {
            List<SeasonResult> stopped = [.. results.Where(one => one.StoppedAfter is not null)];
            List<int> after = [.. results.Select(one => one.StoppedAfter ?? int.MaxValue).Order()];
            int median = after[after.Count / 2];
            Console.WriteLine($"| {name} | {value} | {Text(results.Select(one => one.Loss[LossAfter]), "0.000")} "
                + $"| {(ReferenceEquals(results, usual) ? "" : Text(results.Zip(usual, More), "0.000"))} "
                + $"| {Text(results.Select(one => one.Covered!.Skip(1).Average(held => held ? 100.0 : 0)), "0.0")} "
                + $"| {(median == int.MaxValue ? $"more than {SimulatedPaddler.Outings}" : median)} "
                + $"| {(stopped.Count == 0 ? "no stop" : Text(stopped.Select(one => one.LossAtStop > WrongAbove ? 100.0 : 0), "0.0"))} |"
                + (carries ? $" {Held(one => one.OtherHullHeld)} | {Held(one => one.GoalHeld)} |" : ""));

            string Held(Func<SeasonResult, IReadOnlyDictionary<int, bool>> carried) =>
                Text(results.Select(one => carried(one).Values.Average(static held => held ? 100.0 : 0)), "0.0");
        }
    }

    private static string Text(IEnumerable<double> values, string digits)
    {
        Estimate estimate = Estimate.Of([.. values]);
        return $"{estimate.Mean.ToString(digits, CultureInfo.InvariantCulture)} ± " +
            $"{estimate.Error.ToString(digits, CultureInfo.InvariantCulture)}";
    }
}
