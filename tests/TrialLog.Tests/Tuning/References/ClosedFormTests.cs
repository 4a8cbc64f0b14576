using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Model;

namespace TrialLog.Tests.Tuning.References;

/// <summary>
/// With the curvature and the spreads given, θ² goes into the hull's level and the rest is linear in θ, so that the posterior
/// is normal and can be reckoned another way.
/// </summary>
public class ClosedFormTests
{
    private const double C = 0.4, Tau = 2.5, Sigma = 1.1, Prior = 0.8, HullSpread = 0.35;

    private static readonly TuningSettings AllGiven = new()
    {
        CurvatureMedian = C, CurvatureLogSpread = 1e-5, DurationSpreadInches = 1e-7, OutingMedian = Tau, OutingLogSpread = 1e-5,
        PieceMedian = Sigma, PieceLogSpread = 1e-5, DegreesOfFreedom = double.PositiveInfinity, StartOutlierShare = 0,
        TimingErrorSeconds = 0, DistanceErrorMetres = 0, HullSpreadInches = HullSpread, SkewSpread = 0, FlatShare = 0,
        BladeSpreadPerInch = 0, UnpaddledHullFactor = 1, UntoldEffortMedian = 1e-6,
    };

    [Fact]
    public void One_mirrored_outing_gives_the_posterior_reckoned_by_hand()
    {
        // Lengths 0.5 in either side of the start, A B B A: the order cancels, the outing's level takes up the rest.
        double[] aligned = [-0.5, 0.5, 0.5, -0.5], percent = [0.3, 1.6, 0.9, -0.4];
        AnalysisInput question = LogOf.Rows(aligned.Zip(percent, (x, y) => new Row(0, 50 + x, y))) with { Settings = AllGiven };
        double prior = Prior * Prior;
        double slopes = aligned.Sum(x => 4 * C * C * x * x) / (Sigma * Sigma);
        double pull = aligned.Zip(percent, (x, y) => 2 * C * x * y).Sum() / (Sigma * Sigma);
        double precision = 1 / prior + slopes;

        Posterior posterior = Fit.Of(question).Posterior;

        Assert.Equal(pull / precision, posterior.Mean, 1e-3 / Math.Sqrt(precision));
        Assert.Equal(1 / Math.Sqrt(precision), HalfWidth(posterior), 1e-3 / Math.Sqrt(precision));
    }

    [Fact]
    public void Any_log_gives_the_posterior_of_the_normal_equations()
    {
        Gen<Row> row = Gen.Select(Gen.Int[0, 4], Gen.Int[-8, 8], Gen.Double[-5, 5], Gen.Int[0, 8], Gen.Int[0, 3],
            (outing, quarters, percent, halves, course) => new Row(outing, 50 + quarters / 4.0, percent, 4 + halves / 2.0)
            {
                Hull = outing % 2, Course = (Course)course, Paddle = course % 2, Metres = 500 * (1 + course),
            });
        row.Array[1, 24].Sample(rows =>
        {
            AnalysisInput question = LogOf.Rows(rows) with { Settings = AllGiven };
            (double mean, double sd) = NormalEquations(question);
            Posterior posterior = Fit.Of(question).Posterior;
            Assert.Equal(mean, posterior.Mean, 2e-3 * sd);
            Assert.Equal(sd, HalfWidth(posterior), 2e-3 * sd);
        }, iter: 100);
    }

    private static double HalfWidth(Posterior posterior) =>
        (posterior.Quantile(0.8413447460685429) - posterior.Quantile(0.1586552539314571)) / 2;

    /// <summary>All effects in one dense system: hull levels, covariates, outings, wind along the course, and θ in each hull.</summary>
    private static (double Mean, double Sd) NormalEquations(AnalysisInput question)
    {
        (Outing Outing, Piece Piece)[] pieces = [.. question.Outings.SelectMany(outing => outing.Pieces.Select(piece => (outing, piece)))];
        Hull[] hulls = [question.Hull,
            .. question.Hulls.Where(hull => hull.Id != question.Hull.Id && question.Outings.Any(outing => outing.HullId == hull.Id))];
        var alignment = new Alignment(Length.FromInches(50), question.Hulls);
        DateOnly first = question.Outings.Min(outing => outing.Date);
        List<(double[] Column, double Mean, double Variance)> effects = [];
        foreach (Hull hull in hulls)
            Add(piece => piece.Outing.HullId == hull.Id ? 1 : 0, 0, 1e7);
        foreach (Outing outing in question.Outings)
        {
            Add(piece => piece.Outing.Id == outing.Id ? 1 : 0, 0, Tau * Tau);
            Add(piece => piece.Outing.Id != outing.Id ? 0
                : piece.Piece.Course switch { Course.Out => 1, Course.Back => -1, _ => 0 }, 0, 100);
        }

        Add(piece => piece.Piece.Order, -0.3, 0.25);
        Add(piece => piece.Piece.Effort!.Value.Points, 3, 2.25);
        Add(piece => Math.Log(piece.Piece.Distance.Metres / 1000), -6, 9);
        Add(piece => (piece.Outing.Date.DayNumber - first.DayNumber) / 7.0, 0, 0.09);
        int best = effects.Count;
        Add(_ => 0, 0, Prior * Prior - HullSpread * HullSpread);
        foreach (Hull hull in hulls)
            Add(piece => piece.Outing.HullId == hull.Id ? Slope(piece) : 0, 0, HullSpread * HullSpread);
        effects[best] = ([.. pieces.Select(Slope)], 0, Prior * Prior - HullSpread * HullSpread);

        var design = Matrix<double>.Build.DenseOfColumnArrays(effects.Select(effect => effect.Column));
        var priorMean = Vector<double>.Build.DenseOfEnumerable(effects.Select(effect => effect.Mean));
        var precision = Matrix<double>.Build.DenseOfDiagonalArray([.. effects.Select(effect => 1 / effect.Variance)]);
        var response = Vector<double>.Build.DenseOfEnumerable(pieces.Select(piece =>
            100 * Math.Log(piece.Piece.MetresPerSecond / 3) + Share(piece) * C * Math.Pow(Aligned(piece), 2)));
        Matrix<double> whole = precision + design.TransposeThisAndMultiply(design) / (Sigma * Sigma);
        Matrix<double> covariance = whole.Inverse();
        Vector<double> mean = priorMean + covariance * (design.TransposeThisAndMultiply(response - design * priorMean) / (Sigma * Sigma));
        int own = best + 1;
        return (mean[best] + mean[own], Math.Sqrt(covariance[best, best] + covariance[own, own] + 2 * covariance[best, own]));

        void Add(Func<(Outing Outing, Piece Piece), double> value, double mean, double variance) =>
            effects.Add(([.. pieces.Select(value)], mean, variance));

        Hull HullOf((Outing Outing, Piece Piece) piece) => question.Hulls.Single(hull => hull.Id == piece.Outing.HullId);
        double Share((Outing Outing, Piece Piece) piece) => 1.0 / HullOf(piece).Crew;
        double Aligned((Outing Outing, Piece Piece) piece) =>
            alignment.Align(piece.Piece.Length, HullOf(piece), question.Paddles.Single(paddle => paddle.Id == piece.Piece.PaddleId).Blade);
        double Slope((Outing Outing, Piece Piece) piece) => 2 * Share(piece) * C * Aligned(piece);
    }
}
