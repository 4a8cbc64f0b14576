using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Text;

/// <summary>Days as people write them, the latest that is meant: an outing lies in the past.</summary>
internal static class DateText
{
    private const string Form = "write it like 2026-05-03, 3 may, sat, yesterday or -1";
    private const int MostDaysAgo = 3660;

    private static readonly string[] Days = ["sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"];
    private static readonly string[] WithYear = ["d MMM yyyy", "d MMMM yyyy", "MMM d yyyy", "MMMM d yyyy", "d.M.yyyy"];

    /// <summary>
    /// Reads <c>2026-05-03</c>, <c>24 nov</c>, <c>nov 24 2025</c>, <c>sat</c>, <c>-1</c>, <c>today</c>, <c>yesterday</c>.
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <param name="today">The day on which it was typed: <c>sat</c> is the last Saturday, today included, and <c>24 nov</c> the last 24
    /// November.</param>
    /// <param name="date">The day.</param>
    /// <param name="problem">What is wrong.</param>
    public static bool TryRead(string? text, DateOnly today, out DateOnly date, [NotNullWhen(false)] out string? problem)
    {
        string typed = (text ?? "").Trim().ToLowerInvariant().Replace(",", "", StringComparison.Ordinal).Replace('−', '-');
        problem = null;
        if (DateOnly.TryParseExact(typed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out date))
            return true;
        int day = typed.Length < 3 ? -1 : Array.FindIndex(Days, name => name.StartsWith(typed, StringComparison.Ordinal));
        if (typed is "today" or "yesterday")
            date = today.AddDays(typed == "today" ? 0 : -1);
        else if (day >= 0)
            date = today.AddDays(-(((int)today.DayOfWeek - day + 7) % 7));
        else if (typed.StartsWith('-') && int.TryParse(typed, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int ago)
            && ago >= -MostDaysAgo)
            date = today.AddDays(ago);
        else if (DateOnly.TryParseExact(typed, WithYear, CultureInfo.InvariantCulture, DateTimeStyles.None, out date))
            return true;
        else if (OfThisYearOrTheLast(typed, today) is { } found)
            date = found;
        else
            problem = $"“{Quoted.Brief(text)}” is not a date; {Form}.";
        return problem is null;
    }

    /// <summary>ISO 8601.</summary>
    public static string Write(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static DateOnly? OfThisYearOrTheLast(string typed, DateOnly today)
    {
        // 29 February may lie some years back; a day ahead is believed, since somewhere it already is tomorrow.
        for (int year = today.Year; year >= today.Year - 8; year--)
        {
            if (DateOnly.TryParseExact($"{typed}{(typed.EndsWith('.') ? "" : " ")}{year}", WithYear, CultureInfo.InvariantCulture,
                DateTimeStyles.None, out DateOnly date)
                && date <= today.AddDays(1))
                return date;
        }

        return null;
    }
}
