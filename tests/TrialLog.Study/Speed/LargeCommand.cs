using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;

namespace TrialLog.Study.Speed;

/// <summary>
/// <c>large</c>: what whole runs of the program take on a logbook of a million pieces, and the most memory that each held.
/// </summary>
internal static class LargeCommand
{
    public static Command Create()
    {
        Option<int> paddlers = new("--paddlers") { Description = "Paddlers.", DefaultValueFactory = _ => 500 };
        Option<int> outings = new("--outings") { Description = "Outings of four pieces each.", DefaultValueFactory = _ => 500 };
        Option<string?> program = new("--program") { Description = "The program to run; else triallog.dll beside this one." };
        Option<string?> keep = new("--store") { Description = "The logbook: made if it is not there, and left there." };
        Option<string[]> only = new("--only") { Description = "Only rows whose command begins so.", AllowMultipleArgumentsPerToken = true };
        Command command = new("large", "Whole-process times and memory on a logbook of a million pieces.")
        {
            paddlers, outings, program, keep, only,
        };
        command.SetAction(parsed =>
        {
            DirectoryInfo folder = Directory.CreateTempSubdirectory("triallog-large-");
            try
            {
                string store = parsed.GetValue(keep) ?? Path.Combine(folder.FullName, "large.db");
                if (!File.Exists(store))
                    LargeLog.Make(store, parsed.GetValue(paddlers), parsed.GetValue(outings));
                Measure(new ProgramRun(parsed.GetValue(program)), folder.FullName, store, parsed.GetValue(only) ?? []);
            }
            finally
            {
                folder.Delete(recursive: true);
            }
        });
        return command;
    }

    private static void Measure(ProgramRun program, string folder, string store, string[] only)
    {
        string csv = Path.Combine(folder, "all.csv"), one = Path.Combine(folder, "one.json"), all = Path.Combine(folder, "all.json"),
            exchange = Path.Combine(folder, "exchange"), fresh = Path.Combine(folder, "fresh.db"), part = Path.Combine(folder, "part.csv");
        Directory.CreateDirectory(exchange);
        int pieces;
        using (LogbookFile logbook = LogbookFile.Open(store))
            pieces = logbook.Paddlers().Sum(paddler => logbook.Outings(paddler.Id).Sum(outing => outing.Pieces.Count));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{pieces:N0} pieces, {new FileInfo(store).Length / 1e6:0} MB"));
        Console.WriteLine();
        Console.WriteLine("| whole process | time | processor time | most memory |");
        Console.WriteLine("|---|---|---|---|");
        Row("history", "--paddler", "Paddler 7", "--last", "10");
        Row("log", "--paddler", "Paddler 7", "--date", "today", "50in,1km,5:32,6", "51in,1km,5:33,6");
        Row("next", "--paddler", "Paddler 7");
        Row("next", "--paddler", "Paddler 7");
        Row("next", "--squad", "--json");
        Row("next", "--squad", "--json");
        Row("verify");
        Row("export", "--csv", csv);
        if (File.Exists(csv))
        {
            // As many rows as are read at once.
            File.WriteAllLines(part, File.ReadLines(csv).Take(250_001));
            Row("import", part, "--store", fresh);
        }

        Row("share", "--paddler", "Paddler 7", one);
        Row("merge", one, "--store", fresh);
        Row("share", "--squad", all);
        Row("sync", exchange);
        Row("sync", exchange, "--store", fresh);

        void Row(params string[] arguments)
        {
            if (only.Length > 0 && !only.Contains(arguments[0]))
                return;
            string[] asked = arguments.Contains("--store") ? arguments : ["--store", store, .. arguments];
            RunFacts run = program.Run(asked);
            string words = string.Join(' ', arguments.Select(word => Path.IsPathRooted(word) ? Path.GetFileName(word) : word));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| `{words}` | {run.Seconds:0.00} s | {run.ProcessorSeconds:0.00} s | {run.Bytes / 1e6:0} MB |"
                + $"{(run.ExitCode == 0 ? "" : $" {run.Error.Trim()}")}"));
        }
    }
}

/// <summary>What one run of the program took.</summary>
internal sealed record RunFacts(double Seconds, double ProcessorSeconds, long Bytes, int ExitCode, string Error);

/// <summary>Runs the program as a user does and looks how long it takes and how much memory it holds.</summary>
internal sealed class ProgramRun(string? program = null)
{
    private readonly string _program = program ?? Path.Combine(AppContext.BaseDirectory, "triallog.dll");

    public RunFacts Run(params string[] arguments)
    {
        bool needsHost = _program.EndsWith(".dll", StringComparison.Ordinal);
        var start = new ProcessStartInfo(needsHost ? "dotnet" : _program, needsHost ? [_program, .. arguments] : arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        var watch = Stopwatch.StartNew();
        using Process process = Process.Start(start) ?? throw new InvalidOperationException("The program did not start.");
        process.OutputDataReceived += static (_, _) => { };
        process.BeginOutputReadLine();
        (long most, TimeSpan processor) = (0, TimeSpan.Zero);
        while (!process.WaitForExit(5))
        {
            try
            {
                process.Refresh();
                most = Math.Max(most, process.PeakWorkingSet64);
                processor = process.TotalProcessorTime;
            }
            catch (InvalidOperationException)
            {
                // It ended between the wait and the look.
            }
        }

        return new(watch.Elapsed.TotalSeconds, processor.TotalSeconds, most, process.ExitCode, process.StandardError.ReadToEnd());
    }
}
