using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using TrialLog.Tuning.Checks;
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

    /// <summary>Fits the log of the hull asked for. Never throws for a poor log: what is missing then stands in it.</summary>
    public static ClassicalFit Fit(AnalysisInput question)
    {
        IReadOnlyList<CountedPiece> pieces = CountedPiece.InHull(question);
        if (pieces.Count == 0)
            return Nothing(NoFit.NoPiece, 0, 0, 0);
        PieceDesign design = PieceDesign.Of(pieces);
        if (WhyNot(design) is { } why)
        {
            return Nothing(why, pieces.Count, design.OutingCount, design.CentreInches)
                with
            { Lengths = DifferentLengths(design), Effects = design.Names.Count };
        }

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
            design.CentreInches, fit.GroupSd, fit.ResidualSd, vertex, interval)
        {
            Lengths = DifferentLengths(design),
            Effects = design.Names.Count,
            Omitted = design.Omitted,
        };
    }

    /// <summary>Why no number could be trusted, or null.</summary>
    private static NoFit? WhyNot(PieceDesign design)
    {
        if (DifferentLengths(design) < 3)
            return NoFit.FewLengths;
        if (design.OutingCount < 2)
            return NoFit.OneOuting;
        if (!design.Names.Take(3).SequenceEqual(["level", "length", "length squared"]))
            return NoFit.CloseLengths;
        if (design.DegreesOfFreedom < 1 || design.Pieces.Count <= design.Names.Count + 1)
            return NoFit.FewPieces;
        return design.ResidualInsideOutings() < NoResidualPercent ? NoFit.NoError : null;
    }

    private static int DifferentLengths(PieceDesign design) => design.Lengths.Select(length => Math.Round(length, 3)).Distinct().Count();

    private static ClassicalFit Nothing(NoFit why, int pieces, int outings, double centre) =>
        new(pieces, outings, [], centre, 0, 0, null, null) { NoFit = why };
}
