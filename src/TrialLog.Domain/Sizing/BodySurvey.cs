using TrialLog.Domain.Log;

namespace TrialLog.Domain.Sizing;

/// <summary>
/// What a large survey of bodies says about seated reach, to the middle of the palm of the arm raised straight up. Every figure is
/// derived from ANSUR II, the 2012 Anthropometric Survey of U.S. Army Personnel, 1,986 women and 4,082 men (Gordon et al. 2014,
/// NATICK/TR-15/007), by <c>tests/reference/sizing/ansur-ii.R</c>; the survey's rows are not part of this project. It measured the
/// fingertip of the raised arm above the seat, the hand and the palm; the reach is fingertip − hand + palm / 2.
/// </summary>
public static class BodySurvey
{
    /// <summary>Mean seated reach in inches, women and men weighted alike.</summary>
    public const double MeanReachInches = 48.71;

    /// <summary>Standard deviation of seated reach in inches, women and men weighted alike.</summary>
    public const double ReachSpreadInches = 3.22;

    /// <summary>Mean height of the crown of the head above the eye, inches, women and men weighted alike.</summary>
    public const double CrownAboveEyeInches = 4.38;

    /// <summary>The smallest of each measure in the survey, inches: below it nothing is known.</summary>
    public static readonly IReadOnlyDictionary<BodyMeasure, double> SmallestInches = new Dictionary<BodyMeasure, double>
    {
        [BodyMeasure.SeatedReach] = 39.49,
        [BodyMeasure.Stature] = 55.47,
        [BodyMeasure.SittingShoulderHeight] = 18.74,
        [BodyMeasure.ShoulderElbow] = 10.67,
        [BodyMeasure.ElbowGrip] = 10.16,
        [BodyMeasure.EyeHeight] = 25.75,
        [BodyMeasure.ShoulderBreadth] = 11.14,
        [BodyMeasure.ArmSpan] = 52.09,
        [BodyMeasure.OverheadReach] = 43.74,
        [BodyMeasure.HandLength] = 5.71,
        [BodyMeasure.PalmLength] = 3.46,
    };

    /// <summary>
    /// Least-squares lines for seated reach, women and men pooled, the one that leaves least last. No coefficient is negative, so that
    /// a longer body never gets a shorter reach; the hand in the last line only takes off what lies above the palm.
    /// </summary>
    public static readonly IReadOnlyList<ReachLine> Lines =
    [
        new(10.9482, 2.1640, [(BodyMeasure.SittingShoulderHeight, 1.6580)]),
        new(1.2423, 1.8331, [(BodyMeasure.EyeHeight, 1.5581)]),
        new(0.9321, 1.5599, [(BodyMeasure.SittingShoulderHeight, 0.7957), (BodyMeasure.ShoulderElbow, 2.1550)]),
        new(0.7131, 1.5285, [(BodyMeasure.SittingShoulderHeight, 0.9636), (BodyMeasure.ElbowGrip, 1.9765)]),
        new(5.9804, 1.5791, [(BodyMeasure.ArmSpan, 0.6260)]),
        new(-2.7590, 1.5622, [(BodyMeasure.Stature, 0.7735)]),
        new(-3.8053, 1.5317, [(BodyMeasure.Stature, 0.6703), (BodyMeasure.SittingShoulderHeight, 0.3450)]),
        new(-0.4544, 1.4468,
            [(BodyMeasure.SittingShoulderHeight, 0.7891), (BodyMeasure.ShoulderElbow, 1.1238), (BodyMeasure.ElbowGrip, 1.1933)]),
        new(-4.7652, 1.5040, [(BodyMeasure.Stature, 0.5747), (BodyMeasure.EyeHeight, 0.4985)]),
        new(-2.3620, 1.4212,
            [(BodyMeasure.Stature, 0.2383), (BodyMeasure.SittingShoulderHeight, 0.5803), (BodyMeasure.ShoulderElbow, 0.7508),
            (BodyMeasure.ElbowGrip, 0.8835)]),
        new(-1.0787, 1.4381, [(BodyMeasure.Stature, 0.4202), (BodyMeasure.ArmSpan, 0.3193)]),
        new(-3.8392, 1.3369, [(BodyMeasure.EyeHeight, 0.8570), (BodyMeasure.ShoulderElbow, 0.9280), (BodyMeasure.ElbowGrip, 1.0374)]),
        new(-2.2671, 1.3071, [(BodyMeasure.SittingShoulderHeight, 0.7822), (BodyMeasure.ArmSpan, 0.4832)]),
        new(-4.3571, 1.2562, [(BodyMeasure.EyeHeight, 0.7967), (BodyMeasure.ArmSpan, 0.4199)]),
        new(-4.4022, 1.2481, [(BodyMeasure.EyeHeight, 0.6068), (BodyMeasure.SittingShoulderHeight, 0.2380), (BodyMeasure.ArmSpan, 0.4256)]),
        new(-1.4185, 0.2468, [(BodyMeasure.OverheadReach, 0.9306)]),
        new(0, 0, [(BodyMeasure.OverheadReach, 1), (BodyMeasure.HandLength, -1), (BodyMeasure.PalmLength, 0.5)]),
    ];

    /// <summary>The surest line among those whose measures are all known, tape readings allowed for; null where none is.</summary>
    public static ReachLine? BestLine(BodyMeasures body) =>
        Lines.Where(line => line.IsKnown(body)).MinBy(line => line.SpreadWithReadingsInches);

    /// <summary>Whether the survey has nobody so small: one of the measures is below its smallest.</summary>
    public static bool IsBelow(BodyMeasures body) =>
        SmallestInches.Any(smallest => body[smallest.Key] is { } length && length.Inches < smallest.Value);
}

/// <summary>A straight line from some body measures to seated reach.</summary>
/// <param name="InterceptInches">The constant, inches.</param>
/// <param name="SpreadInches">Standard deviation of reach around the line, inches.</param>
/// <param name="Terms">The measures, each with inches of reach per inch.</param>
public sealed record ReachLine(double InterceptInches, double SpreadInches, IReadOnlyList<(BodyMeasure Measure, double PerInch)> Terms)
{
    /// <summary>
    /// How far two measurements of one raised arm lie apart, inches, one standard deviation: half an inch either way, relaxed or stretched.
    /// Chosen, no source.
    /// </summary>
    public const double RaisedArmSpreadInches = 0.5;

    /// <summary>The spread with the errors of the tape added.</summary>
    public double SpreadWithReadingsInches =>
        Math.Sqrt(SpreadInches * SpreadInches + Terms.Sum(term => Math.Pow(term.PerInch * TapeSpreadInches(term.Measure), 2)));

    /// <summary>
    /// How far a measured reach lies from the line's, one standard deviation. The survey's own lines have the error of one raised arm in
    /// what they leave over; a line from the fingertip of a raised arm has not.
    /// </summary>
    public double SpreadAgainstReachInches => Terms.Any(term => term.Measure == BodyMeasure.OverheadReach)
        ? Math.Sqrt(SpreadWithReadingsInches * SpreadWithReadingsInches + RaisedArmSpreadInches * RaisedArmSpreadInches)
        : SpreadWithReadingsInches;

    /// <summary>Whether all its measures are known.</summary>
    public bool IsKnown(BodyMeasures body) => Terms.All(term => body[term.Measure] is not null);

    /// <summary>Seated reach in inches.</summary>
    /// <exception cref="InvalidOperationException">One of its measures is unknown.</exception>
    public double ReachInches(BodyMeasures body) =>
        InterceptInches + Terms.Sum(
            term => term.PerInch * (body[term.Measure] ?? throw new InvalidOperationException($"{term.Measure} is unknown.")).Inches);

    /// <summary>
    /// Error of a measure that one takes alone with a tape, inches, one standard deviation: a quarter inch, half of it for a hand laid on a
    /// ruler. Stature is mostly known well, and the raised arm's own error counts elsewhere. Chosen, no source.
    /// </summary>
    public static double TapeSpreadInches(BodyMeasure measure) => measure switch
    {
        BodyMeasure.Stature or BodyMeasure.OverheadReach => 0,
        BodyMeasure.HandLength or BodyMeasure.PalmLength => 0.125,
        _ => 0.25,
    };
}
