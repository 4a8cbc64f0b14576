using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>Body measures and differences of lengths as they are said, here and in what a value says when it is refused.</summary>
public static class Spoken
{
    /// <summary>A length to the tenth of an inch or the millimetre, for body measures: <c>50.3 in</c>, <c>128 cm</c>.</summary>
    public static string ToTenth(Length length, LengthUnit unit) => Amount(length.Inches, unit);

    /// <summary>
    /// A difference or a spread given in inches, to the tenth: <c>1.2 in</c>, <c>−0.8 in</c>; centimetres to the tenth: <c>3.1 cm</c>.
    /// </summary>
    public static string Amount(double inches, LengthUnit unit)
    {
        double value = unit == LengthUnit.Centimetres ? inches * 2.54 : inches;
        string digits = Math.Round(Math.Abs(value), 1, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture);
        return (value < 0 && digits != "0" ? "−" : "") + digits + (unit == LengthUnit.Centimetres ? " cm" : " in");
    }
}
