using System.Globalization;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Classical;

/// <summary>Says the vertex and the shape of its interval in plain words.</summary>
internal static class VertexSentence
{
    /// <summary>The vertex, or that the parabola bends the wrong way; then how sure that is.</summary>
    public static string For(double? vertexInches, FiellerInterval interval, LengthUnit unit)
    {
        string range = $"{interval.Level * 100:0} %";
        string place = vertexInches is { } vertex
            ? $"Without a prior the best length comes out at {Say(vertex, unit)}"
            : "The parabola bends the wrong way, slowest in the middle, so it has no best length";
        return interval.Shape switch
        {
            FiellerShape.Bounded when vertexInches is not null =>
                $"{place}, with a {range} confidence interval from {Say(interval.Low, unit)} to {Say(interval.High, unit)}.",
            FiellerShape.Bounded =>
                $"{place}; a curve so clearly upside down points to lengths tangled with something else.",
            FiellerShape.Outside =>
                $"{place}; the {range} confidence set is open-ended on both sides: anything below {Say(interval.Low, unit)} or above " +
                    $"{Say(interval.High, unit)}, because the bend could as well be none.",
            _ => $"{place}; the {range} confidence set is every length there is: these pieces alone say nothing about it.",
        };
    }

    /// <summary>A second sentence for what was left out; empty where nothing was.</summary>
    public static string LeftOut(IReadOnlyList<string> reasons) =>
        reasons.Count == 0 ? "" : $" Left out: {string.Join("; ", reasons)}.";

    /// <summary>A length to a tenth of an inch or a millimetre; far-off lengths, which only say "far off", to the whole.</summary>
    private static string Say(double inches, LengthUnit unit)
    {
        (double value, string name) = unit == LengthUnit.Centimetres ? (inches * 2.54, "cm") : (inches, "in");
        return Math.Abs(inches) is > 20 and < 100
            ? string.Create(CultureInfo.InvariantCulture, $"{value:0.0} {name}")
            : string.Create(CultureInfo.InvariantCulture, $"{value:0} {name}");
    }
}
