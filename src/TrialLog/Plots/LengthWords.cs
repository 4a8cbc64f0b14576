using System.Globalization;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Wording;

namespace TrialLog.Plots;

/// <summary>Numbers as a paddler says them.</summary>
internal static class LengthWords
{
    /// <summary>A length to the eighth of an inch or to the millimetre: <c>49 ¾ in</c>, <c>126.4 cm</c>.</summary>
    public static string Say(this Length length, LengthUnit unit) => unit == LengthUnit.Centimetres
        ? length.Centimetres.ToString("0.0", CultureInfo.InvariantCulture) + " cm"
        : length.RoundedTo(Length.FromInches(0.125)).ToText();

    /// <summary>A length without its unit, as it is typed: <c>49 3/4</c> would be <c>49.75</c>, to the millimetre in centimetres.</summary>
    public static string Typed(this Length length, LengthUnit unit) => unit == LengthUnit.Centimetres
        ? length.Centimetres.ToString("0.0##", CultureInfo.InvariantCulture)
        : Math.Round(length.Inches, 4).ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>Two ends of a likely range, no finer than a quarter inch: <c>49 ¼ to 50 ½ in</c>.</summary>
    public static string SayRange(Length low, Length high, LengthUnit unit) => Spoken.Range(low, high, unit);
}
