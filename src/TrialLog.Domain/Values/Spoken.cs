using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>Lengths as they are said aloud: as fine as the number deserves, no finer.</summary>
public static class Spoken
{
    /// <summary>A quarter inch, the step that paddles are tuned and cut in.</summary>
    public static readonly Length QuarterInch = Length.FromInches(0.25);

    /// <summary>
    /// A length to the nearest quarter inch: <c>49 ¾ in</c>; with centimetres chosen, to the millimetre: <c>126.4 cm</c>.
    /// </summary>
    public static string ToQuarter(Length length, LengthUnit unit) => unit == LengthUnit.Centimetres
        ? Decimals(length.Centimetres, 1) + " cm"
        : length.RoundedTo(QuarterInch).ToText();

    /// <summary>A range, its ends rounded outwards to the quarter inch or half centimetre: <c>49¼ to 50½ in</c>.</summary>
    public static string Range(Length low, Length high, LengthUnit unit)
    {
        bool metric = unit == LengthUnit.Centimetres;
        double step = metric ? 0.5 : 0.25, from = metric ? low.Centimetres : low.Inches, to = metric ? high.Centimetres : high.Inches;
        // A hair's breadth keeps an end that is a whole step where it is.
        string first = Text(Math.Max(0, Math.Floor(from / step + 1e-6)) * step), last = Text(Math.Ceiling(to / step - 1e-6) * step);
        return first == last ? last : $"{first[..first.LastIndexOf(' ')]} to {last}";

        string Text(double value) => metric ? Decimals(value, 1) + " cm"
            : Length.FromInches(Math.Min(value, Length.Longest.Inches)).ToText();
    }

    /// <summary>A length to the tenth of an inch or the millimetre, for body measures: <c>50.3 in</c>, <c>128 cm</c>.</summary>
    public static string ToTenth(Length length, LengthUnit unit) => Amount(length.Inches, unit);

    /// <summary>
    /// A difference or a spread given in inches, to the tenth: <c>1.2 in</c>, <c>−0.8 in</c>; centimetres to the tenth: <c>3.1 cm</c>.
    /// </summary>
    public static string Amount(double inches, LengthUnit unit)
    {
        double value = unit == LengthUnit.Centimetres ? inches * 2.54 : inches;
        string digits = Decimals(Math.Abs(value), 1);
        return (value < 0 && digits != "0" ? "−" : "") + digits + (unit == LengthUnit.Centimetres ? " cm" : " in");
    }

    /// <summary>
    /// A small length given in inches, to the sixteenth as it stands on a tape: <c>¼ in</c>; centimetres to the tenth: <c>0.6 cm</c>.
    /// </summary>
    /// <exception cref="InvalidValueException">Negative, or over 10 m.</exception>
    public static string Fraction(double inches, LengthUnit unit) =>
        unit == LengthUnit.Centimetres ? Amount(inches, unit) : Length.FromInches(Math.Round(inches * 16) / 16).ToText();

    /// <summary>A probability as a person says it: <c>62%</c>, <c>under 1%</c>, <c>over 99%</c>.</summary>
    public static string Chance(double probability) => probability switch
    {
        < 0.01 => "under 1%",
        > 0.99 => "over 99%",
        _ => (probability * 100).ToString("0", CultureInfo.InvariantCulture) + "%",
    };

    /// <summary>A number of seconds: <c>about 4 s</c>, <c>about 2.5 min</c>, <c>under 1 s</c>.</summary>
    public static string Seconds(double seconds) => seconds switch
    {
        < 1 => "under 1 s",
        < 89.5 => $"about {Decimals(seconds, 0)} s",
        _ => $"about {Decimals(seconds / 60, 1)} min",
    };

    /// <summary>How long an event takes, to the minute, after "in": <c>an hour</c>, <c>20 min</c>, <c>1 h 44 min</c>.</summary>
    public static string Duration(double seconds)
    {
        long minutes = (long)Math.Round(seconds / 60, MidpointRounding.AwayFromZero);
        return (minutes / 60, minutes % 60) switch
        {
            (0, < 2) => seconds.ToString("0", CultureInfo.InvariantCulture) + " s",
            (0, var rest) => $"{rest} min",
            (1, 0) => "an hour",
            (var hours, 0) => $"{hours} h",
            (var hours, var rest) => $"{hours} h {rest} min",
        };
    }

    /// <summary>A count with its noun: <c>1 outing</c>, <c>3 outings</c>.</summary>
    public static string Count(int count, string noun) => count == 1 ? $"1 {noun}" : $"{count} {noun}s";

    /// <summary>The words of a text, a number kept together with its fraction and its unit, for breaking it into lines.</summary>
    public static IEnumerable<string> Unbroken(string text)
    {
        string? held = null;
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            bool joins = held is not null && (char.IsDigit(held[^1]) || Fractions.Contains(held[^1]))
                && (Fractions.Contains(word[0]) || word.TrimEnd('.', ',', ';', ':', ')') is "in" or "cm" or "%");
            if (!joins && held is not null)
                yield return held;
            held = joins ? $"{held} {word}" : word;
        }

        if (held is not null)
            yield return held;
    }

    private const string Fractions = "¼½¾⅛⅜⅝⅞";

    private static string Decimals(double value, int digits) =>
        Math.Round(value, digits, MidpointRounding.AwayFromZero)
            .ToString(digits == 0 ? "0" : "0." + new string('#', digits), CultureInfo.InvariantCulture);
}
