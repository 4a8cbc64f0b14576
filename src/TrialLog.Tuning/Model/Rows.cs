using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace TrialLog.Tuning.Model;

/// <summary>Arithmetic on rows of numbers, in which a fit spends a third of its time.</summary>
internal static class Rows
{
    /// <summary>Adds a multiple of one row to another, two numbers at a time: the same to the last digit as one at a time.</summary>
    /// <param name="row">The row.</param>
    /// <param name="scale">The multiple.</param>
    /// <param name="into">As many numbers, to which it is added.</param>
    public static void AddScaled(ReadOnlySpan<double> row, double scale, Span<double> into)
    {
        Span<Vector128<double>> pairs = MemoryMarshal.Cast<double, Vector128<double>>(into);
        ReadOnlySpan<Vector128<double>> added = MemoryMarshal.Cast<double, Vector128<double>>(row)[..pairs.Length];
        Vector128<double> scales = Vector128.Create(scale);
        for (int i = 0; i < pairs.Length; i++)
            pairs[i] += scales * added[i];
        if (into.Length % 2 == 1)
            into[^1] += scale * row[^1];
    }
}
