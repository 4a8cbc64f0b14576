namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>Random numbers and random wander.</summary>
internal static class Noise
{
    /// <summary>A standard normal number (Box and Muller 1958, Annals of Mathematical Statistics 29(2):610-1).</summary>
    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}

/// <summary>A value that wanders about 0: first-order autoregression, that is an Ornstein-Uhlenbeck process seen once a second.</summary>
internal sealed class Wander
{
    private readonly Random random;
    private readonly double deviation, keep;
    private double value;

    /// <summary>A wander of that standard deviation whose memory fades over so many seconds.</summary>
    public Wander(Random random, double deviation, double seconds)
    {
        this.random = random;
        this.deviation = deviation;
        keep = Math.Exp(-1 / seconds);
        value = deviation * Noise.Normal(random);
    }

    /// <summary>The value a second later.</summary>
    public double Next() => value = keep * value + Math.Sqrt(1 - keep * keep) * deviation * Noise.Normal(random);
}
