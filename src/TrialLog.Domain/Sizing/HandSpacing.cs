using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>
/// How far apart the hands go on the shaft: about twice the shoulder (biacromial) breadth; quickly, from elbow to elbow with
/// both arms at 90° overhead. Common practice, no source.
/// </summary>
public static class HandSpacing
{
    /// <summary>Distance between the hands.</summary>
    /// <exception cref="InvalidValueException">The result is longer than 10 m.</exception>
    public static Length From(Length shoulderBreadth) => Length.FromInches(2 * shoulderBreadth.Inches);
}
