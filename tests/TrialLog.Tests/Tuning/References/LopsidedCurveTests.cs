using MathNet.Numerics.Integration;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Model;
using Normal = MathNet.Numerics.Distributions.Normal;

namespace TrialLog.Tests.Tuning.References;

/// <summary>
/// What the posterior says of a lopsided curve, against draws from the same normals; and the normal held between two ends, against
/// quadrature.
/// </summary>
public class LopsidedCurveTests
{
    private const int Draws = 200_000;
    private const double Share = 0.5;

    /// <summary>Two parts: curvature, mean and standard deviation of θ and g, and their correlation.</summary>
    private static readonly (double Weight, double C, double Best, double Sd, double Skew, double SkewSd, double Correlation)[] Parts =
        [(0.7, 0.6, 0.3, 0.5, 0.25, 0.15, -0.6), (0.3, 0.2, -0.4, 1.1, -0.2, 0.2, 0.3)];

    private static readonly Posterior Believed = new(
        [.. Parts.Select(part => new CurveCell(part.Weight, part.C, part.Best, 0, part.Skew, part.Sd * part.Sd + part.Best * part.Best, 0,
            part.SkewSd * part.SkewSd + part.Skew * part.Skew, 0, part.Correlation * part.Sd * part.SkewSd + part.Best * part.Skew, 0))],
        Nothing, Nothing, Nothing, Nothing, Share, 0, 0, 0);

    private static readonly (double C, double Best, double Skew)[] Drawn = [.. Draw()];

    private static Marginal Nothing => new([0], [1]);

    [Theory]
    [InlineData(-2)]
    [InlineData(-0.3)]
    [InlineData(0.2)]
    [InlineData(1.5)]
    public void The_expected_loss_is_the_mean_over_draws(double length)
    {
        double[] losses = [.. Drawn.Select(one => Loss(length, one))];
        double error = MathNet.Numerics.Statistics.Statistics.StandardDeviation(losses) / Math.Sqrt(Draws);
        Assert.Equal(losses.Average(), Believed.ExpectedLoss(length), 4 * error);
    }

    [Fact]
    public void No_length_loses_less_than_the_length_of_least_loss()
    {
        double least = Believed.ExpectedLoss(Believed.LeastLoss);
        for (double length = -3; length <= 3; length += 0.01)
            Assert.True(Believed.ExpectedLoss(length) >= least);
        Assert.InRange(Believed.LeastLoss, -1, 1);
    }

    [Theory]
    [InlineData(0.2, double.NegativeInfinity, double.PositiveInfinity)]
    [InlineData(-0.8, double.NegativeInfinity, double.PositiveInfinity)]
    [InlineData(0.2, -0.2, 0.5)]
    public void The_chance_of_a_worthwhile_gain_is_its_share_of_draws(double length, double shortest, double longest)
    {
        double worthwhile = 0.1,
            among = Drawn.Average(one => Loss(length, one) - Loss(Math.Clamp(one.Best, shortest, longest), one) > worthwhile ? 1.0 : 0);
        Assert.Equal(among, Believed.WorthwhileLeft(length, shortest, longest, worthwhile), 0.01);
    }

    [Theory]
    [InlineData(-1, 0.25)]
    [InlineData(0.6, 0.25)]
    [InlineData(2.5, -0.5)]
    public void The_range_of_a_difference_holds_its_share_of_draws(double length, double other)
    {
        (double low, double high) = Believed.DifferenceRange(length, other, 0.9);
        Assert.Equal(0.05, Drawn.Average(one => Loss(other, one) - Loss(length, one) < low ? 1.0 : 0), 0.01);
        Assert.Equal(0.05, Drawn.Average(one => Loss(other, one) - Loss(length, one) > high ? 1.0 : 0), 0.01);
        (double back, double forth) = Believed.DifferenceRange(other, length, 0.9);
        Assert.Equal(-high, back, 1e-9);
        Assert.Equal(-low, forth, 1e-9);
    }

    [Theory]
    [InlineData(-0.5, 1)]
    [InlineData(-7, 0.3)]
    [InlineData(2, 6)]
    [InlineData(3.9, 7.4)]
    [InlineData(4.1, 9)]
    [InlineData(6, 9.7)]
    [InlineData(-31, -27)]
    [InlineData(60, 64)]
    public void A_normal_between_two_ends_has_the_moments_of_quadrature(double low, double high)
    {
        // Against the density at the end nearest to the middle, so that nothing is lost far out.
        double at = low > 0 ? low : high < 0 ? high : 0;
        double mass = Integral(_ => 1), mean = Integral(z => z) / mass, variance = Integral(z => (z - mean) * (z - mean)) / mass;
        TruncatedNormal held = TruncatedNormal.Between(low, high);
        Assert.Equal(Math.Log(mass / Math.Sqrt(2 * Math.PI)) - 0.5 * at * at, held.LogMass, 1e-4);
        Assert.Equal(mean, held.Mean, 1e-4 * Math.Sqrt(variance));
        Assert.Equal(variance, held.Variance, 2e-3 * variance);

        double Integral(Func<double, double> of) =>
            Enumerable.Range(0, 64)
                .Sum(k => GaussLegendreRule.Integrate(
                z => of(z) * Math.Exp(0.5 * (at * at - z * z)), low + (high - low) * k / 64, low + (high - low) * (k + 1) / 64, 20));
    }

    private static double Loss(double length, (double C, double Best, double Skew) one)
    {
        double away = length - one.Best;
        return Share * one.C * (away * away + one.Skew * away * Math.Abs(away));
    }

    private static IEnumerable<(double, double, double)> Draw()
    {
        var random = new Random(4);
        for (int k = 0; k < Draws; k++)
        {
            (_, double c, double best, double sd, double skew, double skewSd, double correlation) = Parts[
                random.NextDouble() < Parts[0].Weight ? 0 : 1];
            double first = Normal.Sample(random, 0, 1), second = Normal.Sample(random, 0, 1);
            yield return (c, best + sd * first, skew + skewSd * (correlation * first + Math.Sqrt(1 - correlation * correlation) * second));
        }
    }
}
