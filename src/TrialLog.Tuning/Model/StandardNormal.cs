using MathNet.Numerics;

namespace TrialLog.Tuning.Model;

/// <summary>The standard normal distribution: what the posterior asks of it, over and over.</summary>
internal static class StandardNormal
{
    /// <summary>Beyond this the table ends.</summary>
    private const double FarOut = 8;

    private const int PerUnit = 64;
    private static readonly double[] Places = [
        .. Enumerable.Range(0, 2 * (int)FarOut * PerUnit + 2).Select(k => k / (double)PerUnit - FarOut)];
    private static readonly double[] Tails = [.. Places.Select(static z => 0.5 * SpecialFunctions.Erfc(z / Constants.Sqrt2))],
        Heights = [.. Places.Select(Density)];

    /// <summary>Probability below z.</summary>
    public static double Below(double z) => Above(-z);

    /// <summary>
    /// Probability above z: MathNet's, kept at evenly spaced places and joined by quintics that have its slope and bend there. It is asked
    /// for many thousand times an analysis; this differs by less than 1e-14 and is several times as fast.
    /// </summary>
    public static double Above(double z)
    {
        if (!(z > -FarOut && z < FarOut))
            return 0.5 * SpecialFunctions.Erfc(z / Constants.Sqrt2);
        double place = (z + FarOut) * PerUnit;
        int at = (int)place;
        double t = place - at, u = 1 - t, height = Heights[at], next = Heights[at + 1], one = Places[at], other = Places[at + 1];
        // The tail's slope is −φ(z) and its bend zφ(z). Hermite's quintic, from either end.
        double near = Tails[at] + t * (3 * Tails[at] - height / PerUnit)
            + t * t * (6 * Tails[at] - 3 * height / PerUnit + 0.5 * one * height / (PerUnit * PerUnit));
        double far = Tails[at + 1] + u * (3 * Tails[at + 1] + next / PerUnit)
            + u * u * (6 * Tails[at + 1] + 3 * next / PerUnit + 0.5 * other * next / (PerUnit * PerUnit));
        return u * u * u * near + t * t * t * far;
    }

    /// <summary>Density at z.</summary>
    public static double Density(double z) => Math.Exp(-0.5 * z * z) / Constants.Sqrt2Pi;

    /// <summary>
    /// E|Z|, E Z|Z| and E|Z|³ of a normal Z with that mean and standard deviation 1 (integrals of z, z² and z³ against its density by
    /// parts).
    /// </summary>
    public static (double First, double Second, double Third) AbsoluteMoments(double mean)
    {
        double density = Density(mean), side = 1 - 2 * Above(mean), square = mean * mean;
        return (mean * side + 2 * density, (square + 1) * side + 2 * mean * density,
            (square + 3) * mean * side + 2 * (square + 2) * density);
    }
}
