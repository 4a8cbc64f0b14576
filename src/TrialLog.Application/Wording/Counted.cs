namespace TrialLog.Application.Wording;

/// <summary>A number with its noun: <c>1 piece</c>, <c>4 pieces</c>.</summary>
internal static class Counted
{
    public static string Of(int number, string noun) => number == 1 ? $"1 {noun}" : $"{number:N0} {noun}s";
}
