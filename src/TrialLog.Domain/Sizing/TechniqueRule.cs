using TrialLog.Domain.Log;

namespace TrialLog.Domain.Sizing;

/// <summary>
/// With the whole blade just buried at the catch, the top hand is at about eye level; higher: shorten, lower: lengthen
/// (common practice, no source). The top hand is at the upper end of the shaft, so on a shaft that leans from the vertical
/// by an angle a, an inch of paddle lifts it by cos a: a hand h above the eye implies a change of length of −h / cos a.
/// </summary>
public static class TechniqueRule
{
    /// <summary>
    /// How far the rule itself may be off for a paddler, inches of hand height, one standard deviation. Chosen, no source.
    /// </summary>
    public const double RuleSpreadInches = 1.5;

    /// <summary>Error of a hand height judged by eye, inches, one standard deviation. Chosen, no source.</summary>
    public const double ByEyeSpreadInches = 2;

    /// <summary>Error of a hand height measured in a photo, inches, one standard deviation. Chosen, no source.</summary>
    public const double PhotoSpreadInches = 1;

    /// <summary>Shaft lean assumed where it was not measured, degrees. Chosen, no source.</summary>
    public const double AssumedLeanDegrees = 20;

    /// <summary>
    /// Beyond this height above the eye the hand is above the crown of the head, and the shoulder caution is shown: mean height
    /// of the crown above the eye, 4.4 in (ANSUR II; Gordon et al. 2014, NATICK/TR-15/007).
    /// </summary>
    public const double OverheadInches = BodySurvey.CrownAboveEyeInches;

    /// <summary>The shoulder caution.</summary>
    public const string ShoulderCaution =
        "A top hand above the head cannot take body weight and loads the shoulder: shorten the paddle before anything else, and stop if " +
            "the shoulder hurts; a clinician and a qualified coach decide.";

    /// <summary>What one check implies.</summary>
    public static TechniqueImplication Implied(TechniqueCheck check)
    {
        double perInch = 1 / Math.Cos((check.ShaftLeanDegrees ?? AssumedLeanDegrees) * Math.PI / 180);
        return new(
            0 - check.HandAboveEyeInches * perInch,
            RuleSpreadInches * perInch,
            (check.FromPhoto ? PhotoSpreadInches : ByEyeSpreadInches) * perInch,
            check.HandAboveEyeInches > OverheadInches);
    }

    /// <summary>
    /// What several checks say together about the best aligned length: the mean of length plus implied change, weighted by
    /// the readings' precision. Repeating a check narrows the reading's error but not the rule's own.
    /// </summary>
    /// <param name="checks">Each check's aligned length and what it implies.</param>
    /// <returns>Mean and spread in aligned inches; null without any check.</returns>
    public static (double AlignedInches, double SpreadInches)? Together(
        IEnumerable<(double AlignedInches, TechniqueImplication Implied)> checks)
    {
        double weights = 0, sum = 0, rule = 0;
        foreach ((double aligned, TechniqueImplication implied) in checks)
        {
            double weight = 1 / (implied.ReadingSpreadInches * implied.ReadingSpreadInches);
            weights += weight;
            sum += weight * (aligned + implied.ChangeInches);
            rule += weight * implied.RuleSpreadInches;
        }

        return weights == 0 ? null : (sum / weights, Math.Sqrt(1 / weights + rule / weights * (rule / weights)));
    }
}

/// <summary>What a technique check implies: weak evidence on the best length.</summary>
/// <param name="ChangeInches">Implied change of overall length, inches; negative: shorten.</param>
/// <param name="RuleSpreadInches">How far the rule may be off for this paddler, inches of length, one standard deviation; common to all
/// their checks.</param>
/// <param name="ReadingSpreadInches">Error of this reading, inches of length, one standard deviation; its own.</param>
/// <param name="Overhead">Whether the top hand was above the crown of the head.</param>
public sealed record TechniqueImplication(double ChangeInches, double RuleSpreadInches, double ReadingSpreadInches, bool Overhead)
{
    /// <summary>Standard deviation of the implied change, inches.</summary>
    public double SpreadInches => Math.Sqrt(RuleSpreadInches * RuleSpreadInches + ReadingSpreadInches * ReadingSpreadInches);
}
