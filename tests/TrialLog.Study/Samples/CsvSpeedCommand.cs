using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;

namespace TrialLog.Study.Samples;

/// <summary>
/// <c>csv-speed</c>: how fast a long CSV is read and laid beside a logbook, and how much memory that takes. Without the store.
/// </summary>
internal static class CsvSpeedCommand
{
    public static Command Create()
    {
        Option<int> rows = new("--rows") { Description = "Rows of the file.", DefaultValueFactory = _ => 40_000 };
        Option<int> runs = new("--runs") { Description = "Runs, of which the median is told.", DefaultValueFactory = _ => 5 };
        Command command = new("csv-speed", "Speed and memory of reading and writing CSV, without the store.") { rows, runs };
        command.SetAction(parsed => Measure(parsed.GetValue(rows), parsed.GetValue(runs)));
        return command;
    }

    private static void Measure(int rows, int runs)
    {
        string file = Path.Combine(Path.GetTempPath(), $"triallog-csv-speed-{Environment.ProcessId}.csv");
        try
        {
            WriteFile(file, rows);
            CsvReadOptions options = new() { Today = new DateOnly(2026, 6, 1) };
            CsvLogContents contents = null!;
            CsvAdditions additions = null!;
            KnownLog log = KnownLog.Fresh;
            double read = Median(runs, () =>
            {
                using FileStream stream = File.OpenRead(file);
                contents = CsvLog.Read(stream, options);
            });
            double assemble = Median(runs, () => additions = CsvAssembly.Assemble(contents, log, options));
            using Process self = Process.GetCurrentProcess();
            double peak = self.PeakWorkingSet64 / 1e6;
            log = new KnownLog(additions.Paddlers, StandardHulls.All, additions.Paddles, additions.NewOutings);
            double again = Median(runs, () => additions = CsvAssembly.Assemble(contents, log, options));
            double write = Median(runs, () => CsvLog.Write(Stream.Null, log));
            if (!additions.AddsNothing || additions.PiecesAlreadyThere != rows)
                throw new InvalidOperationException("The file imported again added something: " + additions.Says());

            Console.WriteLine(
                string.Create(CultureInfo.InvariantCulture,
                $"{rows:N0} rows, {new FileInfo(file).Length / 1e6:0.0} MB; medians of {runs} runs"));
            Tell("read", read);
            Tell("lay beside an empty logbook", assemble);
            Tell("lay beside the same logbook", again);
            Tell("write", write);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"peak memory after reading into an empty logbook: {peak:0} MB"));

            void Tell(string what, double seconds) =>
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {seconds:0.000} s, {rows / seconds:N0} rows/s"));
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>Outings of four pieces, one paddler after the other, with every column of the format filled.</summary>
    private static void WriteFile(string file, int rows)
    {
        Random random = new(1);
        using StreamWriter text = new(file);
        text.WriteLine(
            "paddler,date,outing,piece,hull,paddle,length_in,distance_m,time,effort,heart_rate,stroke_rate,wind,course,soreness,notes");
        for (int row = 0; row < rows; row++)
        {
            int outing = row / 4, paddler = outing / 1000;
            string length = (48 + 0.25 * random.Next(17)).ToString(CultureInfo.InvariantCulture),
                time = PieceTime.FromSeconds(300 + random.Next(600) / 10.0).ToString();
            string notes = row % 10 == 0 ? "\"short, with a comma\"" : "";
            text.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"Paddler {paddler},{new DateOnly(2020, 1, 1).AddDays(outing % 1000 * 2):yyyy-MM-dd},am,{row % 4 + 1},OC1,Heron,{length}" +
                    $",1000,{time},6,{130 + random.Next(30)},{50 + random.Next(20)},{outing % 6},round-trip,0,{notes}"));
        }
    }

    private static double Median(int runs, Action act)
    {
        List<double> seconds = [];
        for (int run = 0; run < runs; run++)
        {
            Stopwatch watch = Stopwatch.StartNew();
            act();
            seconds.Add(watch.Elapsed.TotalSeconds);
        }

        seconds.Sort();
        return seconds[seconds.Count / 2];
    }
}
