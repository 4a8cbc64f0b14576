namespace TrialLog.Domain;

/// <summary>
/// What a person would believe of a paddle. The bounds have no source: they are chosen wide, to catch a wrong unit or
/// a slip of a digit, not to judge.
/// </summary>
public static class Plausible
{
    /// <summary>The shortest and longest overall paddle length believed, 30 to 80 in.</summary>
    public static readonly Length ShortestPaddle = Length.FromInches(30), LongestPaddle = Length.FromInches(80);

    /// <summary>The shortest and longest blade believed, 8 to 36 in.</summary>
    public static readonly Length ShortestBlade = Length.FromInches(8), LongestBlade = Length.FromInches(36);

    /// <summary>Says what is wrong with an overall paddle length, or null.</summary>
    public static string? ProblemWithPaddleLength(Length length) =>
        length >= ShortestPaddle && length <= LongestPaddle ? null
        : $"A paddle of {length} ({length.ToText(LengthUnit.Centimetres)}) is not believable ({ShortestPaddle} to {LongestPaddle}); check the unit.";

    /// <summary>Says what is wrong with a blade length on a paddle whose shortest overall length is given, or null.</summary>
    public static string? ProblemWithBlade(Length blade, Length shortestPaddle) =>
        blade < ShortestBlade || blade > LongestBlade
            ? $"A blade of {blade} ({blade.ToText(LengthUnit.Centimetres)}) is not believable ({ShortestBlade} to {LongestBlade}); check the unit."
        : blade >= shortestPaddle ? $"A blade of {blade} is longer than the whole paddle of {shortestPaddle}."
        : null;
}
