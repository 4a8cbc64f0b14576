namespace TrialLog.Commands.Coach;

/// <summary>How far the analyses of a large squad are, on the terminal, at most every second; nothing where nobody looks.</summary>
internal sealed class SquadProgress(ConsoleHost host, int paddlers) : IProgress<int>
{
    // A smaller squad is done before anybody wonders.
    private const int Many = 30;

    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    private readonly Lock _turn = new();
    private DateTimeOffset _last = host.Clock.GetUtcNow();

    public static SquadProgress? On(ConsoleHost host, int paddlers) =>
        host.Interactive && paddlers >= Many ? new SquadProgress(host, paddlers) : null;

    public void Report(int value)
    {
        lock (_turn)
        {
            DateTimeOffset now = host.Clock.GetUtcNow();
            if (now - _last < Pause)
                return;
            _last = now;
            host.Error.WriteLine($"{value} of {paddlers} paddlers …");
        }
    }
}
