using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Classical;

/// <summary>
/// The classical view, for the coach who wants to see the log without a prior: a parabola in length with a random
/// intercept for each outing, by REML, and its vertex with Fieller's interval. One hull.
/// </summary>
public static class ClassicalAnalysis
{
    /// <summary>Confidence of the interval for the vertex.</summary>
    public const double Level = 0.9;

    /// <summary>
    /// Residuals smaller than this, in percent of speed, are the rounding of the arithmetic: a log without any
    /// variation has no errors to reckon with.
    /// </summary>
    private const double NoResidualPercent = 1e-6;

    /// <summary>Fits the log of the hull asked for. Never throws for a poor log: the sentence then says what is missing.</summary>
    public static ClassicalFit Fit(AnalysisInput question)
    {
        IReadOnlyList<CountedPiece> pieces = CountedPiece.InHull(question);
        if (pieces.Count == 0)
            return Nothing(0, 0, 0, $"No piece in {question.Hull.Name} counts yet, so there is nothing to fit.");
        PieceDesign design = PieceDesign.Of(pieces);
        if (WhyNot(design) is { } why)
            return Nothing(pieces.Count, design.OutingCount, design.CentreInches, why);

        RandomInterceptReml fit = RandomInterceptReml.Fit(design.Columns, Vector<double>.Build.Dense(design.Speeds), design.Groups);
        int degrees = design.DegreesOfFreedom;
        double linear = fit.Coefficients[1], bend = fit.Coefficients[2];
        FiellerInterval fromCentre = Fieller.Of(
            -linear, 2 * bend, fit.Covariance[1, 1], 4 * fit.Covariance[2, 2], -2 * fit.Covariance[1, 2],
            StudentT.InvCDF(0, 1, degrees, 0.5 + Level / 2), Level);
        FiellerInterval interval = fromCentre
            with
        { Low = design.CentreInches + fromCentre.Low, High = design.CentreInches + fromCentre.High };
        double? vertex = bend < 0 && double.IsFinite(linear / bend) ? design.CentreInches - linear / (2 * bend) : null;
        return new(
            pieces.Count, design.OutingCount,
            [.. design.Names.Select((name, column) => new Coefficient(name, fit.Coefficients[column], fit.StandardError(column)))],
            design.CentreInches, fit.GroupSd, fit.ResidualSd, vertex, interval,
            VertexSentence.For(vertex, interval, question.Paddler.Unit) + VertexSentence.LeftOut(design.LeftOut));
    }

    /// <summary>Why no number could be trusted, or null.</summary>
    private static string? WhyNot(PieceDesign design)
    {
        int lengths = design.Lengths.Select(length => Math.Round(length, 3)).Distinct().Count();
        if (lengths < 3)
            return $"A parabola needs pieces at three lengths or more; there {(lengths == 1 ? "is one" : "are two")}.";
        if (design.OutingCount < 2)
            return "The mixed model needs two outings or more, to tell outings apart from pieces; there is one.";
        if (!design.Names.Take(3).SequenceEqual(["level", "length", "length squared"]))
            return "The lengths lie too close together for a parabola.";
        if (design.DegreesOfFreedom < 1 || design.Pieces.Count <= design.Names.Count + 1)
            return $"{design.Pieces.Count} pieces in {design.OutingCount} outings are too few for {design.Names.Count} effects; nothing " +
                $"is left over to judge the error by.";
        return design.ResidualInsideOutings() < NoResidualPercent
            ? "The pieces differ by no more than the effects explain, to the last digit, so there is no error to reckon with."
            : null;
    }

    private static ClassicalFit Nothing(int pieces, int outings, double centre, string why) =>
        new(pieces, outings, [], centre, 0, 0, null, null, why);
}
