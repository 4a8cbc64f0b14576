using MathNet.Numerics.Distributions;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning.References;

/// <summary>
/// Draw everything from the prior, simulate a log, and ask where the truth lies in the posterior: uniformly, if the
/// posterior is right. Source: Cook, Gelman and Rubin 2006, J Comput Graph Stat 15(3):675-92; Talts et al. 2018,
/// arXiv:1804.06788. Uniformity by the Kolmogorov-Smirnov statistic.
/// </summary>
public class SimulationBasedRankingTests(ITestOutputHelper output)
{
    /// <summary>How many logs; the environment variable is for the longer run that docs/evidence.md tells of.</summary>
    private static readonly int Logs =
        int.TryParse(Environment.GetEnvironmentVariable("TRIALLOG_RANKING_LOGS"), out int logs) ? logs : 300;

    /// <summary>
    /// D of 300 uniform ranks is below this 99 times in 100 (Kolmogorov's limit distribution, 1.63 / √300). It stays for more logs,
    /// where the approximation of the heavy tails begins to show.
    /// </summary>
    private const double Limit = 0.094;

    /// <summary>Effort that was told as it was.</summary>
    private const double NothingUntold = 1e-6;

    public static TheoryData<double, double, double> Models => new()
    {
        { double.PositiveInfinity, 0, NothingUntold }, { 4, 0, NothingUntold }, { 4, TuningSettings.Default.SkewSpread, NothingUntold },
        { double.PositiveInfinity, TuningSettings.Default.SkewSpread, TuningSettings.Default.UntoldEffortMedian },
    };

    [Theory, MemberData(nameof(Models))]
    public void The_truth_ranks_uniformly_in_the_posterior(double degreesOfFreedom, double skew, double untold)
    {
        TuningSettings world = new() { DegreesOfFreedom = degreesOfFreedom, SkewSpread = skew, UntoldEffortMedian = untold };
        Ranks ranks = Run(world, world);
        output.WriteLine(ranks.ToString());
        Assert.True(ranks.Best.Unevenness < Limit, $"θ: {ranks}");
        Assert.True(ranks.Curvature.Unevenness < Limit, $"c: {ranks}");
        Assert.True(ranks.Noise.Unevenness < Limit, $"σ: {ranks}");
    }

    [Fact]
    public void A_model_that_believes_in_a_third_of_the_noise_is_found_out()
    {
        TuningSettings world = new()
        {
            PieceLogSpread = 0.05, PieceMedian = 1.1, CurvatureMedian = 1, FlatShare = 0, SkewSpread = 0,
            StartOutlierShare = 0.1, UntoldEffortMedian = NothingUntold
        };
        Ranks wrong = Run(world, world with { PieceMedian = world.PieceMedian / 3 });
        output.WriteLine(wrong.ToString());
        Assert.True(wrong.Best.Unevenness > Limit, $"θ: {wrong}");
        Assert.True(wrong.Noise.Unevenness > Limit, $"σ: {wrong}");
    }

    /// <summary>The ranks of the truth in each parameter's posterior.</summary>
    private sealed record Ranks(Uniformity Best, Uniformity Curvature, Uniformity Noise)
    {
        public override string ToString() => $"{Logs} logs; θ: {Best}; c: {Curvature}; σ: {Noise}";
    }

    /// <summary>How uniform ranks are: Kolmogorov's D, their mean (½ if all is right), and how many the central 90 % range held.</summary>
    private sealed record Uniformity(double Unevenness, double Mean, double Held)
    {
        public static Uniformity Of(double[] ranks) => new(
            // The first sees a posterior that is off to one side; the second, by the distance from the middle, one that is too narrow or
            // too wide.
            Math.Max(Distance(ranks), Distance([.. ranks.Select(rank => Math.Abs(2 * rank - 1))])),
            ranks.Average(), ranks.Average(rank => rank is > 0.05 and < 0.95 ? 1.0 : 0));

        public override string ToString() => $"D {Unevenness:0.000}, mean {Mean:0.000}, range held {Held:0.000}";

        private static double Distance(double[] ranks)
        {
            double[] sorted = [.. ranks.Order()];
            return sorted.Select((rank, at) => Math.Max(rank - (double)at / sorted.Length, (at + 1.0) / sorted.Length - rank)).Max();
        }
    }

    private static Ranks Run(TuningSettings world, TuningSettings believed)
    {
        var random = new Random(20260303);
        double[] best = new double[Logs], curvature = new double[Logs], noise = new double[Logs];
        for (int log = 0; log < Logs; log++)
        {
            (AnalysisInput question, double theta, double c, double sigma) = Simulate(world, random);
            Posterior posterior = Fit.Of(question with { Settings = believed }).Posterior;
            best[log] = posterior.Below(theta);
            curvature[log] = Below(posterior.LogCurvature, Math.Log(c));
            noise[log] = Below(posterior.LogPiece, Math.Log(sigma));
        }

        return new(Uniformity.Of(best), Uniformity.Of(curvature), Uniformity.Of(noise));
    }

    /// <summary>Three mirrored outings of four pieces of a kilometre, solo, everything drawn from the prior.</summary>
    private static (AnalysisInput Question, double Theta, double C, double Sigma) Simulate(TuningSettings world, Random random)
    {
        double wide = random.NextDouble() < world.StartOutlierShare ? world.StartOutlierFactor : 1;
        double theta = Normal(0.8 * wide);
        double flat = random.NextDouble() < world.FlatShare ? world.FlatFactor : 1;
        double c = flat * world.CurvatureMedian * Math.Exp(Normal(world.CurvatureLogSpread)), kappa = Normal(world.DurationSpreadInches);
        double tau = world.OutingMedian * Math.Exp(Normal(world.OutingLogSpread)),
            sigma = world.PieceMedian * Math.Exp(Normal(world.PieceLogSpread));
        double order = world.OrderMean + Normal(world.OrderSpread), trend = Normal(world.TrendSpread);
        double perPoint = world.EffortMean + Normal(world.EffortSpread),
            omega = world.UntoldEffortMedian * Math.Exp(Normal(world.UntoldEffortLogSpread));
        while (perPoint < 0.02 * world.EffortMean)
            perPoint = world.EffortMean + Normal(world.EffortSpread);
        double untold = perPoint * omega;
        double skew = Normal(world.SkewSpread);
        while (Math.Abs(skew) > world.SkewLimit)
            skew = Normal(world.SkewSpread);
        List<Row> rows = [];
        List<double> logDurations = [];
        for (int outing = 0; outing < 3; outing++)
        {
            double level = Normal(tau);
            for (int piece = 0; piece < 4; piece++)
            {
                double aligned = (piece is 0 or 3 ? -1 : 1) * (outing % 2 == 0 ? 0.75 : -1);
                const double Seconds = 1000 / 3.0;
                double known = Math.Pow(100 * world.TimingErrorSeconds / Seconds, 2) + Math.Pow(100 * world.DistanceErrorMetres / 1000, 2);
                double noise = Math.Sqrt(sigma * sigma + known)
                    * (double.IsFinite(world.DegreesOfFreedom) ? StudentT.Sample(random, 0, 1, world.DegreesOfFreedom) : Normal(1))
                        + Normal(untold);
                double t = Math.Log(Seconds / world.ReferenceSeconds), off = aligned - theta - kappa * t;
                double percent = level + order * piece + trend * outing * 5 / 7
                    - c * (off * off + skew * (aligned - theta) * Math.Abs(aligned - theta)) + noise;
                rows.Add(new(outing, 50 + aligned, percent));
                logDurations.Add(t - percent / 100);
            }
        }

        logDurations.Sort();
        double goal = 0.5 * (logDurations[5] + logDurations[6]);
        return (LogOf.Rows(rows), theta + kappa * goal, c, Math.Sqrt(sigma * sigma + untold * untold));

        double Normal(double spread) => spread * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
    }

    /// <summary>Probability below a value; each grid value stands for the cell around it.</summary>
    private static double Below(Marginal marginal, double value)
    {
        double step = marginal.Values[1] - marginal.Values[0];
        return marginal.Values.Zip(marginal.Probabilities, (at, p) => p * Math.Clamp((value - at) / step + 0.5, 0, 1)).Sum();
    }
}
