using System.CommandLine;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Reports.Coach;
using TrialLog.Screens;

namespace TrialLog.Study.Screens;

/// <summary><c>screens-speed</c>: how fast the first screen is there, and how fast a key is answered.</summary>
internal static class ScreensSpeedCommand
{
    public static Command Create()
    {
        Option<string?> program = new("--program") { Description = "The program to start; else the release build in src/TrialLog." };
        Option<int> runs = new("--runs") { Description = "How often it is started.", DefaultValueFactory = _ => 9 };
        Command command = new("screens-speed",
            "Time to the first screen on a logbook of 60 outings, and to answer a key on 60 and on 10,000.") { program, runs };
        command.SetAction(parsed =>
        {
            string folder = Directory.CreateTempSubdirectory("triallog-speed-").FullName;
            try
            {
                Console.WriteLine($"load average before: {Load()}");
                FirstScreen(parsed.GetValue(program) ?? Built, folder, parsed.GetValue(runs));
                Keys(folder, 60);
                Keys(folder, 10_000);
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        });
        return command;
    }

    private static void FirstScreen(string program, string folder, int runs)
    {
        string logbook = Path.Combine(folder, "sixty.db");
        InventedLog.Write(logbook, 60);
        if (!File.Exists(program))
        {
            Console.WriteLine($"First screen: not measured; there is no {program}. Build it: dotnet build -c Release src/TrialLog");
            return;
        }

        List<StartUp> starts = StartUp.Measure(program, logbook, runs);
        if (starts.Count == 0)
        {
            Console.WriteLine("First screen: not measured; tmux is not installed.");
            return;
        }

        Console.WriteLine($"First screen on 60 outings, from the start of the process, {starts.Count} starts (goal: 0.45 s)");
        Report("  the frame, s", starts.Select(start => start.Frame.TotalSeconds), "0.000");
        Report("  the card, s", starts.Select(start => start.Card.TotalSeconds), "0.000");
    }

    private static void Keys(string folder, int outings)
    {
        string logbook = Path.Combine(folder, $"keys-{outings}.db");
        InventedLog.Write(logbook, outings);
        Console.WriteLine($"A key on {outings} outings, pressed to drawn, without the wait for the loop of at most " +
            $"{1000 / TrialLog.Screens.ScreensProgram.PassesPerSecond} ms (goal: 50 ms)");
        foreach ((string what, IReadOnlyList<double> milliseconds) in KeyAnswers.Measure(logbook))
            Report($"  {what}, ms", milliseconds, "0.0");
    }

    private static void Report(string what, IEnumerable<double> values, string format)
    {
        double[] sorted = [.. values.Order()];
        Console.WriteLine($"{what,-44} median {sorted[sorted.Length / 2].ToString(format)}   best {sorted[0].ToString(format)}   worst " +
            $"{sorted[^1].ToString(format)}");
    }

    private static string Load() => File.Exists("/proc/loadavg")
        ? File.ReadAllText("/proc/loadavg").Trim() + $" on {Environment.ProcessorCount} processors" : "unknown";

    private static string Built => Repository.File("src/TrialLog/bin/Release/net10.0/triallog");
}
