using System.Diagnostics;
using System.Globalization;
using TrialLog.Commands;

namespace TrialLog.Tests.Commands;

/// <summary>
/// The program on a logbook of its own, at noon (UTC) of 1 June 2026, with its output caught. It runs within the tests; where
/// <c>TRIALLOG_PROGRAM</c> names one that was published, that one runs, in a process of its own under libfaketime, for all but what is
/// typed on a terminal.
/// </summary>
internal sealed class TestProgram : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("triallog-");

    public string Store => Path.Combine(_folder.FullName, "log.db");

    public string Folder => _folder.FullName;

    public FixedClock Clock { get; } = new(new DateTimeOffset(2026, 6, 1, 12, 0, 0, TimeSpan.Zero));

    /// <summary>Runs one command line.</summary>
    public Outcome Run(params string[] arguments) => RunTyping(null, arguments);

    /// <summary>Runs one command line on a terminal where the lines are typed.</summary>
    public Outcome RunTyping(string? typed, params string[] arguments)
    {
        if (typed is null && Published is { Length: > 0 } published)
            return RunPublished(published, arguments);
        using var output = new StringWriter();
        using var error = new StringWriter();
        int code = CommandLineProgram.Run(arguments, new ConsoleHost
        {
            In = new StringReader(typed ?? ""),
            Out = output,
            Error = error,
            Interactive = typed is not null,
            Environment = name => name switch { "TRIALLOG_STORE" => Store, "LANG" => "C.UTF-8", _ => null },
            Clock = Clock,
        });
        return new Outcome(code, output.ToString(), error.ToString());
    }

    private static readonly string? Published = Environment.GetEnvironmentVariable("TRIALLOG_PROGRAM");

    private Outcome RunPublished(string published, string[] arguments)
    {
        var start = new ProcessStartInfo(published, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment.Clear();
        foreach ((string name, string value) in new Dictionary<string, string>
        {
            ["HOME"] = Folder,
            ["TRIALLOG_STORE"] = Store,
            ["LANG"] = "C.UTF-8",
            ["TZ"] = "UTC",
            ["LD_PRELOAD"] = "/usr/$LIB/faketime/libfaketime.so.1",
            ["FAKETIME"] = Clock.GetUtcNow().ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
            ["FAKETIME_DONT_FAKE_MONOTONIC"] = "1",
            ["NO_FAKE_STAT"] = "1",
        })
            start.Environment[name] = value;
        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> output = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        process.WaitForExit();
        return new Outcome(process.ExitCode, output.Result, error.Result);
    }

    /// <summary>Runs one command line that must succeed, and gives its output.</summary>
    public string Must(params string[] arguments)
    {
        Outcome outcome = Run(arguments);
        Assert.True(outcome.Code == 0, $"{string.Join(' ', arguments)}: exit {outcome.Code}: {outcome.Error}");
        return outcome.Output;
    }

    /// <summary>A file in the folder of this logbook.</summary>
    public string File(string name, string contents)
    {
        string path = Path.Combine(_folder.FullName, name);
        System.IO.File.WriteAllText(path, contents);
        return path;
    }

    /// <summary>A logbook with one paddler and one adjustable paddle.</summary>
    public static TestProgram WithIlse()
    {
        var program = new TestProgram();
        program.Must("paddler", "add", "Ilse Maro", "--reach", "50in", "--goal", "OC1, 10km");
        program.Must("paddle", "add", "Reed", "--blade", "18.5in", "--range", "47in..53in");
        return program;
    }

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        _folder.Delete(recursive: true);
    }

    internal sealed record Outcome(int Code, string Output, string Error);
}

/// <summary>A clock that stands until it is moved; local time is UTC.</summary>
internal sealed class FixedClock(DateTimeOffset now) : TimeProvider
{
    private DateTimeOffset _now = now;

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => _now;

    public void Pass(TimeSpan time) => _now += time;
}
