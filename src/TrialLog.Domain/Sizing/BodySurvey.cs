using TrialLog.Domain.Log;

namespace TrialLog.Domain.Sizing;

/// <summary>
/// What a large survey of bodies says about seated reach. Every figure is derived from ANSUR II, the 2012 Anthropometric
/// Survey of U.S. Army Personnel, 1,986 women and 4,082 men (Gordon et al. 2014, NATICK/TR-15/007), by
/// <c>tests/reference/sizing/ansur-ii.R</c>; the survey's rows are not part of this project. Seated reach is there the sum
/// of sitting shoulder height, shoulder-elbow and elbow-grip lengths; the survey did not measure it with the arm raised.
/// </summary>
public static class BodySurvey
{
    /// <summary>Mean seated reach in inches, women and men weighted alike.</summary>
    public const double MeanReachInches = 49.82;

    /// <summary>Standard deviation of seated reach in inches, women and men weighted alike.</summary>
    public const double ReachSpreadInches = 2.85;

    /// <summary>Standard deviation of seated reach once stature is known, inches.</summary>
    public const double ReachByStatureSpreadInches = 0.945;

    /// <summary>Mean height of the crown of the head above the eye, inches, women and men weighted alike.</summary>
    public const double CrownAboveEyeInches = 4.38;

    /// <summary>
    /// Least-squares lines for seated reach, both sexes pooled, surest last. No coefficient is negative, so that a longer body
    /// never gets a shorter reach.
    /// </summary>
    public static readonly IReadOnlyList<ReachLine> Lines =
    [
        new(5.0229, 1.392, [(BodyMeasure.EyeHeight, 1.4698)]),
        new(9.8262, 1.387, [(BodyMeasure.SittingShoulderHeight, 1.7515)]),
        new(0.4205, ReachByStatureSpreadInches, [(BodyMeasure.Stature, 0.7420)]),
        new(-1.1284, 0.887, [(BodyMeasure.Stature, 0.5885), (BodyMeasure.EyeHeight, 0.3849)]),
        new(-1.7634, 0.693, [(BodyMeasure.Stature, 0.5266), (BodyMeasure.SittingShoulderHeight, 0.7201)]),
        new(1.1619, 0.489, [(BodyMeasure.SittingShoulderHeight, 1.0055), (BodyMeasure.ShoulderElbow, 1.8642)]),
        new(1.0389, 0.439, [(BodyMeasure.SittingShoulderHeight, 1.1553), (BodyMeasure.ElbowGrip, 1.6969)]),
        new(-0.5774, 0.427, [(BodyMeasure.Stature, 0.1828), (BodyMeasure.SittingShoulderHeight, 0.8441), (BodyMeasure.ShoulderElbow, 1.3728)]),
        new(-0.6039, 0.376, [(BodyMeasure.Stature, 0.1706), (BodyMeasure.SittingShoulderHeight, 0.9644), (BodyMeasure.ElbowGrip, 1.2891)]),
        new(0, 0, [(BodyMeasure.SittingShoulderHeight, 1), (BodyMeasure.ShoulderElbow, 1), (BodyMeasure.ElbowGrip, 1)]),
    ];

    /// <summary>The surest line among those whose measures are all known, tape readings allowed for; null where none is.</summary>
    public static ReachLine? BestLine(BodyMeasures body) => Lines.Where(line => line.IsKnown(body)).MinBy(line => line.SpreadWithReadingsInches);
}

/// <summary>A straight line from some body measures to seated reach.</summary>
/// <param name="InterceptInches">The constant, inches.</param>
/// <param name="SpreadInches">Standard deviation of reach around the line, inches.</param>
/// <param name="Terms">The measures, each with inches of reach per inch.</param>
public sealed record ReachLine(double InterceptInches, double SpreadInches, IReadOnlyList<(BodyMeasure Measure, double PerInch)> Terms)
{
    /// <summary>Error of a seated measure that one takes alone with a tape, inches, one standard deviation. Chosen, no source.</summary>
    public const double TapeSpreadInches = 0.25;

    /// <summary>The spread with the errors of the tape added; stature is mostly known well and counts as exact.</summary>
    public double SpreadWithReadingsInches => Math.Sqrt(SpreadInches * SpreadInches
        + Terms.Where(term => term.Measure != BodyMeasure.Stature).Sum(term => Math.Pow(term.PerInch * TapeSpreadInches, 2)));

    /// <summary>Whether all its measures are known.</summary>
    public bool IsKnown(BodyMeasures body) => Terms.All(term => body[term.Measure] is not null);

    /// <summary>Seated reach in inches.</summary>
    /// <exception cref="InvalidOperationException">One of its measures is unknown.</exception>
    public double ReachInches(BodyMeasures body) =>
        InterceptInches + Terms.Sum(term => term.PerInch * (body[term.Measure] ?? throw new InvalidOperationException($"{term.Measure} is unknown.")).Inches);
}
