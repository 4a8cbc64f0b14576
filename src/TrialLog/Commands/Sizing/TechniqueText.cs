using TrialLog.Application.Sizing;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Entry;

namespace TrialLog.Commands.Sizing;

/// <summary>A technique check in words.</summary>
internal static class TechniqueText
{
    public static void Write(TextWriter to, TechniqueAnswer answer, Length without, Length with, bool kept, int width)
    {
        LengthUnit unit = answer.Paddler.Unit;
        TechniqueCheck check = answer.Check;
        double change = answer.Implied.ChangeInches;
        to.WriteLine($"{Quoted.Visible(answer.Paddler.Name)} · {Quoted.Visible(answer.Hull.Name)} · {Quoted.Visible(answer.Paddle.Name)} " +
            $"at {Say.Quarter(check.Length, unit)}: top hand {HandHeight.InWords(check.HandAboveEyeInches, unit)}");
        to.WriteLine();
        Wrapped.Write(
            to,
            Math.Abs(change) < 0.125
                ? $"The length suits by this check: {Likely(answer, unit)}."
                : $"By this check alone: {Say.Amount(Math.Abs(change), unit)} {(change < 0 ? "shorter" : "longer")}, so " +
                    $"{Likely(answer, unit)}. Weak evidence: do not cut a paddle on it alone.",
            width);
        to.WriteLine();
        Wrapped.Write(to, Geometry(check, unit), width, "  Geometry  ", 12);
        Wrapped.Write(to, check.FromPhoto ? "measured in a photo"
            : "judged by eye; a photo from the side, level with the paddler, would halve the reading's error", width, "  Reading   ", 12);
        Wrapped.Write(to, "with the whole blade just buried, the top hand is at about eye level (common practice, no source); " +
            "the spreads are chosen", width, "  Rule      ", 12);
        Wrapped.Write(
            to,
            without == with ? $"with all else that is known, the best length stays {Say.Quarter(with, unit)}"
                : $"with all else that is known, the best length goes from {Say.Quarter(without, unit)} to {Say.Quarter(with, unit)}",
            width, "  Together  ", 12);
        if (!answer.InRange)
            Wrapped.Write(to, $"{Quoted.Visible(answer.Paddle.Name)} cannot be set to {Say.Quarter(answer.PointsTo, unit)}.", width,
                "  Range     ", 12);
        if (answer.Implied.Overhead)
            Wrapped.Write(to, TechniqueRule.ShoulderCaution, width, "Caution: ", 9);
        to.WriteLine(kept ? "Saved: it counts as weak evidence. To undo: triallog undo"
            : "Not saved; add --save and it counts as weak evidence on the best length.");
    }

    /// <summary>One check in a line.</summary>
    public static string Line(TechniqueAnswer answer)
    {
        LengthUnit unit = answer.Paddler.Unit;
        return $"{answer.Check.Date:yyyy-MM-dd}  {Quoted.Visible(answer.Hull.Name)}, {Quoted.Visible(answer.Paddle.Name)} at " +
            $"{Say.Quarter(answer.Check.Length, unit)}: top hand {HandHeight.InWords(answer.Check.HandAboveEyeInches, unit)}, "
            + $"{(answer.Check.FromPhoto ? "photo" : "by eye")}; points to {Likely(answer, unit)}";
    }

    // Nine times in ten, as every range.
    private static string Likely(TechniqueAnswer answer, LengthUnit unit)
    {
        double half = 1.645 * answer.Implied.SpreadInches;
        return $"{Say.Quarter(answer.PointsTo, unit)}, likely " +
            $"{Say.Range(answer.PointsTo.PlusInches(-half), answer.PointsTo.PlusInches(half), unit)}";
    }

    private static string Geometry(TechniqueCheck check, LengthUnit unit)
    {
        double lean = check.ShaftLeanDegrees ?? TechniqueRule.AssumedLeanDegrees;
        double rise = Math.Cos(lean * Math.PI / 180);
        return $"a shaft that leans {lean:0.#}° from upright{(check.ShaftLeanDegrees is null ? " (assumed)" : "")} lifts the hand by " +
            $"{rise:0.00} for 1 of length (cos {lean:0.#}°): "
            + $"{Say.Amount(0 - check.HandAboveEyeInches, unit)} / {rise:0.00} = {Say.Amount(0 - check.HandAboveEyeInches / rise, unit)}";
    }
}
