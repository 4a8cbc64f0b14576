using System.CommandLine;
using TrialLog.TestData.OddLogs;

namespace TrialLog.Study.OddLogs;

/// <summary><c>odd-logs</c>: does any of so many odd logs get an answer that does not hang together?</summary>
internal static class OddLogsCommand
{
    public static Command Create()
    {
        Option<int> logs = new("--logs") { Description = "How many.", DefaultValueFactory = _ => 10_000 };
        Option<int> first = new("--first")
        {
            Description = "Number of the first; every number is another log.",
            DefaultValueFactory = _ => 1
        };
        Option<int> threads = new("--threads")
        {
            Description = "Threads; the result is the same for any number.",
            DefaultValueFactory = _ => Environment.ProcessorCount
        };
        Command command = new("odd-logs",
            "Asks the model about odd logs and tells which get an answer that does not hang together.") { logs, first, threads };
        command.SetAction(parsed =>
        {
            int from = parsed.GetValue(first), count = parsed.GetValue(logs);
            string?[] problems = new string?[count];
            Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = parsed.GetValue(threads) },
                at => problems[at] = OddLog.Problem(OddLog.Of(from + at)));
            for (int at = 0; at < count; at++)
                if (problems[at] is { } problem)
                    Console.WriteLine($"log {from + at}: {problem}");
            Console.WriteLine($"{count} odd logs, {problems.Count(problem => problem is not null)} with a problem.");
            return 0;
        });
        return command;
    }
}
