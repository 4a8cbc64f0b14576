using System.Diagnostics;
using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings;
using TrialLog.TestData.Recordings.Simulation;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.Study.Recordings;

/// <summary><c>recordings-study</c>: how well pieces, speeds and currents are found in simulated outings.</summary>
internal static class RecordingsStudy
{
    private static readonly (string Name, WatchFaults Watch)[] Watches =
    [
        ("no faults", WatchFaults.None),
        ("noise × ½", new WatchFaults { NoiseFactor = 0.5 }),
        ("noise × 1", new WatchFaults()),
        ("noise × 2", new WatchFaults { NoiseFactor = 2 }),
        ("noise × ½, a point every 2 to 8 s", new WatchFaults { NoiseFactor = 0.5, LongestInterval = 8, Glitches = 0 }),
        ("jitter of 1.5 m only", new WatchFaults { White = 1.5, Wander = 0, Slow = 0 }),
        ("jitter of 3 m only", new WatchFaults { White = 3, Wander = 0, Slow = 0 }),
    ];

    /// <summary>Prints the tables; 0.</summary>
    public static int Run(TextWriter output, int outings, int seed)
    {
        output.WriteLine("| watch | outings | all pieces found | pieces | edges within 5 s | speed within 0.3 % | the watch alone | mean " +
            "speed error | sd | 95 % of current errors |");
        output.WriteLine("|---|---|---|---|---|---|---|---|---|---|");
        foreach ((string name, WatchFaults watch) in Watches)
        {
            List<OutingScore> scores = [.. Enumerable.Range(0, outings).Select(i => Scoring.Score(Outing(watch, seed + i)))];
            output.WriteLine(Row(name, scores));
        }

        output.WriteLine();
        output.WriteLine("| a day at one sample a second | file, MB | seconds | allocated in all, MB | pieces found |");
        output.WriteLine("|---|---|---|---|---|");
        IReadOnlyList<RecordedPoint> day = LongDay.Points(24);
        foreach (
            (string name, byte[] file) in new[] { ("FIT", FitWriter.Activity(day, [], null)), ("GPX", XmlWriting.Gpx(day, "day")),
            ("TCX", XmlWriting.Tcx(day, [])) })
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            var clock = Stopwatch.StartNew();
            int found = RecordingReader.Read(new MemoryStream(file), "day").Kept.Count;
            double allocated = (GC.GetAllocatedBytesForCurrentThread() - before) / 1e6;
            output.WriteLine(
                string.Create(CultureInfo.InvariantCulture,
                $"| {name} | {file.Length / 1e6:0.0} | {clock.Elapsed.TotalSeconds:0.00} | {allocated:0} | {found} |"));
        }

        return 0;
    }

    /// <summary>The simulated outing of that seed.</summary>
    public static SimulatedOuting Outing(WatchFaults watch, int seed) => Simulator.Run(OutingPlan.Draw(new Random(seed), watch), seed);

    private static string Row(string name, List<OutingScore> scores)
    {
        double[] edges = [.. scores.SelectMany(s => s.EdgeErrors)], speeds = [.. scores.SelectMany(s => s.SpeedErrors)];
        double[] currents = [.. scores.SelectMany(s => s.CurrentErrors).Select(Math.Abs).Order()];
        int pieces = scores.Sum(s => s.True), right = scores.Count(s => s.Found == s.True);
        double mean = speeds.Average(), deviation = Math.Sqrt(speeds.Sum(e => (e - mean) * (e - mean)) / (speeds.Length - 1));
        return string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {scores.Count} | {100.0 * right / scores.Count:0.0} % | {pieces} | " +
                $"{100.0 * edges.Count(e => Math.Abs(e) <= 5) / (2 * pieces):0.0} % | " +
                $"{100.0 * speeds.Count(e => Math.Abs(e) <= 0.3) / pieces:0.0} % | " +
                $"{100.0 * scores.SelectMany(s => s.WatchErrors).Count(e => Math.Abs(e) <= 0.3) / pieces:0.0} % | {mean:+0.000;-0.000} % " +
                $"| {deviation:0.000} % | {currents[(int)(0.95 * (currents.Length - 1))]:0.000} m/s |");
    }
}
