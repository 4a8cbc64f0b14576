using System.Text.Json;
using MathNet.Numerics.LinearAlgebra;
using TrialLog.Recordings.Csv;

namespace TrialLog.Tests.Tuning.References;

/// <summary>Reads what the scripts under tests/reference have stored.</summary>
internal static class ReferenceFile
{
    public static string PathOf(string name) => Repository.File("tests/reference/" + name);

    public static JsonElement Json(string name) => JsonDocument.Parse(File.ReadAllText(PathOf(name))).RootElement;

    public static double[] Numbers(this JsonElement element, string name) =>
        element.GetProperty(name) is { ValueKind: JsonValueKind.Array } array ? [.. array.EnumerateArray().Select(item => item.GetDouble())]
            : [element.Number(name)];

    public static double Number(this JsonElement element, string name) => element.GetProperty(name).GetDouble();

    public static string Text(this JsonElement element, string name) => element.GetProperty(name).GetString()!;

    /// <summary>A column of ones, then the named columns.</summary>
    public static Matrix<double> Design(this JsonElement element)
    {
        int rows = element.Numbers("y").Length;
        JsonElement columns = element.GetProperty("columns");
        IEnumerable<double[]> named = columns.ValueKind == JsonValueKind.Object
            ? columns.EnumerateObject().Select(column => columns.Numbers(column.Name))
            : [];
        return Matrix<double>.Build.DenseOfColumnArrays(named.Prepend([.. Enumerable.Repeat(1.0, rows)]));
    }
}

/// <summary>Comparing with a reference.</summary>
internal static class Near
{
    /// <summary>How far apart, relative to the reference.</summary>
    public static double Relative(double expected, double actual) => Math.Abs(actual - expected) / Math.Abs(expected);

    public static void All(IReadOnlyList<double> expected, IReadOnlyList<double> actual, double relative, string what)
    {
        Assert.Equal(expected.Count, actual.Count);
        for (int at = 0; at < expected.Count; at++)
            Assert.True(Relative(expected[at], actual[at]) <= relative,
                $"{what} {at}: {actual[at]:R} where {expected[at]:R} was expected, off by {Relative(expected[at], actual[at]):0.0e+0}.");
    }

    public static void One(double expected, double actual, double relative, string what) => All([expected], [actual], relative, what);
}
