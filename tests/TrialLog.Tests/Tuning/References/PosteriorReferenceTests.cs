using System.Text.Json;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning.References;

/// <summary>The posterior against long chains of JAGS on the sample logbooks. docs/evidence.md tells the measured agreement.</summary>
public class PosteriorReferenceTests(ITestOutputHelper output)
{
    private static readonly JsonElement Reference = ReferenceFile.Json("posterior/posterior.json");

    /// <summary>The priors of tests/reference/posterior/model.jags, which are the defaults today and need not stay so.</summary>
    private static readonly TuningSettings Priors = new()
    {
        StartSpreadInches = 0.8, StartOutlierShare = 0.2, StartOutlierFactor = 2.5, CurvatureMedian = 0.65, CurvatureLogSpread = 0.7,
        FlatShare = 0.16, FlatFactor = 0.12, SkewSpread = 0.33, SkewLimit = 0.6, UntoldEffortMedian = 0.5, UntoldEffortLogSpread = 0.8,
        DurationSpreadInches = 0.15, HullSpreadInches = 0.35, OutingMedian = 2.5, OutingLogSpread = 0.7,
        PieceMedian = 0.9, PieceLogSpread = 0.6, OrderMean = -0.3, OrderSpread = 0.5, EffortMean = 3, EffortSpread = 1.5,
        DistanceMean = -6, DistanceSpread = 3, TrendSpread = 0.3, TimingErrorSeconds = 0.5, DistanceErrorMetres = 2, ReferenceSeconds = 300,
    };

    /// <summary>
    /// How far a mean or quantile may lie from that of the chains, beside four Monte Carlo errors, as a share of the posterior's
    /// standard deviation. With normal noise what is left is the grid; with heavy tails, the approximation of their weights.
    /// </summary>
    private static double Allowed(string noise, string what) => (noise, what) switch
    {
        // The chains let the lopsided part stand around θ itself, the engine around the middle of its posterior (docs/model.md).
        ("normal", "best") => 0.06,
        ("normal", "ln c") => 0.12,
        ("normal", _) => 0.03,
        (_, "best") => 0.15,
        _ => 0.35,
    };

    public static TheoryData<string, string> Runs =>
        [.. Reference.GetProperty("runs").EnumerateArray().Where(run => !IsOneSided(run.Text("logbook")))
            .Select(run => (run.Text("logbook"), run.Text("noise")))];

    public static TheoryData<string, string> OneSidedRuns =>
        [.. Reference.GetProperty("runs").EnumerateArray().Where(run => IsOneSided(run.Text("logbook")))
            .Select(run => (run.Text("logbook"), run.Text("noise")))];

    private static bool IsOneSided(string logbook) => logbook.StartsWith("one-sided", StringComparison.Ordinal);

    [Theory, MemberData(nameof(Runs))]
    public void The_posterior_agrees_with_JAGS(string logbook, string noise)
    {
        JsonElement run = Reference.GetProperty("runs").EnumerateArray()
            .Single(one => one.Text("logbook") == logbook && one.Text("noise") == noise);
        string[] hulls = [.. run.GetProperty("hulls").EnumerateArray().Select(hull => hull.GetString()!)];
        for (int at = 0; at < hulls.Length; at++)
        {
            AnalysisInput question = ReferenceLogbook.Read(logbook, hulls[at], Length.FromInches(run.Number("start")));
            question = question with { Settings = Priors with { DegreesOfFreedom = noise == "t4" ? 4 : double.PositiveInfinity } };
            Posterior posterior = Fit.Of(question).Posterior;
            Compare(noise, "best", run.GetProperty("best")[at], posterior.Mean, posterior.Quantile);
            if (at > 0)
                continue;
            Compare(noise, "ln c", run.GetProperty("ln_c"), posterior.LogCurvature);
            Compare(noise, "kappa", run.GetProperty("kappa"), posterior.DurationEffect);
            Compare(noise, "ln tau", run.GetProperty("ln_tau"), posterior.LogOuting);
            Compare(noise, "ln sigma", run.GetProperty("ln_sigma"), posterior.LogPiece);
        }
    }

    /// <summary>
    /// A log whose curve leans on the end of what lopsidedness may be, and the same four times over: the range narrows to a quarter, as in
    /// the chains. There the top that the lopsided part stands around costs up to 0.06 in, a good part of a range of a third of an inch.
    /// </summary>
    [Theory, MemberData(nameof(OneSidedRuns))]
    public void A_one_sided_curve_narrows_as_in_JAGS(string logbook, string noise)
    {
        JsonElement run = Reference.GetProperty("runs").EnumerateArray()
            .Single(one => one.Text("logbook") == logbook && one.Text("noise") == noise);
        AnalysisInput question = ReferenceLogbook.Read(logbook, "OC1", Length.FromInches(run.Number("start")));
        Posterior posterior = Fit.Of(question with
        {
            Settings = Priors with { DegreesOfFreedom = noise == "t4" ? 4 : double.PositiveInfinity },
        }).Posterior;
        JsonElement best = run.GetProperty("best")[0];
        double[] quantiles = best.Numbers("quantiles");
        double width = posterior.Quantile(0.95) - posterior.Quantile(0.05), chains = quantiles[^1] - quantiles[0];
        output.WriteLine($"mean {posterior.Mean:0.000} ({best.Number("mean"):0.000}), 90 % range {width:0.000} ({chains:0.000})");
        Assert.Equal(best.Number("mean"), posterior.Mean, 0.07);
        Assert.InRange(width / chains, 0.88, 1.12);
    }

    private void Compare(string noise, string what, JsonElement expected, Marginal actual) =>
        Compare(noise, what, expected, actual.Mean(value => value), actual.Quantile);

    private void Compare(string noise, string what, JsonElement expected, double mean, Func<double, double> quantile)
    {
        double sd = expected.Number("sd");
        double[] levels = Reference.Numbers("levels"), quantiles = expected.Numbers("quantiles"),
            errors = expected.Numbers("quantiles_mcse");
        (string Name, double Actual, double Expected, double Error)[] all =
        [
            ("mean", mean, expected.Number("mean"), expected.Number("mean_mcse")),
            .. levels.Select((level, at) => ($"{level:0.00}", quantile(level), quantiles[at], errors[at])),
        ];
        output.WriteLine(
            $"{what,-9}"
            + string.Concat(
            all.Select(one => $" {one.Name}: {one.Actual,7:0.000} ({one.Expected,7:0.000} ± {one.Error:0.000}, " +
            $"{(one.Actual - one.Expected) / sd,5:0.00} sd)")));
        Assert.All(all, one => Assert.True(
            Math.Abs(one.Actual - one.Expected) <= 4 * one.Error + Allowed(noise, what) * sd,
            $"{what} {one.Name}: {one.Actual:0.0000} where {one.Expected:0.0000} ± {one.Error:0.0000} was expected, sd {sd:0.000}"));
    }
}
