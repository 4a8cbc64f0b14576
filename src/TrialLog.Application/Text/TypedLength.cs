using System.Globalization;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Text;

/// <summary>Lengths as they stand in a field to be typed over.</summary>
internal static class TypedLength
{
    /// <summary>A length without its unit: <c>49.75</c>, to the millimetre in centimetres.</summary>
    public static string Typed(this Length length, LengthUnit unit) => unit == LengthUnit.Centimetres
        ? length.Centimetres.ToString("0.0##", CultureInfo.InvariantCulture)
        : Math.Round(length.Inches, 4).ToString("0.####", CultureInfo.InvariantCulture);
}
