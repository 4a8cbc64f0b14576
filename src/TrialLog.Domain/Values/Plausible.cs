using TrialLog.Domain.Boats;

namespace TrialLog.Domain.Values;

/// <summary>
/// What a person would believe of a paddle, a hull or a date. The bounds have no source: they are chosen wide, to catch a wrong
/// unit or a slip of a digit, not to judge.
/// </summary>
public static class Plausible
{
    /// <summary>The shortest and longest overall paddle length believed, 30 to 80 in.</summary>
    public static readonly Length ShortestPaddle = Length.FromInches(30), LongestPaddle = Length.FromInches(80);

    /// <summary>The shortest and longest blade believed, 8 to 36 in.</summary>
    public static readonly Length ShortestBlade = Length.FromInches(8), LongestBlade = Length.FromInches(36);

    /// <summary>The highest seat over the waterline believed, 24 in.</summary>
    public static readonly Length HighestSeat = Length.FromInches(24);

    private static readonly BelievedRange Paddle = new("a paddle", ShortestPaddle, LongestPaddle);
    private static readonly BelievedRange Blade = new("a blade", ShortestBlade, LongestBlade);
    private static readonly BelievedRange Seat = new("a seat height", Length.FromInches(0), HighestSeat);

    /// <summary>Says what is wrong with an overall paddle length, or null.</summary>
    public static string? ProblemWithPaddleLength(Length length) => Paddle.Problem(length);

    /// <summary>Says what is wrong with a blade length on a paddle whose shortest overall length is given, or null.</summary>
    public static string? ProblemWithBlade(Length blade, Length shortestPaddle) =>
        Blade.Problem(blade)
        ?? (blade >= shortestPaddle ? $"A blade of {blade} is longer than the whole paddle of {shortestPaddle}; a blade is measured from " +
            $"its tip to the throat." : null);

    /// <summary>Says what is wrong with a seat height, sit bones to waterline, or null.</summary>
    public static string? ProblemWithSeatHeight(Length seatHeight) => Seat.Problem(seatHeight);

    /// <summary>The first day believed of an outing, 1950-01-01.</summary>
    public static readonly DateOnly FirstDay = new(1950, 1, 1);

    /// <summary>
    /// Says what is wrong with the day of an outing, or null. One day ahead is believed: somewhere it already is tomorrow.
    /// </summary>
    public static string? ProblemWithDate(DateOnly date, DateOnly today) =>
        date > today.AddDays(1) ? $"{date:yyyy-MM-dd} is in the future (today is {today:yyyy-MM-dd}); an outing is logged " +
            $"once it was paddled."
        : date < FirstDay ? $"{date:yyyy-MM-dd} is before {FirstDay:yyyy}; check the year."
        : null;
}
