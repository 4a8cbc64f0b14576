using System.CommandLine;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using TrialLog.Plots;
using TrialLog.Reports.Coach;

namespace TrialLog.Study.Speed;

/// <summary><c>bench</c>: how long analyses take.</summary>
internal static class BenchCommand
{
    public static Command Create()
    {
        Command command = new("bench", "How long analyses take, as a table (BenchmarkDotNet, in this process).");
        command.SetAction(_ =>
        {
            // In this process, since the benchmarks need no other build than the one that runs.
            Job job = Job.Default.WithToolchain(InProcessEmitToolchain.Instance).WithWarmupCount(2).WithIterationCount(7)
                .WithMinIterationCount(5);
            ManualConfig config = ManualConfig.CreateEmpty()
                .AddJob(job).AddLogger(new ErrorLogger())
                    .AddColumnProvider(DefaultColumnProviders.Descriptor, DefaultColumnProviders.Statistics)
                .WithOptions(ConfigOptions.DisableLogFile)
                .WithArtifactsPath(Path.Combine(Path.GetTempPath(), "triallog-bench"));
            Summary summary = BenchmarkRunner.Run<AnalysisBenchmarks>(config);
            Console.WriteLine("| what | mean | standard deviation |");
            Console.WriteLine("|---|---|---|");
            foreach (BenchmarkReport report in summary.Reports)
                if (report.ResultStatistics is { } statistics)
                    Console.WriteLine($"| {report.BenchmarkCase.Descriptor.WorkloadMethodDisplayInfo.Trim('\'')} | " +
                        $"{Milliseconds(statistics.Mean)} | {Milliseconds(statistics.StandardDeviation)} |");
            Console.WriteLine();
            Console.WriteLine(
                $"{Environment.ProcessorCount} cores, {System.Runtime.InteropServices.RuntimeInformation.ProcessArchitecture}, " +
                $"{System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription}.");
            return 0;
        });
        return command;
    }

    private static string Milliseconds(double nanoseconds) => $"{nanoseconds / 1e6:0.0} ms";

    /// <summary>Progress goes to standard error, so that standard output is the table alone.</summary>
    private sealed class ErrorLogger : ILogger
    {
        public string Id => nameof(ErrorLogger);

        public int Priority => 0;

        public void Write(LogKind logKind, string text) => Console.Error.Write(text);

        public void WriteLine() => Console.Error.WriteLine();

        public void WriteLine(LogKind logKind, string text) => Console.Error.WriteLine(text);

        public void Flush()
        {
        }
    }
}
