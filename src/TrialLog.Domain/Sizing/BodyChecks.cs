using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>
/// Whether body measures can be right: what is impossible is refused, what is unlikely is asked about. The believed ranges
/// reach well beyond the least and the most of ANSUR II (tests/reference/sizing/ansur-ii.csv), downwards far enough for juniors;
/// how far beyond is chosen, no source.
/// </summary>
public static class BodyChecks
{
    private static readonly Dictionary<BodyMeasure, BelievedRange> Believed = new()
    {
        [BodyMeasure.SeatedReach] = Range("a seated reach", 30, 70),
        [BodyMeasure.Stature] = Range("a stature", 45, 90),
        [BodyMeasure.SittingShoulderHeight] = Range("a sitting shoulder height", 13, 32),
        [BodyMeasure.ShoulderElbow] = Range("a shoulder-elbow length", 8, 20),
        [BodyMeasure.ElbowGrip] = Range("an elbow-grip length", 7, 19),
        [BodyMeasure.EyeHeight] = Range("a sitting eye height", 18, 42),
        [BodyMeasure.ShoulderBreadth] = Range("a shoulder breadth", 8, 23),
    };

    /// <summary>What a measure is called in a sentence, with its article: <c>a seated reach</c>.</summary>
    public static string Name(BodyMeasure measure) => Believed[measure].Name;

    /// <summary>Says what is wrong with one measure by itself, asking whether another unit was meant; null where it is believable.</summary>
    public static string? ProblemWith(BodyMeasure measure, Length length, LengthUnit unit = LengthUnit.Inches) =>
        Believed[measure].Problem(length, unit);

    /// <summary>What cannot be: measures beyond belief, and measures that contradict each other. Empty where all is well.</summary>
    public static IReadOnlyList<string> Problems(BodyMeasures body, LengthUnit unit = LengthUnit.Inches)
    {
        var problems = new List<string>();
        foreach (BodyMeasure measure in Enum.GetValues<BodyMeasure>())
        {
            if (body[measure] is { } length && ProblemWith(measure, length, unit) is { } problem)
                problems.Add(problem);
        }

        if (problems.Count > 0)
            return problems;

        MustBeBelow(body.SeatedReach, body.Stature, "seated reach", "stature", "measure the reach from the seat, not from the floor");
        MustBeBelow(body.EyeHeight, body.Stature, "sitting eye height", "stature", "measure the eye height from the seat");
        MustBeBelow(body.SittingShoulderHeight, body.SeatedReach, "sitting shoulder height", "seated reach", "measure both from the seat, the reach with the arm raised");
        MustBeBelow(body.SittingShoulderHeight, body.EyeHeight, "sitting shoulder height", "sitting eye height", "measure both from the seat, sitting upright");
        MustBeBelow(body.EyeHeight, body.SeatedReach, "sitting eye height", "seated reach", "measure both from the seat, the reach with the arm raised");
        return problems;

        void MustBeBelow(Length? lower, Length? upper, string lowerName, string upperName, string advice)
        {
            if (lower is { } low && upper is { } high && low >= high)
                problems.Add($"The {lowerName} of {Spoken.ToTenth(low, unit)} is not below the {upperName} of {Spoken.ToTenth(high, unit)}; {advice}.");
        }
    }

    /// <summary>
    /// What is possible but unlikely, as questions to the paddler: proportions beyond anyone's in the survey with some room,
    /// a reach far from its segments, a paddle far from the body.
    /// </summary>
    /// <param name="body">Body measures without <see cref="Problems"/>.</param>
    /// <param name="known">Overall length of a paddle said to suit, if any.</param>
    /// <param name="unit">The paddler's unit.</param>
    public static IReadOnlyList<string> Questions(BodyMeasures body, Length? known, LengthUnit unit = LengthUnit.Inches)
    {
        var questions = new List<string>();

        // The survey's extremes of each share of stature, widened by about a tenth. A reach with the arm raised runs some
        // 3 % of stature below the survey's sum of segments (docs/sizing.md), so its lower bound is lower still.
        Share(body.SeatedReach, "seated reach", 0.60, 0.82);
        Share(body.EyeHeight, "sitting eye height", 0.37, 0.55);
        Share(body.SittingShoulderHeight, "sitting shoulder height", 0.26, 0.43);
        Share(body.ShoulderElbow, "shoulder-elbow length", 0.165, 0.25);
        Share(body.ElbowGrip, "elbow-grip length", 0.155, 0.245);
        Share(body.ShoulderBreadth, "shoulder breadth", 0.17, 0.295);

        if (body.SeatedReach is { } reach && BodySurvey.BestLine(body with { Stature = null, EyeHeight = null }) is { SpreadInches: 0 } sum)
        {
            double more = reach.Inches - sum.ReachInches(body);
            if (more is > 2.5 or < -5.5)
                questions.Add($"Your seated reach is {Spoken.Amount(Math.Abs(more), unit)} {(more > 0 ? "more" : "less")} than its segments add up to; are all of them right?");
        }

        if (known is { } paddle && StartLength.From(body, null) is { Basis: not StartLengthBasis.Nothing } start)
        {
            double more = paddle.InchesMoreThan(start.Length);
            if (Math.Abs(more) > 3 * start.SpreadInches)
                questions.Add($"The paddle that you say suits is {Spoken.Amount(Math.Abs(more), unit)} {(more > 0 ? "longer" : "shorter")} than your body measures suggest; is its length from the tip of the blade to the top of the grip, and are the measures right?");
        }

        return questions;

        void Share(Length? length, string name, double least, double most)
        {
            if (length is not { } part || body.Stature is not { } stature)
                return;
            double share = part.Inches / stature.Inches;
            if (share < least || share > most)
                questions.Add($"A {name} of {Spoken.ToTenth(part, unit)} is unusually {(share < least ? "little" : "much")} for a stature of {Spoken.ToTenth(stature, unit)}; are both right?");
        }
    }

    private static BelievedRange Range(string name, double shortest, double longest) =>
        new(name, Length.FromInches(shortest), Length.FromInches(longest));
}
