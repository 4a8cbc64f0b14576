using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Application.Wording;

/// <summary>A start length in words.</summary>
internal static class StartWords
{
    /// <summary><c>in a solo hull start at 51 in, likely 48¾ to 53¼ in</c>.</summary>
    public static string InASoloHull(StartLength start, LengthUnit unit)
    {
        (Length low, Length high) = StartBelief.LikelyRange(start);
        return $"in a solo hull start at {Say.Quarter(start.Length, unit)}, likely {Say.Range(low, high, unit)}";
    }
}
