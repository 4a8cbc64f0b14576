using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>A number a minute as people write it: <c>142</c>, <c>58,5</c>, <c>142 bpm</c>.</summary>
internal static class RateText
{
    /// <summary>Reads the number, with or without one of the unit's names after it.</summary>
    public static bool TryRead(string? text, out decimal rate, params ReadOnlySpan<string> units)
    {
        string number = (text ?? "").Trim();
        foreach (string unit in units)
        {
            if (number.EndsWith(unit, StringComparison.OrdinalIgnoreCase))
            {
                number = number[..^unit.Length].TrimEnd();
                break;
            }
        }

        return decimal.TryParse(number.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out rate);
    }
}
