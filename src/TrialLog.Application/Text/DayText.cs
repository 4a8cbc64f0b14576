using System.Globalization;
using System.Text.RegularExpressions;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Text;

/// <summary>A day as people type it. What is left out is filled in so that the day is the latest one that has been.</summary>
internal static partial class DayText
{
    private const string Examples = "write it like 2026-05-03, 3 may, sat, today or -1 for yesterday";

    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
    private static readonly string[] Weekdays = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"];

    [GeneratedRegex(@"^(?:(?<day>[0-9]{1,2})(?:st|nd|rd|th)?\.?\s*(?<month>[a-z]{3,9})|(?<month>[a-z]{3,9})\.?\s*(?<day>[0-9]{1,2})(?:st|nd|rd|th)?)\.?,?(?:\s*(?<year>[0-9]{4}))?$", RegexOptions.CultureInvariant)]
    private static partial Regex DayAndMonth();

    [GeneratedRegex("^[-−](?<ago>[0-9]{1,4})$", RegexOptions.CultureInvariant)]
    private static partial Regex Ago();

    /// <summary>The day as it is shown in a field.</summary>
    public static string Of(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>
    /// Reads <c>2026-05-03</c>, <c>today</c>, <c>yesterday</c>, <c>-1</c> (days back), <c>sat</c> (the last one, today included),
    /// <c>24 nov</c>, <c>nov 24</c>, <c>24 November 2025</c>, <c>24</c> (of this month, else of the one before).
    /// </summary>
    /// <exception cref="InvalidValueException">It is not a day.</exception>
    public static DateOnly Parse(string text, DateOnly today) => Read(text.Trim().ToLowerInvariant(), today)
        ?? throw new InvalidValueException($"“{Quoted.Brief(text.Trim())}” is not a date; {Examples}.");

    private static DateOnly? Read(string text, DateOnly today)
    {
        if (text is "today" or "0")
            return today;
        if (text is "yesterday")
            return today.AddDays(-1);
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly iso))
            return iso;
        if (Ago().Match(text) is { Success: true } ago)
            return today.AddDays(-Number(ago.Groups["ago"]));
        if (IndexOf(Weekdays, text, "day") is { } weekday)
            return today.AddDays(-(((int)today.DayOfWeek - weekday + 7) % 7));
        if (text.Length <= 2 && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int day))
        {
            DateOnly first = new(today.Year, today.Month, 1);
            return Latest(Day(first.Year, first.Month, day), Day(first.AddMonths(-1).Year, first.AddMonths(-1).Month, day), today);
        }

        if (DayAndMonth().Match(text) is not { Success: true } match || IndexOf(Months, match.Groups["month"].Value, "") is not { } month)
            return null;
        int number = Number(match.Groups["day"]);
        return match.Groups["year"].Success
            ? Day(Number(match.Groups["year"]), month + 1, number)
            : Latest(Day(today.Year, month + 1, number), Day(today.Year - 1, month + 1, number), today);
    }

    // One day ahead counts as having been: somewhere it already is tomorrow.
    private static DateOnly? Latest(DateOnly? now, DateOnly? before, DateOnly today) => now is { } day && day <= today.AddDays(1) ? day : before;

    private static DateOnly? Day(int year, int month, int day) =>
        year >= 1 && day >= 1 && day <= DateTime.DaysInMonth(year, month) ? new DateOnly(year, month, day) : null;

    // The first three letters tell; what follows must go on as the whole word does.
    private static int? IndexOf(string[] shorts, string text, string ending)
    {
        int at = text.Length >= 3 ? Array.IndexOf(shorts, text[..3]) : -1;
        if (at < 0)
            return null;
        string whole = ending.Length > 0
            ? CultureInfo.InvariantCulture.DateTimeFormat.DayNames[at].ToLowerInvariant()
            : CultureInfo.InvariantCulture.DateTimeFormat.MonthNames[at].ToLowerInvariant();
        return whole.StartsWith(text, StringComparison.Ordinal) || text == "sept" ? at : null;
    }

    private static int Number(Group group) => int.Parse(group.Value, CultureInfo.InvariantCulture);
}
