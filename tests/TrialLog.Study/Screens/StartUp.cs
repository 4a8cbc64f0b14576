using System.ComponentModel;
using System.Diagnostics;

namespace TrialLog.Study.Screens;

/// <summary>
/// How long after the start of the process something was on a real terminal (tmux). Looking takes a few milliseconds, which
/// count against the program.
/// </summary>
/// <param name="Frame">Until the screens by number were there.</param>
/// <param name="Card">Until the trial card was there.</param>
internal sealed record StartUp(TimeSpan Frame, TimeSpan Card)
{
    /// <summary>Starts the program so many times; nothing where tmux is missing.</summary>
    public static List<StartUp> Measure(string program, string logbook, int runs)
    {
        string socket = $"triallog-speed-{Environment.ProcessId}";
        var starts = new List<StartUp>();
        try
        {
            Tmux(socket, "new-session", "-d", "-x", "100", "-y", "30", "sleep 600");
            for (int run = 0; run < runs; run++)
                starts.Add(Once(socket, program, logbook));
        }
        catch (Win32Exception)
        {
            return [];
        }
        finally
        {
            if (starts.Count > 0)
                Tmux(socket, "kill-server");
        }

        return starts;
    }

    private static StartUp Once(string socket, string program, string logbook)
    {
        var since = Stopwatch.StartNew();
        Tmux(socket, "new-window", $"env LANG=C.UTF-8 '{program}' --store '{logbook}'");
        TimeSpan? frame = null;
        while (since.Elapsed < TimeSpan.FromSeconds(30))
        {
            string shown = Tmux(socket, "capture-pane", "-p");
            if (frame is null && shown.Contains("1 Home", StringComparison.Ordinal))
                frame = since.Elapsed;
            if (shown.Contains("Best length", StringComparison.Ordinal))
            {
                var start = new StartUp(frame ?? since.Elapsed, since.Elapsed);
                Tmux(socket, "send-keys", "q");
                Thread.Sleep(300);
                return start;
            }
        }

        throw new InvalidOperationException("The card did not come up within 30 s.");
    }

    private static string Tmux(string socket, params string[] arguments)
    {
        using Process tmux = Process.Start(
            new ProcessStartInfo("tmux", ["-L", socket, "-f", "/dev/null", .. arguments])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true
            })!;
        string shown = tmux.StandardOutput.ReadToEnd();
        tmux.WaitForExit();
        return shown;
    }
}
