namespace TrialLog.Tuning.Model;

/// <summary>
/// The standard normal distribution held between two ends. Source: Johnson, Kotz and Balakrishnan 1994, Continuous Univariate
/// Distributions 1, section 13.10.1.
/// </summary>
/// <param name="LogMass">Logarithm of the probability between the ends.</param>
/// <param name="Mean">Mean between them.</param>
/// <param name="Variance">Variance between them, at most 1.</param>
internal readonly record struct TruncatedNormal(double LogMass, double Mean, double Variance)
{
    /// <summary>Ends further out than this change no digit that counts.</summary>
    private const double FarOut = 8;

    /// <summary>
    /// From here on the upper tail is taken by its continued fraction, since differences of probabilities would lose digits.
    /// </summary>
    private const double Tail = 4;

    /// <summary>So many steps give that fraction to the last digit from there on.</summary>
    private const int Steps = 12;

    /// <summary>Between <paramref name="low"/> and <paramref name="high"/>, low below high.</summary>
    public static TruncatedNormal Between(double low, double high)
    {
        if (low < -FarOut && high > FarOut)
            return new(0, 0, 1);
        if (low + high < 0)
        {
            TruncatedNormal mirrored = Between(-high, -low);
            return mirrored with { Mean = -mirrored.Mean };
        }

        if (low > Tail)
            return UpperTail(low, high - low);
        double heightAtLow = StandardNormal.Density(low), heightAtHigh = high < FarOut ? StandardNormal.Density(high) : 0;
        double mass = StandardNormal.Above(low) - (high < FarOut ? StandardNormal.Above(high) : 0);
        double atLow = heightAtLow / mass, atHigh = heightAtHigh / mass, mean = atLow - atHigh;
        return new(Math.Log(mass), mean, 1 + low * atLow - high * atHigh - mean * mean);
    }

    /// <summary>Logarithm of the probability between <paramref name="low"/> and <paramref name="high"/> alone, low below high.</summary>
    public static double LogMassBetween(double low, double high)
    {
        if (low < -FarOut && high > FarOut)
            return 0;
        if (low + high < 0)
            (low, high) = (-high, -low);
        if (low > Tail)
            return UpperTail(low, high - low).LogMass;
        return Math.Log(StandardNormal.Above(low) - (high < FarOut ? StandardNormal.Above(high) : 0));
    }

    /// <summary>
    /// Far out the density falls as e^(−low·t), t from the lower end; Mills' ratio by Laplace's continued fraction. Where the ends lie
    /// so near to each other that the upper one still counts, it is taken into account to the same order.
    /// </summary>
    private static TruncatedNormal UpperTail(double low, double width)
    {
        double hazard = low;
        for (int k = Steps; k >= 1; k--)
            hazard = low + k / hazard;
        double lost = Math.Exp(-width * (low + 0.5 * width)), kept = 1 - lost, cut = width * lost / kept, fall = 1 / hazard;
        // 1 + low·hazard − hazard² loses all its digits far out, where it is 1/low².
        double variance = low < 50 ? 1 + low * hazard - hazard * hazard : fall * fall;
        return new(-0.5 * low * low - 0.5 * Math.Log(2 * Math.PI) - Math.Log(hazard) + Math.Log(kept), hazard - cut,
            Math.Max(variance - cut * (width / kept), 1e-3 * variance));
    }
}
