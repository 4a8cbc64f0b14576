using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Csv;

/// <summary>Cells that are not a value of the domain with a parser of its own.</summary>
internal static class CellParsers
{
    private static readonly string[] DateForms = ["yyyy-MM-dd", "yyyyMMdd", "yyyy-M-d"];
    private static readonly string[] TimeForms = ["H:mm", "H:mm:ss", "H:mm:ss.FFFFFFF"];

    /// <summary>
    /// A day by ISO 8601, and the time of day where one follows it; a time with an offset is refused, since the day may be another there.
    /// </summary>
    public static bool DateAndTime(string? text, out (DateOnly Date, TimeOnly? Time) value, [NotNullWhen(false)] out string? problem)
    {
        string[] parts = (text ?? "").Trim().Split(['T', ' '], 2);
        TimeOnly time = default;
        bool read = Date(parts[0], out DateOnly date, out problem) && (parts.Length == 1 || TimeOfDay(parts[1], out time, out problem));
        value = (date, parts.Length == 1 ? null : time);
        return read;
    }

    /// <summary>A day by ISO 8601.</summary>
    public static bool Date(string? text, out DateOnly date, [NotNullWhen(false)] out string? problem)
    {
        bool read = DateOnly.TryParseExact(text?.Trim(), DateForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out date);
        problem = read ? null : $"“{Quoted.Brief(text)}” is not a day of the calendar; write it year first, like 2026-05-31.";
        return read;
    }

    /// <summary>A time of day by the 24-hour clock.</summary>
    public static bool TimeOfDay(string? text, out TimeOnly time, [NotNullWhen(false)] out string? problem)
    {
        bool read = TimeOnly.TryParseExact(text?.Trim(), TimeForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out time);
        problem = read ? null : $"“{Quoted.Brief(text)}” is not a time of day; write it like 07:30 or 17:05.";
        return read;
    }

    /// <summary>A course: round-trip, out, back, loop.</summary>
    public static bool Course(string? text, out Course course, [NotNullWhen(false)] out string? problem)
    {
        (bool read, course) = text?.Trim().ToLowerInvariant().Replace(' ', '-').Replace('_', '-') switch
        {
            "round-trip" or "roundtrip" => (true, Domain.Log.Course.RoundTrip),
            "out" => (true, Domain.Log.Course.Out),
            "back" => (true, Domain.Log.Course.Back),
            "loop" => (true, Domain.Log.Course.Loop),
            _ => (false, Domain.Log.Course.RoundTrip),
        };
        problem = read ? null : $"“{Quoted.Brief(text)}” is not a course; it is round-trip, out, back or loop.";
        return read;
    }

    /// <summary>The course as it is written.</summary>
    public static string Write(Course course) =>
        course == Domain.Log.Course.RoundTrip ? "round-trip" : course.ToString().ToLowerInvariant();

    /// <summary>What timed a piece: hand or watch.</summary>
    public static bool Timed(string? text, out TimedBy timedBy, [NotNullWhen(false)] out string? problem)
    {
        (bool read, timedBy) = text?.Trim().ToLowerInvariant() switch
        {
            "hand" => (true, TimedBy.Hand),
            "watch" => (true, TimedBy.Watch),
            _ => (false, TimedBy.Hand),
        };
        problem = read ? null : $"“{Quoted.Brief(text)}” is not what timed a piece; it is hand or watch.";
        return read;
    }

    /// <summary>Yes or no.</summary>
    public static bool YesNo(string? text, out bool value, [NotNullWhen(false)] out string? problem)
    {
        (bool read, value) = text?.Trim().ToLowerInvariant() switch
        {
            "yes" or "y" or "true" or "1" => (true, true),
            "no" or "n" or "false" or "0" => (true, false),
            _ => (false, false),
        };
        problem = read ? null : $"“{Quoted.Brief(text)}” is neither yes nor no.";
        return read;
    }

    /// <summary>The unit a paddler reads lengths in: in or cm.</summary>
    public static bool Unit(string? text, out LengthUnit unit, [NotNullWhen(false)] out string? problem)
    {
        (bool read, unit) = text?.Trim().ToLowerInvariant() switch
        {
            "in" or "inch" or "inches" => (true, LengthUnit.Inches),
            "cm" or "centimetres" or "centimeters" => (true, LengthUnit.Centimetres),
            _ => (false, LengthUnit.Inches),
        };
        problem = read ? null : $"“{Quoted.Brief(text)}” is not a unit of length; it is in or cm.";
        return read;
    }

    /// <summary>A length whose bare number is in inches.</summary>
    public static bool Inches(string? text, out Length length, [NotNullWhen(false)] out string? problem) =>
        Length.TryParse(text, LengthUnit.Inches, out length, out problem);

    /// <summary>A length whose bare number is in centimetres.</summary>
    public static bool Centimetres(string? text, out Length length, [NotNullWhen(false)] out string? problem) =>
        Length.TryParse(text, LengthUnit.Centimetres, out length, out problem);

    /// <summary>A distance whose bare number is in kilometres.</summary>
    public static bool Kilometres(string? text, out Distance distance, [NotNullWhen(false)] out string? problem) =>
        Distance.TryParse(text is not null && char.IsAsciiDigit(text.TrimEnd().LastOrDefault()) ? text.TrimEnd() + "km" : text,
            out distance, out problem);

    /// <summary>A whole number within bounds.</summary>
    public static CellParser<int> Whole(int least, int most, string what) =>
        (string? text, out int value, [NotNullWhen(false)] out string? problem) =>
        {
            bool read = int.TryParse(text?.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out value) && value >= least
                && value <= most;
            problem = read ? null : $"“{Quoted.Brief(text)}” is not {what}; it is a whole number from {least} to {most}.";
            return read;
        };

    /// <summary>A decimal number within bounds, which <paramref name="what"/> names.</summary>
    public static CellParser<double> Number(double least, double most, string what) =>
        (string? text, out double value, [NotNullWhen(false)] out string? problem) =>
        {
            bool read = double.TryParse(text?.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out value)
                && value >= least && value <= most;
            problem = read ? null : $"“{Quoted.Brief(text)}” is not {what}.";
            return read;
        };
}
