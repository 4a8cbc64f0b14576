using System.Globalization;

namespace TrialLog.Domain.Values;

/// <summary>Scales from 0 to 10 that are answered in halves.</summary>
internal static class HalfPoints
{
    /// <summary>Reads <c>6</c>, <c>6.5</c>, <c>6,5</c> <c>6½</c> or <c>6 ½</c> as a number of halves, 0 to 20.</summary>
    public static bool TryRead(string? text, out int halves)
    {
        string plain = (text ?? "").Trim().Replace(',', '.').Replace(" ½", "½", StringComparison.Ordinal)
            .Replace("½", ".5", StringComparison.Ordinal);
        halves = 0;
        if (!decimal.TryParse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal points)
            || points > 10 || points * 2 != decimal.Floor(points * 2))
            return false;
        halves = (int)(points * 2);
        return true;
    }
}
