namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>
/// How a watch's positions err. No source: chosen as under open sky, where the error is mostly slow and so nearly the same
/// at both ends of a leg; the study shows what happens at half and at twice as much, and with jitter alone.
/// </summary>
internal sealed record WatchFaults
{
    /// <summary>Multiplies all noise.</summary>
    public double NoiseFactor { get; init; } = 1;

    /// <summary>Standard deviation, each axis, of the error that is new each second; metres.</summary>
    public double White { get; init; } = 0.4;

    /// <summary>Standard deviation, each axis, of the error that lasts for a while; metres.</summary>
    public double Wander { get; init; } = 0.5;

    /// <summary>Seconds over which that error fades (first-order Gauss-Markov).</summary>
    public double WanderSeconds { get; init; } = 30;

    /// <summary>Standard deviation, each axis, of the error that lasts about half an hour; metres.</summary>
    public double Slow { get; init; } = 2;

    /// <summary>Dropouts an outing, on average.</summary>
    public double Dropouts { get; init; } = 2;

    /// <summary>Longest dropout in seconds.</summary>
    public int LongestDropout { get; init; } = 40;

    /// <summary>
    /// Positions that jump away for a second or two, duplicate and backward times: of each so many an outing, on average.
    /// </summary>
    public double Glitches { get; init; } = 2;

    /// <summary>Seconds between points: at random from 2 up to this many if it is more than 1.</summary>
    public int LongestInterval { get; init; } = 1;

    /// <summary>A watch without any fault.</summary>
    public static WatchFaults None { get; } = new() { NoiseFactor = 0, Dropouts = 0, Glitches = 0 };
}
