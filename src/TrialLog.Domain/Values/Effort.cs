using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>
/// Perceived exertion on the CR10 category-ratio scale, 0 to 10, halves allowed.
/// Source: Borg 1982, Med Sci Sports Exerc 14(5):377-81.
/// </summary>
public readonly record struct Effort : IComparable<Effort>
{
    private Effort(int halves) => Halves = halves;

    /// <summary>The effort in half points, 0 to 20.</summary>
    public int Halves { get; }

    /// <summary>The effort in CR10 points, 0 to 10.</summary>
    public double Points => Halves / 2.0;

    /// <summary>An effort of so many CR10 points.</summary>
    /// <exception cref="InvalidValueException">Not 0 to 10 in halves.</exception>
    public static Effort FromPoints(double points) =>
        points is >= 0 and <= 10 && points * 2 == Math.Floor(points * 2)
            ? new Effort((int)(points * 2))
            : throw new InvalidValueException("Effort goes from 0 to 10, in halves (CR10).");

    /// <summary>Reads <c>6</c>, <c>6.5</c>, <c>6½</c>.</summary>
    public static bool TryParse(string? text, out Effort effort, [NotNullWhen(false)] out string? problem)
    {
        bool read = HalfPoints.TryRead(text, out int halves);
        effort = read ? new Effort(halves) : default;
        problem = read ? null : $"“{Quoted.Brief(text)}” is not an effort; it goes from 0 to 10, in halves (CR10).";
        return read;
    }

    /// <summary>As <see cref="TryParse"/>.</summary>
    /// <exception cref="InvalidValueException">It is not 0 to 10 in halves.</exception>
    public static Effort Parse(string text) =>
        TryParse(text, out Effort effort, out string? problem) ? effort : throw new InvalidValueException(problem);

    /// <summary><c>6</c> or <c>6.5</c>.</summary>
    public override string ToString() => Points.ToString("0.#", CultureInfo.InvariantCulture);

    /// <inheritdoc/>
    public int CompareTo(Effort other) => Halves.CompareTo(other.Halves);

    /// <summary>Less than.</summary>
    public static bool operator <(Effort a, Effort b) => a.Halves < b.Halves;

    /// <summary>More than.</summary>
    public static bool operator >(Effort a, Effort b) => a.Halves > b.Halves;

    /// <summary>Not more than.</summary>
    public static bool operator <=(Effort a, Effort b) => a.Halves <= b.Halves;

    /// <summary>Not less than.</summary>
    public static bool operator >=(Effort a, Effort b) => a.Halves >= b.Halves;
}
