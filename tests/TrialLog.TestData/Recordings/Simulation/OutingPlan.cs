using TrialLog.Domain.Log;
using TrialLog.Recordings.Pieces;

namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>What is paddled in a simulated outing.</summary>
internal sealed record OutingPlan
{
    /// <summary>When and where it begins: invented water.</summary>
    public DateTimeOffset Start { get; init; } = new(2026, 5, 9, 16, 0, 0, TimeSpan.FromHours(-10));

    /// <summary>Degrees north.</summary>
    public double Latitude { get; init; } = 12.3;

    /// <summary>Degrees east.</summary>
    public double Longitude { get; init; } = -150.6;

    /// <summary>Course of the first leg, degrees from north.</summary>
    public double Course { get; init; } = 40;

    /// <summary>Speed of each piece through the water, m/s; their number is the number of pieces.</summary>
    public required IReadOnlyList<double> Speeds { get; init; }

    /// <summary>Metres through the water of one leg.</summary>
    public double Leg { get; init; } = 500;

    /// <summary>Out and back, or one way by turns out and home.</summary>
    public bool RoundTrips { get; init; } = true;

    /// <summary>Seconds of rest between pieces.</summary>
    public double Rest { get; init; } = 150;

    /// <summary>Seconds of warm-up before, and of cool-down after.</summary>
    public double WarmUp { get; init; } = 360;

    /// <summary>Speed of warm-up and cool-down as a share of the pieces'.</summary>
    public double EasyShare { get; init; } = 0.78;

    /// <summary>Whether the first piece follows the warm-up without a rest.</summary>
    public bool StraightFromWarmUp { get; init; }

    /// <summary>Current, m/s, with the first leg.</summary>
    public double Current { get; init; }

    /// <summary>Whether the lap button is pressed at the start and end of each piece.</summary>
    public bool Laps { get; init; }

    /// <summary>Noise and losses of the watch.</summary>
    public WatchFaults Watch { get; init; } = new();

    /// <summary>A plan drawn at random: hull speed, distances, current, course, place, lap button.</summary>
    public static OutingPlan Draw(Random random, WatchFaults watch)
    {
        double speed = 2.6 + 1.2 * random.NextDouble();
        int pieces = random.Next(3, 7);
        return new OutingPlan
        {
            Latitude = -55 + 110 * random.NextDouble(),
            Longitude = -180 + 360 * random.NextDouble(),
            Course = 360 * random.NextDouble(),
            Speeds = [.. Enumerable.Range(0, pieces).Select(_ => speed * (1 + 0.012 * Noise.Normal(random)))],
            Leg = 400 + 350 * random.NextDouble(),
            RoundTrips = random.NextDouble() < 0.75,
            Rest = 90 + 150 * random.NextDouble(),
            WarmUp = 240 + 360 * random.NextDouble(),
            EasyShare = 0.72 + 0.1 * random.NextDouble(),
            StraightFromWarmUp = random.NextDouble() < 0.25,
            Current = 0.5 * (2 * random.NextDouble() - 1),
            Laps = random.NextDouble() < 0.3,
            Watch = watch,
        };
    }
}
