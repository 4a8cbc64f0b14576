using System.Text.Json;
using TrialLog.Domain.Values;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning.References;

/// <summary>
/// The closed form of the heart-rate model against JAGS, where every effort is a number of its own. What is left is that V stands at its
/// most probable value, that ρ has three values, and, with heavy tails, the approximation of their weights.
/// </summary>
public class HeartRateReferenceTests(ITestOutputHelper output)
{
    private static readonly JsonElement Reference = ReferenceFile.Json("posterior/heart.json");

    public static TheoryData<string, string> Runs =>
        [.. Reference.GetProperty("runs").EnumerateArray().Select(run => (run.Text("logbook"), run.Text("noise")))];

    [Theory, MemberData(nameof(Runs))]
    public void The_best_length_agrees_with_JAGS(string logbook, string noise)
    {
        JsonElement run = Reference.GetProperty("runs").EnumerateArray()
            .Single(one => one.Text("logbook") == logbook && one.Text("noise") == noise);
        AnalysisInput input = ReferenceLogbook.Read(logbook, "OC1", Length.FromInches(50));
        Fit fit = Fit.Of(
            input with { Settings = new() { DegreesOfFreedom = noise == "t4" ? 4 : double.PositiveInfinity, StartSpreadInches = 0.8 } });
        (double mean, double variance) = (
            fit.Posterior.Mean, Math.Pow((fit.Posterior.Quantile(0.95) - fit.Posterior.Quantile(0.05)) / 3.29, 2));
        double sd = run.Number("sd"), range = Reference.Numbers("levels") is [0.05, .., 0.95]
            ? run.Numbers("quantiles")[^1] - run.Numbers("quantiles")[0] : double.NaN;
        output.WriteLine(
            $"{logbook} {noise}: mean {mean:0.000} for {run.Number("mean"):0.000} ± {run.Number("mean_mcse"):0.000} " +
            $"({(mean - run.Number("mean")) / sd:0.00} sd), range {3.29 * Math.Sqrt(variance):0.000} for {range:0.000}, untold effort " +
            $"{fit.Effort!.UntoldSd:0.00} for {run.Number("omega"):0.00}");
        Assert.InRange(mean, run.Number("mean") - 0.12 * sd, run.Number("mean") + 0.12 * sd);
        Assert.InRange(3.29 * Math.Sqrt(variance), 0.94 * range, 1.07 * range);
        Assert.InRange(fit.Effort!.UntoldSd!.Value, 0.6 * run.Number("omega"), 1.6 * run.Number("omega"));
    }
}
