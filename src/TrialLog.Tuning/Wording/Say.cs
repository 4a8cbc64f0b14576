using System.Globalization;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Wording;

/// <summary>Numbers the way a paddler says them.</summary>
internal static class Say
{
    private static readonly Length Sixteenth = Length.FromInches(0.0625), Millimetre = Length.FromMillimetres(1);

    /// <summary>A setting of the shaft: as it is in inches, to the millimetre in centimetres.</summary>
    public static string Setting(Length length, LengthUnit unit) =>
        unit == LengthUnit.Centimetres ? length.RoundedTo(Millimetre).ToText(unit) : length.ToText(unit);

    /// <summary>The nearest sixteenth of an inch, or millimetre, to an uncertain length.</summary>
    public static Length Rough(double inches, LengthUnit unit) =>
        Length.FromInches(Math.Clamp(inches, 0, 390)).RoundedTo(unit == LengthUnit.Centimetres ? Millimetre : Sixteenth);

    /// <summary>A likely range, no finer than a quarter inch: <c>49 ¼ to 50 ½ in</c>.</summary>
    public static string Range(Length low, Length high, LengthUnit unit) => Spoken.Range(low, high, unit);

    /// <summary>A difference in length: <c>¾ in</c>, <c>1.9 cm</c>.</summary>
    public static string Difference(double inches, LengthUnit unit) => Setting(Rough(Math.Abs(inches), unit), unit);

    /// <summary>A share of speed: <c>0.3 %</c>; below 0.05 % only that.</summary>
    public static string Percent(double percent) =>
        percent < 0.05 ? "less than 0.1 %" : percent.ToString(percent < 10 ? "0.0" : "0", CultureInfo.InvariantCulture) + " %";
}
