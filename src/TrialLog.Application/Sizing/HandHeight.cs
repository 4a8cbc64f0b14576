using TrialLog.Application.Wording;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Sizing;

/// <summary>How far the top hand is above (+) or below (−) the eye, as people write it.</summary>
internal static class HandHeight
{
    /// <summary>The most that is believed either way, inches.</summary>
    public const double MostInches = 30;

    /// <summary>Reads <c>2in</c>, <c>+1 1/2</c>, <c>-3cm</c>, <c>2in below</c>, <c>level</c> into inches.</summary>
    /// <exception cref="InvalidValueException">It cannot be read so, or is beyond 30 in.</exception>
    public static double Parse(string text, LengthUnit bare)
    {
        string rest = text.Trim();
        if (rest.Equals("level", StringComparison.OrdinalIgnoreCase))
            return 0;
        bool below = rest.StartsWith('-') || rest.StartsWith('−');
        if (below || rest.StartsWith('+'))
            rest = rest[1..];
        if (Cut(ref rest, "below"))
        {
            if (below)
                throw new InvalidValueException($"“{Quoted.Brief(text)}” says below twice; write 2in below or -2in.");
            below = true;
        }
        else
        {
            Cut(ref rest, "above");
        }

        if (!Length.TryParse(rest, bare, out Length height, out _))
            throw new InvalidValueException(
                $"“{Quoted.Brief(text)}” is not a hand height; write how far the top hand is above the eye, like 2in, or -2in " +
                $"below it, or level.");
        return height.Inches > MostInches
            ? throw new InvalidValueException(TooFar(below ? -height.Inches : height.Inches))
            : below ? 0 - height.Inches : height.Inches;
    }

    /// <summary>That a hand so far from the eye is not believed.</summary>
    public static string TooFar(double inches) =>
        $"A top hand {Say.Amount(Math.Abs(inches), LengthUnit.Inches)} {(inches < 0 ? "below" : "above")} the eye is not believable (up " +
            $"to {MostInches:0} in); check the number and its unit.";

    /// <summary><c>2 in above the eye</c>, <c>level with the eye</c>.</summary>
    public static string InWords(double inches, LengthUnit unit) => inches == 0 ? "level with the eye"
        : $"{Say.Amount(Math.Abs(inches), unit)} {(inches > 0 ? "above" : "below")} the eye";

    private static bool Cut(ref string text, string ending)
    {
        if (!text.EndsWith(ending, StringComparison.OrdinalIgnoreCase))
            return false;
        text = text[..^ending.Length];
        return true;
    }
}
