using MathNet.Numerics;

namespace TrialLog.Tuning.Model;

/// <summary>The standard normal distribution: what the posterior asks of it, over and over.</summary>
internal static class StandardNormal
{
    /// <summary>Probability below z.</summary>
    public static double Below(double z) => 0.5 * SpecialFunctions.Erfc(-z / Constants.Sqrt2);

    /// <summary>Density at z.</summary>
    public static double Density(double z) => Math.Exp(-0.5 * z * z) / Constants.Sqrt2Pi;

    /// <summary>
    /// E|Z|, E Z|Z| and E|Z|³ of a normal Z with that mean and standard deviation 1 (integrals of z, z² and z³ against its density by
    /// parts).
    /// </summary>
    public static (double First, double Second, double Third) AbsoluteMoments(double mean)
    {
        double density = Density(mean), side = 1 - SpecialFunctions.Erfc(mean / Constants.Sqrt2), square = mean * mean;
        return (mean * side + 2 * density, (square + 1) * side + 2 * mean * density,
            (square + 3) * mean * side + 2 * (square + 2) * density);
    }
}
