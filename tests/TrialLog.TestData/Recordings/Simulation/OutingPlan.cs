using TrialLog.Domain.Log;
using TrialLog.Recordings.Pieces;

namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>How the pieces of an outing lie on the water.</summary>
internal enum OutingShape
{
    /// <summary>Each out and back.</summary>
    RoundTrips,

    /// <summary>One way, by turns out and home.</summary>
    Alternating,

    /// <summary>One way, with an easy way back over the same water after each.</summary>
    EasyReturn,

    /// <summary>One way, one after the other in one direction.</summary>
    InARow,
}

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

    /// <summary>Metres of one leg, through the water.</summary>
    public double Leg { get; init; } = 500;

    /// <summary>Whether <see cref="Leg"/> is meant over ground, as between two marks.</summary>
    public bool OverGround { get; init; }

    /// <summary>How the pieces lie.</summary>
    public OutingShape Shape { get; init; } = OutingShape.RoundTrips;

    /// <summary>Speed of the easy way back as a share of the piece's.</summary>
    public double ReturnShare { get; init; } = 0.72;

    /// <summary>Seconds of rest before the easy way back; null for a few at random.</summary>
    public double? PauseBeforeReturn { get; init; }

    /// <summary>What the wind does to a canoe at rest, m/s along and across the first leg.</summary>
    public (double Along, double Across) Drift { get; init; }

    /// <summary>Whether heart rate and stroke rate are recorded.</summary>
    public bool Sensors { get; init; } = true;

    /// <summary>Whether the watch runs the card as a workout: each piece and each rest is a step.</summary>
    public bool Programmed { get; init; }

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
            Shape = random.NextDouble() < 0.75 ? OutingShape.RoundTrips : OutingShape.Alternating,
            Rest = 90 + 150 * random.NextDouble(),
            WarmUp = 240 + 360 * random.NextDouble(),
            EasyShare = 0.72 + 0.1 * random.NextDouble(),
            StraightFromWarmUp = random.NextDouble() < 0.25,
            Current = 0.5 * (2 * random.NextDouble() - 1),
            Laps = random.NextDouble() < 0.3,
            Watch = watch,
        };
    }

    /// <summary>Metres of one piece.</summary>
    public double PieceMetres => Shape == OutingShape.RoundTrips ? 2 * Leg : Leg;

    /// <summary>
    /// A plan as on a card: four or six pieces between marks, of that many metres each, with slow noise: first-order Gauss-Markov of 1.5 to
    /// 4 m over 30 to 120 s beside white noise. Half the watches record heart rate and stroke rate.
    /// </summary>
    public static OutingPlan OfCard(
        Random random, OutingShape shape, double metres, (double From, double To) rest, bool laps, bool noise = true)
    {
        double speed = 2.6 + 1.2 * random.NextDouble(), longitude = -180 + 360 * random.NextDouble();
        return new OutingPlan
        {
            Start = new DateTimeOffset(2026, 5, 9, 10, 0, 0, TimeSpan.FromHours(Math.Round(longitude / 15))),
            Latitude = -55 + 110 * random.NextDouble(),
            Longitude = longitude,
            Course = 360 * random.NextDouble(),
            Speeds = [.. Enumerable.Range(0, random.Next(2) == 0 ? 4 : 6).Select(_ => speed * (1 + 0.012 * Noise.Normal(random)))],
            Leg = shape == OutingShape.RoundTrips ? metres / 2 : metres,
            OverGround = true,
            Shape = shape,
            ReturnShare = 0.65 + 0.15 * random.NextDouble(),
            Rest = rest.From + (rest.To - rest.From) * random.NextDouble(),
            WarmUp = 240 + 360 * random.NextDouble(),
            EasyShare = 0.72 + 0.1 * random.NextDouble(),
            StraightFromWarmUp = random.NextDouble() < 0.15,
            Current = 0.5 * (2 * random.NextDouble() - 1),
            Drift = (0.12 * Noise.Normal(random), 0.12 * Noise.Normal(random)),
            Sensors = random.Next(2) == 0,
            Laps = laps,
            Watch = noise
                ? new WatchFaults { Wander = 1.5 + 2.5 * random.NextDouble(), WanderSeconds = 30 + 90 * random.NextDouble(), Slow = 0 }
                : WatchFaults.None,
        };
    }
}
