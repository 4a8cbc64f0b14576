using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace TrialLog.Domain.Values;

/// <summary>
/// A distance over water from 1 m to 1,000 km, held as whole micrometres. One mile is 1,609.344 m exactly
/// (international mile), so 0.00001 mi is held without rounding.
/// </summary>
public readonly partial record struct Distance : IComparable<Distance>
{
    private const long MicrometresPerMetre = 1_000_000;
    private const long MicrometresPerMile = 1_609_344_000;

    // Counted from the shortest distance, so that one that was never set is 1 m and not impossible.
    private readonly long _beyondShortest;

    private Distance(long micrometres) => _beyondShortest = micrometres - MicrometresPerMetre;

    /// <summary>The distance in micrometres.</summary>
    public long Micrometres => _beyondShortest + MicrometresPerMetre;

    /// <summary>The distance in metres.</summary>
    public double Metres => (double)Micrometres / MicrometresPerMetre;

    /// <summary>A distance of so many micrometres.</summary>
    /// <exception cref="InvalidValueException">Not between 1 m and 1,000 km.</exception>
    public static Distance FromMicrometres(long micrometres) =>
        micrometres is < MicrometresPerMetre or > 1_000_000 * MicrometresPerMetre
            ? throw new InvalidValueException("A distance lies between 1 m and 1,000 km.")
            : new Distance(micrometres);

    /// <summary>The distance nearest to so many metres.</summary>
    /// <exception cref="InvalidValueException">Not a number, or not between 1 m and 1,000 km.</exception>
    public static Distance FromMetres(double metres) =>
        double.IsFinite(metres) && Math.Abs(metres) < 1e9
            ? FromMicrometres((long)Math.Round(metres * MicrometresPerMetre, MidpointRounding.AwayFromZero))
            : throw new InvalidValueException("A distance lies between 1 m and 1,000 km.");

    [GeneratedRegex(@"^\s*(?<number>[0-9]{1,12}(?:[.,][0-9]{1,12})?|[.,][0-9]{1,12})\s*(?<unit>km|m|mi|miles?|metres?|meters?|yd)?\s*$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();

    /// <summary>Reads <c>1km</c>, <c>1000m</c>, <c>0.62mi</c>, <c>440yd</c>; a bare number is in metres.</summary>
    /// <exception cref="InvalidValueException">It cannot be read as a distance, or is not between 1 m and 1,000 km.</exception>
    public static Distance Parse(string text) =>
        TryParse(text, out Distance distance, out string? problem) ? distance : throw new InvalidValueException(problem);

    /// <summary>As <see cref="Parse"/>, without the exception; <paramref name="problem"/> says what is wrong.</summary>
    public static bool TryParse(string? text, out Distance distance, [NotNullWhen(false)] out string? problem)
    {
        distance = default;
        Match match = Pattern().Match(text ?? "");
        if (!match.Success)
        {
            problem = $"“{Quoted.Brief(text)}” is not a distance; write it like 1km, 1000m or 0.62mi.";
            return false;
        }

        decimal value = decimal.Parse(
            match.Groups["number"].Value.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        long perUnit = match.Groups["unit"].Value.ToLowerInvariant() switch
        {
            "km" => 1000 * MicrometresPerMetre,
            "mi" or "mile" or "miles" => MicrometresPerMile,
            "yd" => MicrometresPerMile / 1760,
            _ => MicrometresPerMetre,
        };
        if (value * perUnit is < MicrometresPerMetre or > 1_000_000m * MicrometresPerMetre)
        {
            problem = $"“{Quoted.Brief(text)}” is not between 1 m and 1,000 km; check the unit.";
            return false;
        }

        distance = FromMicrometres((long)Math.Round(value * perUnit, MidpointRounding.AwayFromZero));
        problem = null;
        return true;
    }

    /// <summary>Metres without a unit, for files: <c>1000</c>. Parsing gives the same distance back.</summary>
    public string ToDecimalMetres() =>
        ((decimal)Micrometres / MicrometresPerMetre).ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary><c>1.5 km</c> from 1 km on, <c>400 m</c> below. Parsing gives the same distance back.</summary>
    public override string ToString() => Micrometres >= 1000 * MicrometresPerMetre
        ? ((decimal)Micrometres / (1000 * MicrometresPerMetre)).ToString("0.#########", CultureInfo.InvariantCulture) + " km"
        : ToDecimalMetres() + " m";

    /// <inheritdoc/>
    public int CompareTo(Distance other) => Micrometres.CompareTo(other.Micrometres);

    /// <summary>Shorter than.</summary>
    public static bool operator <(Distance a, Distance b) => a.Micrometres < b.Micrometres;

    /// <summary>Longer than.</summary>
    public static bool operator >(Distance a, Distance b) => a.Micrometres > b.Micrometres;

    /// <summary>Not longer than.</summary>
    public static bool operator <=(Distance a, Distance b) => a.Micrometres <= b.Micrometres;

    /// <summary>Not shorter than.</summary>
    public static bool operator >=(Distance a, Distance b) => a.Micrometres >= b.Micrometres;
}
