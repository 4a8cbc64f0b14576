using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>
/// A length from 0 to 10 m, held as whole nanometres. One inch is 25.4 mm exactly (international yard and pound
/// agreement of 1959), so every 64th of an inch, every 0.00001 in and every 0.001 mm is held without rounding.
/// </summary>
public readonly record struct Length : IComparable<Length>
{
    internal const long NanometresPerInch = 25_400_000;
    internal const long NanometresPerMillimetre = 1_000_000;

    /// <summary>The longest length that can be held, 10 m.</summary>
    public static readonly Length Longest = new(10_000 * NanometresPerMillimetre);

    /// <summary>A quarter inch, the step that paddles are tuned and cut in.</summary>
    public static readonly Length QuarterInch = new(NanometresPerInch / 4);

    private Length(long nanometres) => Nanometres = nanometres;

    /// <summary>The length in nanometres, 0 to 10^10.</summary>
    public long Nanometres { get; }

    /// <summary>The length in inches.</summary>
    public double Inches => (double)Nanometres / NanometresPerInch;

    /// <summary>The length in centimetres.</summary>
    public double Centimetres => Nanometres / (NanometresPerMillimetre * 10.0);

    /// <summary>A length of so many nanometres.</summary>
    /// <exception cref="InvalidValueException">Not between 0 and 10 m.</exception>
    public static Length FromNanometres(long nanometres) =>
        nanometres < 0 || nanometres > 10_000 * NanometresPerMillimetre
            ? throw new InvalidValueException("A length lies between 0 and 10 m.")
            : new Length(nanometres);

    /// <summary>The length nearest to so many inches.</summary>
    /// <exception cref="InvalidValueException">Not a number, or not between 0 and 10 m.</exception>
    public static Length FromInches(double inches) => FromDouble(inches * NanometresPerInch);

    /// <summary>The length nearest to so many millimetres.</summary>
    /// <exception cref="InvalidValueException">Not a number, or not between 0 and 10 m.</exception>
    public static Length FromMillimetres(double millimetres) => FromDouble(millimetres * NanometresPerMillimetre);

    private static Length FromDouble(double nanometres) =>
        double.IsFinite(nanometres) && Math.Abs(nanometres) < 1e12
            ? FromNanometres((long)Math.Round(nanometres, MidpointRounding.AwayFromZero))
            : throw new InvalidValueException("A length lies between 0 and 10 m.");

    /// <summary>How much longer this length is than <paramref name="other"/>, in inches; negative if it is shorter.</summary>
    public double InchesMoreThan(Length other) => (double)(Nanometres - other.Nanometres) / NanometresPerInch;

    /// <summary>This length made longer by so many inches (shorter, if negative).</summary>
    /// <exception cref="InvalidValueException">The result is not between 0 and 10 m.</exception>
    public Length PlusInches(double inches) => FromDouble(Nanometres + inches * NanometresPerInch);

    /// <summary>The nearest whole multiple of <paramref name="step"/>; half way goes up.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is zero.</exception>
    public Length RoundedTo(Length step)
    {
        ArgumentOutOfRangeException.ThrowIfZero(step.Nanometres, nameof(step));
        return new Length((Nanometres + step.Nanometres / 2) / step.Nanometres * step.Nanometres);
    }

    /// <summary>
    /// Reads <c>49.75in</c>, <c>49 3/4</c>, <c>49¾"</c>, <c>4' 1.5"</c>, <c>126.4cm</c>, <c>1264mm</c>, <c>1.264m</c>;
    /// a bare number is in <paramref name="bare"/> units.
    /// </summary>
    /// <exception cref="InvalidValueException">It cannot be read as a length, or is not between 0 and 10 m.</exception>
    public static Length Parse(string text, LengthUnit bare = LengthUnit.Inches) => LengthText.Parse(text, bare);

    /// <summary>As <see cref="Parse"/>, without the exception; <paramref name="problem"/> says what is wrong.</summary>
    public static bool TryParse(string? text, LengthUnit bare, out Length length, [NotNullWhen(false)] out string? problem) =>
        LengthText.TryParse(text, bare, out length, out problem);

    /// <summary>
    /// As a paddler writes it: <c>49 ¾ in</c> where it is a whole 16th of an inch, else decimals; <c>126.4 cm</c>.
    /// Nothing is rounded away: parsing gives the same length back.
    /// </summary>
    public string ToText(LengthUnit unit = LengthUnit.Inches) => LengthText.Write(this, unit);

    /// <summary>Decimal inches without a unit, for files: <c>49.75</c>. Parsing gives the same length back.</summary>
    public string ToDecimalInches()
    {
        // Nine decimals of an inch are finer than a nanometre, so the way back rounds to the same nanometre.
        decimal inches = (decimal)Nanometres / NanometresPerInch;
        return Math.Round(inches, 9).ToString("0.#########", CultureInfo.InvariantCulture);
    }

    /// <inheritdoc cref="ToText"/>
    public override string ToString() => ToText();

    /// <inheritdoc/>
    public int CompareTo(Length other) => Nanometres.CompareTo(other.Nanometres);

    /// <summary>Shorter than.</summary>
    public static bool operator <(Length a, Length b) => a.Nanometres < b.Nanometres;

    /// <summary>Longer than.</summary>
    public static bool operator >(Length a, Length b) => a.Nanometres > b.Nanometres;

    /// <summary>Not longer than.</summary>
    public static bool operator <=(Length a, Length b) => a.Nanometres <= b.Nanometres;

    /// <summary>Not shorter than.</summary>
    public static bool operator >=(Length a, Length b) => a.Nanometres >= b.Nanometres;
}
