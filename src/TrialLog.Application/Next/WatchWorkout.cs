using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Formats.Fit;

namespace TrialLog.Application.Next;

/// <summary>A card as a workout for a watch, and as a text for a phone or a strip of tape.</summary>
internal static class WatchWorkout
{
    /// <summary>The workout's file: warm-up until the lap button, each piece by its distance, rests by their time, cool-down.</summary>
    /// <param name="card">The card.</param>
    /// <param name="unit">The unit of the lengths in the steps' names.</param>
    /// <param name="blind">Whether the paddler is not to read the lengths.</param>
    /// <param name="now">When the file is made.</param>
    public static byte[] File(TrialCard card, LengthUnit unit, bool blind, DateTimeOffset now) =>
        FitWorkout.Write(blind ? "Trial" : $"Trial {Ascii(Say.Order(card.Lengths.Distinct(), unit))}", Steps(card, unit, blind), now);

    /// <summary>The steps.</summary>
    public static IReadOnlyList<WorkoutStep> Steps(TrialCard card, LengthUnit unit, bool blind)
    {
        var steps =
            new List<WorkoutStep> { new(blind ? "Warm-up" : $"Set {Ascii(Say.Length(card.Lengths[0], unit))}", WorkoutStepKind.WarmUp) };
        for (int i = 0; i < card.Lengths.Count; i++)
        {
            if (i > 0)
                steps.Add(
                    new WorkoutStep(blind ? "Rest" : $"Set {Ascii(Say.Length(card.Lengths[i], unit))}", WorkoutStepKind.Rest,
                    Time: card.Rest));
            steps.Add(new WorkoutStep(Name(card, i, unit, blind), WorkoutStepKind.Piece, card.Distance));
        }

        steps.Add(new WorkoutStep("Cool-down", WorkoutStepKind.CoolDown));
        return steps;
    }

    /// <summary>Which piece of the card a step of that name is, from 0; −1 for none.</summary>
    public static int StepOf(TrialCard card, string name, LengthUnit unit) =>
        Enumerable.Range(0, card.Lengths.Count)
            .FirstOrDefault(i => new[] { true, false }.Any(blind => name.Trim() == Name(card, i, unit, blind)), -1);

    /// <summary>The card in a few short lines, for a phone or a strip of tape on the hull.</summary>
    public static string Strip(TrialCard card, LengthUnit unit, bool blind) => string.Join(Environment.NewLine,
    [
        $"{card.Lengths.Count} x {card.Distance}, rest {card.Rest}",
        .. Enumerable.Range(0, card.Lengths.Count).Select(i => Name(card, i, unit, blind)),
    ]);

    private static string Name(TrialCard card, int piece, LengthUnit unit, bool blind) => blind
        ? $"{piece + 1}: {BlindWords.Letters(card)[piece]}"
        : $"{piece + 1}: {Ascii(Say.Length(card.Lengths[piece], unit))}";

    // Watches lack many characters.
    private static string Ascii(string text)
    {
        foreach ((string fraction, string plain) in new[]
        {
            ("¼", " 1/4"), ("½", " 1/2"), ("¾", " 3/4"), ("⅛", " 1/8"), ("⅜", " 3/8"), ("⅝", " 5/8"), ("⅞", " 7/8"), ("\u00a0", " "),
                ("\u202f", " "),
        })
            text = text.Replace(fraction, plain, StringComparison.Ordinal);
        return text;
    }
}
