using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>
/// Between blades, keep the shaft above the waterline the same: a blade that is d longer wants a paddle that is
/// d longer overall. Common practice, no source.
/// </summary>
public static class ExposedShaftRule
{
    /// <summary>The blade length that start lengths are meant for, 18.5 in. From memory of common solo blades, no source.</summary>
    public static readonly Length ReferenceBlade = Length.FromInches(18.5);

    /// <summary>
    /// How far the rule may be off for each inch that two blades differ, inches, one standard deviation. Chosen, no source.
    /// </summary>
    public const double SpreadPerInch = 0.25;

    /// <summary>Inches a paddle with that blade is longer overall than one with the reference blade.</summary>
    public static double OffsetInches(Length blade) => blade.InchesMoreThan(ReferenceBlade);
}
