using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>
/// The range in which a measure is believed: wide, to catch a wrong unit or a slip of a digit, not to judge.
/// </summary>
/// <param name="Name">What is measured, with its article: <c>a seated reach</c>.</param>
/// <param name="Shortest">The least that is believed.</param>
/// <param name="Longest">The most that is believed.</param>
public sealed record BelievedRange(string Name, Length Shortest, Length Longest)
{
    /// <summary>
    /// Says what is wrong with the length and asks whether another unit was meant where that would be believable; null where
    /// the length is believable.
    /// </summary>
    public string? Problem(Length length, LengthUnit unit = LengthUnit.Inches)
    {
        if (length >= Shortest && length <= Longest)
            return null;
        (double inches, double centimetres) = (length.Inches, length.Centimetres);
        string name = char.ToUpperInvariant(Name[0]) + Name[1..];
        return (Believes(inches / 2.54), Believes(centimetres)) switch
        {
            (true, _) => $"{name} of {Number(inches)} in is {Metres(length)}; did you mean {Number(inches)} cm?",
            (_, true) => $"{name} of {Number(centimetres)} cm is {Number(Math.Round(inches, 1))} in; did you mean " +
                $"{Number(centimetres)} in?",
            _ => $"{name} of {Spoken.ToTenth(length, unit)} is not believable ({Spoken.ToTenth(Shortest, unit)} to " +
                $"{Spoken.ToTenth(Longest, unit)}); check the number and its unit.",
        };
    }

    private bool Believes(double inches) => inches >= Shortest.Inches && inches <= Longest.Inches;

    private static string Number(double value) => Math.Round(value, 3).ToString(CultureInfo.InvariantCulture);

    private static string Metres(Length length) => length.Centimetres < 100
        ? (length.Centimetres).ToString("0", CultureInfo.InvariantCulture) + " cm"
        : (length.Centimetres / 100).ToString("0.0", CultureInfo.InvariantCulture) + " m";
}
