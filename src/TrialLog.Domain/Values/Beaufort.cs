using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace TrialLog.Domain.Values;

/// <summary>
/// Wind by the Beaufort scale, 0 to 12. Speed: v = 0.836 B^1.5 m/s (WMO, Beaufort equivalent scale).
/// </summary>
public readonly partial record struct Beaufort
{
    private Beaufort(int number) => Number = number;

    /// <summary>The Beaufort number, 0 to 12.</summary>
    public int Number { get; }

    /// <summary>Mean wind speed at 10 m height, in m/s: 0.836 B^1.5 (WMO).</summary>
    public double MetresPerSecond => 0.836 * Math.Pow(Number, 1.5);

    /// <summary>A wind of that Beaufort number.</summary>
    /// <exception cref="InvalidValueException">Not between 0 and 12.</exception>
    public static Beaufort FromNumber(int number) =>
        number is >= 0 and <= 12 ? new Beaufort(number) : throw new InvalidValueException("Wind is a Beaufort number, 0 to 12.");

    [GeneratedRegex(@"^\s*(?:(?:F|Bft|Beaufort|Force)\s*)?(?<number>[0-9]{1,2})(?:\.0)?(?:\s*(?:Bft|Beaufort))?\s*$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();

    /// <summary>Reads a whole number from 0 to 12: <c>4</c>, <c>F4</c>, <c>4 Bft</c>.</summary>
    public static bool TryParse(string? text, out Beaufort wind, [NotNullWhen(false)] out string? problem)
    {
        Match match = Pattern().Match(text ?? "");
        int number = match.Success ? int.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture) : 0;
        bool read = match.Success && number <= 12;
        wind = read ? new Beaufort(number) : default;
        problem = read ? null : $"“{Quoted.Brief(text)}” is not a wind; give a Beaufort number, 0 to 12.";
        return read;
    }

    /// <summary>The Beaufort number.</summary>
    public override string ToString() => Number.ToString(CultureInfo.InvariantCulture);
}
