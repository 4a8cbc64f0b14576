using System.CommandLine;
using System.Globalization;
using System.Text;

namespace TrialLog.Study.Speed;

/// <summary>
/// <c>process-speed</c>: how long whole runs of the program take, as a user waits for them. Medians over many runs of
/// the built program, and the most memory that one held.
/// </summary>
internal static class ProcessSpeedCommand
{
    public static Command Create()
    {
        Option<int> runs = new("--runs") { Description = "Runs of each.", DefaultValueFactory = _ => 11 };
        Option<string?> program = new("--program") { Description = "The program to run; else triallog.dll beside this one." };
        Command command = new("process-speed", "Whole-process times of next and import, and of R with lme4 beside them.") { runs, program };
        command.SetAction(parsed => Measure(new ProgramRun(parsed.GetValue(program)), parsed.GetValue(runs)));
        return command;
    }

    // What takes least to say in R: one mixed model of the same pieces, no prior, no card, no forecast.
    private const string MixedModel = """
        suppressMessages(library(lme4))
        log <- read.csv(commandArgs(TRUE))
        log$y <- 100 * log(log$distance_m / log$time_s)
        log$x <- log$length_in - mean(log$length_in)
        print(fixef(lmer(y ~ x + I(x^2) + effort + piece + (1 | date), log)))
        """;

    private static void Measure(ProgramRun program, int runs)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("triallog-speed-");
        try
        {
            string season = Path.Combine(folder.FullName, "season.csv"), years = Path.Combine(folder.FullName, "years.csv");
            File.WriteAllText(season, Log(outings: 60, pieces: 4));
            File.WriteAllText(years, Log(outings: 10_000, pieces: 4));
            string store = Path.Combine(folder.FullName, "season.db");
            Run(program, store, "import", season);

            Console.WriteLine($"Machine: {Machine()}");
            Console.WriteLine();
            Console.WriteLine("| whole process | median | of runs | most memory |");
            Console.WriteLine("|---|---|---|---|");
            double next = Row("`next` on 60 outings × 4 pieces", runs, _ => Run(program, store, "next"));
            Row("`next --json` on the same", runs, _ => Run(program, store, "next", "--json"));
            Row("`history` on the same", runs, _ => Run(program, store, "history"));
            Row("`import` of 40,000 rows into a new logbook", Math.Max(3, runs / 3),
                run => Run(program, Path.Combine(folder.FullName, $"years-{run}.db"), "import", years));
            if (new[] { "/usr/bin/Rscript", "/usr/local/bin/Rscript" }.FirstOrDefault(File.Exists) is not { } rscript)
                return;
            string model = Path.Combine(folder.FullName, "model.R");
            File.WriteAllText(model, MixedModel);
            double r = Row("one mixed model of the same pieces in R with lme4", runs,
                _ => Checked(new ProgramRun(rscript).Run(model, season)));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"\nR takes {r / next:0.0} times as long as `next`."));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static double Row(string what, int runs, Func<int, (double Seconds, long Bytes)> run)
    {
        List<(double Seconds, long Bytes)> all = [.. Enumerable.Range(0, runs).Select(run)];
        double median = all.Select(one => one.Seconds).Order().ElementAt(runs / 2);
        Console.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"| {what} | {median:0.00} s | {runs} | {all.Max(one => one.Bytes) / 1e6:0} MB |"));
        return median;
    }

    private static (double Seconds, long Bytes) Run(ProgramRun program, string store, params string[] arguments) =>
        Checked(program.Run([.. arguments, "--store", store]));

    private static (double Seconds, long Bytes) Checked(RunFacts run) =>
        run.ExitCode == 0 ? (run.Seconds, run.Bytes) : throw new InvalidOperationException(run.Error);

    // Times follow no model: only the number of rows and their shape matter here.
    private static string Log(int outings, int pieces)
    {
        var text = new StringBuilder("paddler,date,outing,piece,hull,paddle,length_in,distance_m,time_s,effort,wind\n");
        var day = new DateOnly(1990, 1, 1);
        for (int i = 0; i < outings; i++)
        {
            for (int j = 0; j < pieces; j++)
            {
                double length = 49.5 + (j is 0 or 3 ? 0 : 1.25) + i % 3 * 0.25;
                double time = 330 + 7 * Math.Sin(i * 1.7) + 1.1 * j + 2 * Math.Sin(i * 4 + j * 2.3);
                text.Append(CultureInfo.InvariantCulture,
                    $"Bram Okello,{day.AddDays(i):yyyy-MM-dd},,{j + 1},OC1,Reed,{length},1000,{time:0.0},{5 + (i + j) % 3},{i % 5}\n");
            }
        }

        return text.ToString();
    }

    private static string Machine()
    {
        string? model = OperatingSystem.IsLinux() ? File.ReadLines("/proc/cpuinfo")
            .FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal))?.Split(':', 2)[1].Trim() : null;
        return $"{Environment.ProcessorCount} cores{(model is null ? "" : $" of {model}")}, " +
            $"{System.Runtime.InteropServices.RuntimeInformation.OSDescription}, .NET {Environment.Version}";
    }
}
