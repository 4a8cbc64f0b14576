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
        to.WriteLine(Title(answer));
        to.WriteLine();
        Wrapped.Write(
            to,
            Math.Abs(change) < 0.125
                ? $"The length suits by this check: {answer.InWords(unit)}."
                : $"By this check alone: {Say.Amount(Math.Abs(change), unit)} {(change < 0 ? "shorter" : "longer")}, so " +
                    $"{answer.InWords(unit)}. Weak evidence: do not cut a paddle on it alone.",
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

    /// <summary>While it hurts: nothing of a longer or shorter length, but a hand too high is said all the same.</summary>
    public static void WriteAtRest(TextWriter to, TechniqueAnswer answer, bool kept, int width)
    {
        if (answer.Implied.Overhead)
            Wrapped.Write(to, TechniqueRule.ShoulderCaution, width, "Caution: ", 9);
        to.WriteLine(kept ? "Saved. To undo: triallog undo" : "Not saved; add --save to keep it.");
    }

    /// <summary>Whose check, where, at which length, and what was seen.</summary>
    public static string Title(TechniqueAnswer answer) =>
        $"{Quoted.Visible(answer.Paddler.Name)} · {Quoted.Visible(answer.Hull.Name)} · {Quoted.Visible(answer.Paddle.Name)} " +
            $"at {Say.Quarter(answer.Check.Length, answer.Paddler.Unit)}: top hand " +
            $"{HandHeight.InWords(answer.Check.HandAboveEyeInches, answer.Paddler.Unit)}";

    /// <summary>One check in a line.</summary>
    public static string Line(TechniqueAnswer answer)
    {
        LengthUnit unit = answer.Paddler.Unit;
        return $"{answer.Check.Date:yyyy-MM-dd}  {Quoted.Visible(answer.Hull.Name)}, {Quoted.Visible(answer.Paddle.Name)} at " +
            $"{Say.Quarter(answer.Check.Length, unit)}: top hand {HandHeight.InWords(answer.Check.HandAboveEyeInches, unit)}, "
            + $"{(answer.Check.FromPhoto ? "photo" : "by eye")}; points to {answer.InWords(unit)}";
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
