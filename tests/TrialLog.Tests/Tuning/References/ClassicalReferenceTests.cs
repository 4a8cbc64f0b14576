using System.Text.Json;
using MathNet.Numerics.LinearAlgebra;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Classical;

namespace TrialLog.Tests.Tuning.References;

/// <summary>The classical algorithms against R and NIST. docs/evidence.md says where each reference comes from.</summary>
public class ClassicalReferenceTests(ITestOutputHelper output)
{
    [Fact]
    public void Least_squares_gives_the_certified_digits_of_longley()
    {
        JsonElement data = ReferenceFile.Json("classical/longley.json"), certified = ReferenceFile.Json("classical/longley-certified.json");
        LeastSquares fit = LeastSquares.Fit(data.Design(), Vector<double>.Build.Dense(data.Numbers("y")));
        double[] errors = [.. Enumerable.Range(0, 7).Select(fit.StandardError)];
        output.WriteLine(
            $"largest relative difference: coefficients {Worst(certified.Numbers("coefficients"), fit.Coefficients.ToArray()):0.0e+0}, " +
            $"standard errors {Worst(certified.Numbers("standard_errors"), errors):0.0e+0}");
        Near.All(certified.Numbers("coefficients"), fit.Coefficients.ToArray(), 1e-10, "coefficient");
        Near.All(certified.Numbers("standard_errors"), errors, 1e-10, "standard error");
        Near.One(certified.Number("residual_sd"), Math.Sqrt(fit.ResidualVariance), 1e-11, "residual sd");
    }

    [Fact]
    public void Least_squares_agrees_with_lm()
    {
        JsonElement data = ReferenceFile.Json("classical/longley.json"), lm = data.GetProperty("lm");
        LeastSquares fit = LeastSquares.Fit(data.Design(), Vector<double>.Build.Dense(data.Numbers("y")));
        Near.All(lm.Numbers("coefficients"), fit.Coefficients.ToArray(), 1e-9, "coefficient");
        Near.All(lm.Numbers("standard_errors"), [.. Enumerable.Range(0, 7).Select(fit.StandardError)], 1e-9, "standard error");
    }

    public static TheoryData<string> MixedCases =>
        [.. ReferenceFile.Json("classical/mixed.json").EnumerateArray().Select(item => item.Text("name"))];

    [Theory, MemberData(nameof(MixedCases))]
    public void Reml_agrees_with_lme4_and_nlme(string name)
    {
        JsonElement data = ReferenceFile.Json("classical/mixed.json").EnumerateArray().Single(item => item.Text("name") == name);
        RandomInterceptReml fit = RandomInterceptReml.Fit(
            data.Design(), Vector<double>.Build.Dense(data.Numbers("y")), [.. data.Numbers("group").Select(group => (int)group)]);
        JsonElement lme4 = data.GetProperty("lme4"), nlme = data.GetProperty("nlme");
        output.WriteLine(
            $"lme4: group sd {Near.Relative(lme4.Number("group_sd"), fit.GroupSd):0.0e+0}, criterion " +
            $"{Near.Relative(lme4.Number("criterion"), fit.Criterion):0.0e+0}; nlme: group sd " +
            $"{Near.Relative(nlme.Number("group_sd"), fit.GroupSd):0.0e+0}");

        double[] errors = [.. Enumerable.Range(0, fit.Coefficients.Count).Select(fit.StandardError)];
        Near.All(lme4.Numbers("coefficients"), fit.Coefficients.ToArray(), 1e-7, "coefficient");
        Near.All(lme4.Numbers("standard_errors"), errors, 1e-7, "standard error");
        Near.One(lme4.Number("residual_sd"), fit.ResidualSd, 1e-7, "residual sd");
        Near.One(lme4.Number("criterion"), fit.Criterion, 1e-12, "criterion");
        // No search may find a smaller criterion than ours; nlme's stops a little short.
        Assert.True(fit.Criterion <= nlme.Number("criterion") + 1e-9);
        if (lme4.Number("group_sd") == 0)
        {
            Assert.Equal(0, fit.GroupSd);
            return;
        }

        Near.One(lme4.Number("group_sd"), fit.GroupSd, 1e-7, "group sd");
        Near.One(nlme.Number("group_sd"), fit.GroupSd, 1e-6, "group sd by nlme");
        Near.All(nlme.Numbers("coefficients"), fit.Coefficients.ToArray(), 1e-6, "coefficient by nlme");
    }

    [Fact]
    public void Fieller_agrees_with_the_roots_found_by_bracketing()
    {
        foreach (JsonElement item in ReferenceFile.Json("classical/fieller.json").EnumerateArray())
        {
            FiellerInterval interval = Fieller.Of(
                item.Number("a"), item.Number("b"), item.Number("va"), item.Number("vb"), item.Number("cov"), item.Number("t"), 0.9);
            Assert.Equal(item.Text("shape"), interval.Shape.ToString());
            if (interval.Shape != FiellerShape.Everything)
                Near.All(item.Numbers("roots"), [interval.Low, interval.High], 1e-9, "root");
        }
    }

    [Theory]
    [InlineData(0), InlineData(1), InlineData(2), InlineData(3)]
    public void The_classical_view_of_a_logbook_agrees_with_R(int index)
    {
        JsonElement expected = ReferenceFile.Json("classical/logbooks.json")[index], lme4 = expected.GetProperty("lme4");
        ClassicalFit fit = ClassicalAnalysis.Fit(
            ReferenceLogbook.Read(expected.Text("logbook"), expected.Text("hull"), Length.FromInches(50)));
        output.WriteLine($"{fit.Vertex}");

        Near.One(expected.Number("centre"), fit.CentreInches, 1e-12, "centre");
        Near.All(lme4.Numbers("coefficients"), [.. fit.Coefficients.Select(coefficient => coefficient.Estimate)], 1e-7, "coefficient");
        Near.All(lme4.Numbers("standard_errors"), [.. fit.Coefficients.Select(coefficient => coefficient.StandardError)], 1e-7,
            "standard error");
        Near.One(lme4.Number("group_sd"), fit.OutingSd, 1e-6, "outing sd");
        Near.One(lme4.Number("residual_sd"), fit.PieceSd, 1e-7, "piece sd");
        Assert.Equal(expected.Text("shape"), fit.Vertex!.Shape.ToString());
        if (fit.Coefficients[2].Estimate < 0)
            Near.One(expected.Number("vertex"), fit.VertexInches!.Value, 1e-7, "vertex");
        else
            Assert.Null(fit.VertexInches);
        if (fit.Vertex.Shape != FiellerShape.Everything)
            Near.All(expected.Numbers("roots"), [fit.Vertex.Low, fit.Vertex.High], 1e-7, "root");
    }

    private static double Worst(double[] expected, IReadOnlyList<double> actual) =>
        expected.Select((value, at) => Near.Relative(value, actual[at])).Max();
}
