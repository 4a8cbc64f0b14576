using TrialLog.Plots;

namespace TrialLog.Commands;

/// <summary>What the program runs in: its streams, terminal, environment and clock. Tests give their own.</summary>
[System.Diagnostics.CodeAnalysis.SuppressMessage(
    "Design", "CA1001", Justification = "The streams belong to the process, or to the test that gave them.")]
internal sealed class ConsoleHost
{
    public required TextReader In { get; init; }

    /// <summary>Where answers go, made safe for a terminal.</summary>
    public required TextWriter Out
    {
        get;
        init => field = new TerminalWriter(value, () => Sentences);
    }

    /// <summary>Where errors go, made safe for a terminal.</summary>
    public required TextWriter Error
    {
        get;
        init => field = new TerminalWriter(value, () => Sentences);
    }

    /// <summary>The standard output as it is, for a file that is written there.</summary>
    public TextWriter Raw => ((TerminalWriter)Out).Raw;

    /// <summary>Whether a person sits at both ends, so that questions may be asked.</summary>
    public required bool Interactive { get; init; }

    /// <summary>Which glyphs sentences may hold.</summary>
    public Strokes Sentences { get; init; }

    /// <summary>Columns to write into, at least 40.</summary>
    public int Width { get; init; } = 80;

    public required Func<string, string?> Environment { get; init; }

    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>The real ones.</summary>
    public static ConsoleHost OfThisProcess()
    {
        Console.OutputEncoding = new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        bool interactive = !Console.IsInputRedirected && !Console.IsOutputRedirected;
        return new ConsoleHost
        {
            In = Console.In,
            Out = Console.Out,
            Error = Console.Error,
            Interactive = interactive,
            Width = interactive ? Math.Max(40, Console.WindowWidth) : 80,
            Environment = System.Environment.GetEnvironmentVariable,
            Sentences = StrokesOf.Sentences(System.Environment.GetEnvironmentVariable, !Console.IsOutputRedirected),
        };
    }
}
