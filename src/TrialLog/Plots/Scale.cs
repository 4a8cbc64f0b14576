using System.Globalization;
using TrialLog.Domain.Values;

namespace TrialLog.Plots;

/// <summary>A straight map from values to Braille dots.</summary>
/// <param name="From">The value at <paramref name="FirstDot"/>.</param>
/// <param name="To">The value at <paramref name="LastDot"/>; not the same as <paramref name="From"/>.</param>
/// <param name="FirstDot">A dot.</param>
/// <param name="LastDot">A dot; below the first where the axis runs the other way.</param>
internal readonly record struct Scale(double From, double To, int FirstDot, int LastDot)
{
    /// <summary>The dot nearest to the value; far outside the axis, some dot far outside.</summary>
    public int Dot(double value) =>
        (int)Math.Round(Math.Clamp(FirstDot + (value - From) / (To - From) * (LastDot - FirstDot), -10_000, 10_000));

    /// <summary>The value at a dot.</summary>
    public double Value(int dot) => From + (double)(dot - FirstDot) / (LastDot - FirstDot) * (To - From);

    /// <summary>Round values, 1, 2 or 5 times a power of ten apart, at most so many.</summary>
    public IEnumerable<double> RoundValues(int most)
    {
        double low = Math.Min(From, To), high = Math.Max(From, To);
        double rough = (high - low) / Math.Max(1, most);
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double step = power * (rough / power) switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 };
        for (double tick = Math.Ceiling(low / step - 1e-9); tick * step <= high + step * 1e-9; tick++)
            yield return tick * step;
    }

    /// <summary>
    /// The tick lengths of an axis in inches that carries one every <paramref name="dotsApart"/> dots or more, in the paddler's unit.
    /// </summary>
    public IEnumerable<(double Inches, string Label)> Lengths(LengthUnit unit, int dotsApart)
    {
        double perUnit = unit == LengthUnit.Centimetres ? 1 / 2.54 : 1;
        double dotsPerUnit = Math.Abs((LastDot - FirstDot) / (To - From)) * perUnit;
        double[] steps = unit == LengthUnit.Centimetres ? [0.5, 1, 2, 5, 10, 20, 50] : [0.25, 0.5, 1, 2, 4, 6, 12, 24];
        double step = steps.FirstOrDefault(candidate => candidate * dotsPerUnit >= dotsApart, steps[^1]);
        double low = Math.Min(From, To) / perUnit, high = Math.Max(From, To) / perUnit;
        for (double tick = Math.Ceiling(low / step - 1e-9); tick * step <= high + 1e-9; tick++)
        {
            double value = tick * step;
            string label = unit == LengthUnit.Centimetres
                ? value.ToString("0.#", CultureInfo.InvariantCulture)
                : Length.FromInches(Math.Max(0, value)).ToText()[..^3];
            yield return (value * perUnit, label);
        }
    }
}
