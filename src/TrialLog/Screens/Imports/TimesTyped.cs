using TrialLog.Domain.Values;

namespace TrialLog.Screens.Imports;

/// <summary>Times since a recording's start as they are typed: <c>5:32</c>, or a beginning and an end, <c>5:32 11:04</c>.</summary>
internal static class TimesTyped
{
    /// <exception cref="InvalidValueException">It is not a time.</exception>
    public static TimeSpan One(string text) =>
        text.Trim() is "0" or "0:00" ? TimeSpan.Zero : TimeSpan.FromMilliseconds(PieceTime.Parse(text.Trim()).Milliseconds);

    /// <exception cref="InvalidValueException">It is not two times, the later one last.</exception>
    public static (TimeSpan Start, TimeSpan End) Two(string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length != 2)
            throw new InvalidValueException("Type where it begins and where it ends, such as 5:32 11:04.");
        (TimeSpan start, TimeSpan end) = (One(words[0]), One(words[1]));
        return end > start ? (start, end) : throw new InvalidValueException("It would end before it begins.");
    }
}
