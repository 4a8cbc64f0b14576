using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using TrialLog.Domain.Values;
using TrialLog.TestData.Fuzzing;

namespace TrialLog.Study.Fuzzing;

/// <summary>
/// <c>fuzz</c>: gives every reader nearly right inputs; each must be taken or refused in a sentence, within five seconds of the
/// processor and half a gigabyte.
/// </summary>
internal static class FuzzCommand
{
    private const double MostSeconds = 5;
    private const long MostBytes = 500_000_000;

    public static Command Create()
    {
        Option<double> minutes = new("--minutes") { Description = "How long in all.", DefaultValueFactory = _ => 10 };
        Option<int> seed = new("--seed") { Description = "The first seed.", DefaultValueFactory = _ => 1 };
        Option<string[]> only = new("--only")
        {
            Description = "Only these: text, csv, record, recording, command, logbook.", AllowMultipleArgumentsPerToken = true,
        };
        Option<string> samples = new("--samples") { Description = "The sample sessions.", DefaultValueFactory = _ => "sample-sessions" };
        Command command = new("fuzz", "Gives every reader nearly right inputs and counts what became of them.")
        {
            minutes, seed, only, samples,
        };
        command.SetAction(parsed => Run(
            parsed.GetValue(samples)!, TimeSpan.FromMinutes(parsed.GetValue(minutes)), parsed.GetValue(seed), parsed.GetValue(only) ?? []));
        return command;
    }

    // Of the processor: on a machine that is busy with much else the clock tells nothing.
    private static double SecondsWorked => Environment.CpuUsage.TotalTime.TotalSeconds;

    private static int Run(string samples, TimeSpan time, int firstSeed, string[] only)
    {
        using var inputs = new OddInputs(samples);
        List<string> names = [.. inputs.Readers.Keys.Where(name => only.Length == 0 || only.Contains(name))];
        using Process self = Process.GetCurrentProcess();
        Console.WriteLine("| reader | inputs | a second | taken | refused | slowest | failed |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
        long all = 0;
        int failedInAll = 0;
        foreach (string name in names)
        {
            (int done, int taken, int failed, double slowest) = (0, 0, 0, 0);
            var clock = Stopwatch.StartNew();
            for (int seed = firstSeed; clock.Elapsed < time / names.Count; seed++, done++)
            {
                double before = SecondsWorked;
                OddResult result = inputs.Readers[name](seed);
                double took = SecondsWorked - before;
                slowest = Math.Max(slowest, took);
                taken += result.WasTaken ? 1 : 0;
                if (result.Failure is null && took <= MostSeconds)
                    continue;
                if (failed++ < 10)
                    Console.Error.WriteLine($"{name}, seed {seed}: {result.Failure ?? $"took {took:0.0} s: "
                        + (name == "command" ? string.Join(' ', OddInputs.CommandOf(seed).Select(word => $"[{word}]")) : "")}");
            }

            all += done;
            failedInAll += failed;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {name} | {done:N0} | {done / clock.Elapsed.TotalSeconds:N0} | {taken:N0} "
                + $"| {done - taken - failed:N0} | {slowest:0.00} s | {failed} |"));
        }

        self.Refresh();
        Console.WriteLine();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{all:N0} inputs from seed {firstSeed}, {failedInAll} failed; most memory {self.PeakWorkingSet64 / 1e6:0} MB."));
        return failedInAll == 0 && self.PeakWorkingSet64 < MostBytes ? 0 : 1;
    }
}
