using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>
/// How sore shoulder, elbow or back were in or after a piece: 0 (nothing) to 10 (worst imaginable), halves allowed.
/// Soreness is a reason to shorten or stop, never a point on the response curve.
/// </summary>
public readonly record struct Soreness
{
    private Soreness(int halves) => Halves = halves;

    /// <summary>The soreness in half points, 0 to 20.</summary>
    public int Halves { get; }

    /// <summary>The soreness in points, 0 to 10.</summary>
    public double Points => Halves / 2.0;

    /// <summary>A soreness of so many points.</summary>
    /// <exception cref="InvalidValueException">Not 0 to 10 in halves.</exception>
    public static Soreness FromPoints(double points) =>
        points is >= 0 and <= 10 && points * 2 == Math.Floor(points * 2)
            ? new Soreness((int)(points * 2))
            : throw new InvalidValueException("Soreness goes from 0 to 10, in halves.");

    /// <summary>Reads <c>0</c>, <c>2.5</c>, <c>2½</c>.</summary>
    public static bool TryParse(string? text, out Soreness soreness, [NotNullWhen(false)] out string? problem)
    {
        bool read = HalfPoints.TryRead(text, out int halves);
        soreness = read ? new Soreness(halves) : default;
        problem = read ? null : $"“{Quoted.Brief(text)}” is not a soreness; it goes from 0 (none) to 10, in halves.";
        return read;
    }

    /// <summary>As <see cref="TryParse"/>.</summary>
    /// <exception cref="InvalidValueException">It is not 0 to 10 in halves.</exception>
    public static Soreness Parse(string text) =>
        TryParse(text, out Soreness soreness, out string? problem) ? soreness : throw new InvalidValueException(problem);

    /// <summary><c>2</c> or <c>2.5</c>.</summary>
    public override string ToString() => Points.ToString(CultureInfo.InvariantCulture);
}
