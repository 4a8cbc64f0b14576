using TrialLog.Domain.Values;

namespace TrialLog.Application.Text;

/// <summary>Lengths as they stand in a field to be typed over.</summary>
internal static class TypedLength
{
    /// <summary>As <see cref="TextForms.Length"/> writes it.</summary>
    public static string Typed(this Length length, LengthUnit unit) => TextForms.Length(unit).Write(length);
}
