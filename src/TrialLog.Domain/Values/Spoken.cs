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

    private static string Decimals(double value, int digits) =>
        Math.Round(value, digits, MidpointRounding.AwayFromZero)
            .ToString(digits == 0 ? "0" : "0." + new string('#', digits), CultureInfo.InvariantCulture);
}
