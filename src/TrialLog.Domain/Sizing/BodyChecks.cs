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
        [BodyMeasure.ArmSpan] = Range("an arm span", 42, 95),
        [BodyMeasure.OverheadReach] = Range("an overhead fingertip reach", 34, 78),
        [BodyMeasure.HandLength] = Range("a hand length", 4.5, 11),
        [BodyMeasure.PalmLength] = Range("a palm length", 2.6, 6.5),
    };

    /// <summary>What a measure is called in a sentence, with its article: <c>a seated reach</c>.</summary>
    public static string Name(BodyMeasure measure) => Believed[measure].Name;

    /// <summary>
    /// Says what is wrong with one measure by itself, asking whether another unit was meant; null where it is believable.
    /// </summary>
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
        MustBeBelow(body.SittingShoulderHeight, body.SeatedReach, "sitting shoulder height", "seated reach",
            "measure both from the seat, the reach with the arm raised");
        MustBeBelow(body.SittingShoulderHeight, body.EyeHeight, "sitting shoulder height", "sitting eye height",
            "measure both from the seat, sitting upright");
        MustBeBelow(body.SeatedReach, body.OverheadReach, "seated reach", "overhead fingertip reach",
            "measure the reach to the middle of the palm");
        MustBeBelow(body.OverheadReach, body.Stature, "overhead fingertip reach", "stature",
            "measure it from the seat, not from the floor");
        MustBeBelow(body.PalmLength, body.HandLength, "palm length", "hand length",
            "measure the palm to the root of the middle finger, the hand to its tip");
        MustBeBelow(body.EyeHeight, body.SeatedReach, "sitting eye height", "seated reach",
            "measure both from the seat, the reach with the arm raised");
        return problems;

        void MustBeBelow(Length? lower, Length? upper, string lowerName, string upperName, string advice)
        {
            if (lower is { } low && upper is { } high && low >= high)
                problems.Add($"The {lowerName} of {Spoken.ToTenth(low, unit)} is not below the {upperName} of " +
                    $"{Spoken.ToTenth(high, unit)}; {advice}.");
        }
    }

    /// <summary>Spreads from what the other measures say beyond which a seated reach is not taken. Chosen: about 1 in 80 bodies.</summary>
    public const double ReachSpreadsTaken = 2.5;

    /// <summary>
    /// How far a seated reach lies above (+) or below (−) what the other measures say, inches, where that is further than is believed:
    /// measured to the fingertip it is about five inches too long. Null where they bear it out, or where there is nothing to compare.
    /// </summary>
    public static double? ReachTooFar(BodyMeasures body) =>
        body.SeatedReach is { } reach && BodySurvey.BestLine(body) is { } line
        && reach.Inches - line.ReachInches(body) is var off && Math.Abs(off) > ReachSpreadsTaken * line.SpreadAgainstReachInches
            ? off : null;

    /// <summary>
    /// What is possible but unlikely, as questions to the paddler: proportions beyond anyone's in the survey with some room,
    /// a reach far from what the other measures say, a body smaller than any in the survey, a paddle far from the body.
    /// </summary>
    /// <param name="body">Body measures without <see cref="Problems"/>.</param>
    /// <param name="known">Overall length of a paddle said to suit, if any.</param>
    /// <param name="unit">The paddler's unit.</param>
    public static IReadOnlyList<string> Questions(BodyMeasures body, Length? known, LengthUnit unit = LengthUnit.Inches)
    {
        var questions = new List<string>();

        // The survey's extremes of each share of stature, widened by about a tenth.
        Share(body.EyeHeight, "sitting eye height", 0.37, 0.55);
        Share(body.SittingShoulderHeight, "sitting shoulder height", 0.26, 0.43);
        Share(body.ShoulderElbow, "shoulder-elbow length", 0.165, 0.25);
        Share(body.ElbowGrip, "elbow-grip length", 0.155, 0.245);
        Share(body.ShoulderBreadth, "shoulder breadth", 0.17, 0.295);
        Share(body.ArmSpan, "arm span", 0.83, 1.25);
        Share(body.OverheadReach, "overhead fingertip reach", 0.66, 0.98);
        Share(body.HandLength, "hand length", 0.086, 0.146);
        Share(body.PalmLength, "palm length", 0.05, 0.087);

        if (ReachTooFar(body) is { } off)
            questions.Add(
                $"A seated reach of {Spoken.ToTenth(body.SeatedReach!.Value, unit)} is {Spoken.Amount(Math.Abs(off), unit)} " +
                $"{(off > 0 ? "more" : "less")} than your other measures suggest, so it is not taken. Is it to the middle of the palm, " +
                $"not to the fingertip? In {(unit == LengthUnit.Inches ? "inches, not cm" : "cm, not inches")}? If it is right, tell the " +
                $"overhead fingertip reach too, or correct the other measures.");
        if (BodySurvey.IsBelow(body))
            questions.Add("The survey has no adult so small, so its lines do not reach here: go by a reach measured with the arm raised, " +
                "and expect to end up further from it.");

        if (known is { } paddle && StartLength.From(body, null) is { Basis: not StartLengthBasis.Nothing } start)
        {
            double more = paddle.InchesMoreThan(start.Length);
            if (Math.Abs(more) > 3 * start.SpreadInches)
                questions.Add(
                    $"The paddle that you say suits is {Spoken.Amount(Math.Abs(more), unit)} {(more > 0 ? "longer" : "shorter")} than " +
                    $"your body measures suggest; is its length from the tip of the blade to the top of the grip, and are " +
                    $"the measures right?");
        }

        return questions;

        void Share(Length? length, string name, double least, double most)
        {
            if (length is not { } part || body.Stature is not { } stature)
                return;
            double share = part.Inches / stature.Inches;
            if (share < least || share > most)
                questions.Add($"A {name} of {Spoken.ToTenth(part, unit)} is unusually {(share < least ? "little" : "much")} for a " +
                    $"stature of {Spoken.ToTenth(stature, unit)}; are both right?");
        }
    }

    private static BelievedRange Range(string name, double shortest, double longest) =>
        new(name, Length.FromInches(shortest), Length.FromInches(longest));
}
