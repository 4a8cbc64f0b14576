using System.Globalization;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning.Checks;
using TrialLog.Tuning.Classical;

namespace TrialLog.Application.Wording;

/// <summary>The classical view in words: the vertex and the shape of its interval, or why there is none.</summary>
internal static class ClassicalWords
{
    /// <summary>The vertex, or that the parabola bends the wrong way; how sure that is; then what the fit does without.</summary>
    public static string Of(ClassicalFit fit, Hull hull, LengthUnit unit) => fit switch
    {
        { NoFit: { } why } => WhyNone(fit, why, hull),
        { Vertex: { } interval } => Vertex(fit.VertexInches, interval, unit) + Without(fit.Omitted),
        _ => "",
    };

    private static string WhyNone(ClassicalFit fit, NoFit why, Hull hull) => why switch
    {
        NoFit.NoPiece => $"No piece in {Quoted.Visible(hull.Name)} counts yet, so there is nothing to fit.",
        NoFit.FewLengths => $"A parabola needs pieces at three lengths or more; there {(fit.Lengths == 1 ? "is one" : "are two")}.",
        NoFit.OneOuting => "The mixed model needs two outings or more, to tell outings apart from pieces; there is one.",
        NoFit.CloseLengths => "The lengths lie too close together for a parabola.",
        NoFit.FewPieces => $"{Say.Count(fit.Pieces, "piece")} in {Say.Count(fit.Outings, "outing")} are too few for {fit.Effects} " +
            "effects; nothing is left over to judge the error by.",
        _ => "The pieces differ by no more than the effects explain, to the last digit, so there is no error to judge by.",
    };

    private static string Vertex(double? vertexInches, FiellerInterval interval, LengthUnit unit)
    {
        string level = Say.Chance(interval.Level), low = Inches(interval.Low, unit), high = Inches(interval.High, unit);
        string place = vertexInches is { } vertex
            ? $"Without a prior the best length comes out at {Inches(vertex, unit)}"
            : "The parabola bends the wrong way, slowest in the middle, so it has no best length";
        return interval.Shape switch
        {
            FiellerShape.Bounded when vertexInches is not null => $"{place}, with a {level} confidence interval from {low} to {high}.",
            FiellerShape.Bounded => $"{place}; a curve so clearly upside down points to lengths tangled with something else.",
            FiellerShape.Outside => $"{place}. The {level} confidence set is open-ended on both sides: anything below {low} or above " +
                $"{high}, because the bend could as well be none.",
            _ => $"{place}. The {level} confidence set is every length there is: these pieces alone say nothing about it.",
        };
    }

    private static string Without(IReadOnlyList<OmittedTerm> terms) => terms.Count == 0 ? ""
        : $" Omitted: {string.Join("; ", terms.Select(term => term.Why switch
        {
            Omitted.NotTold => $"{term.Name}, which was not told",
            Omitted.PartlyTold => $"{term.Name} of {term.Missing} of {term.Of} pieces, taken as the mean of the others",
            Omitted.NeverVaried => $"{term.Name}, which never varied",
            _ => $"{term.Name}, which cannot be told apart from the others",
        }))}.";

    // Lengths far off only say "far off", and need no tenth.
    private static string Inches(double inches, LengthUnit unit)
    {
        double value = unit == LengthUnit.Centimetres ? inches * 2.54 : inches;
        string digits = value.ToString(Math.Abs(inches) is > 20 and < 100 ? "0.0" : "0", CultureInfo.InvariantCulture);
        return $"{digits.Replace('-', '\u2212')} {Say.Symbol(unit)}";
    }
}
