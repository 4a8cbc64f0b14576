using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Text;

/// <summary>The text forms of all values that are typed.</summary>
internal static class TextForms
{
    private static readonly (string Text, Course Value)[] Courses =
        [("round-trip", Domain.Log.Course.RoundTrip), ("out", Domain.Log.Course.Out), ("back", Domain.Log.Course.Back),
            ("loop", Domain.Log.Course.Loop)];

    private static readonly TextForm<Length> Inches = LengthIn(LengthUnit.Inches), Centimetres = LengthIn(LengthUnit.Centimetres);

    /// <summary>Distances: <c>1 km</c>.</summary>
    public static readonly TextForm<Distance> Distance = new(Domain.Values.Distance.TryParse, static value => value.ToString());

    /// <summary>Effort on the CR10 scale: <c>6.5</c>.</summary>
    public static readonly TextForm<Effort> Effort = new(Domain.Values.Effort.TryParse, static value => value.ToString());

    /// <summary>Soreness: <c>2</c>.</summary>
    public static readonly TextForm<Soreness> Soreness = new(Domain.Values.Soreness.TryParse, static value => value.ToString());

    /// <summary>Wind: <c>4</c>, also typed <c>F4</c> or <c>4 Bft</c>.</summary>
    public static readonly TextForm<Beaufort> Wind = new(Beaufort.TryParse, static value => value.ToString());

    /// <summary>Heart rate: <c>142</c>.</summary>
    public static readonly TextForm<HeartRate> HeartRate = new(Domain.Values.HeartRate.TryParse, static value => value.ToString());

    /// <summary>Stroke rate: <c>58.5</c>.</summary>
    public static readonly TextForm<StrokeRate> StrokeRate = new(Domain.Values.StrokeRate.TryParse, static value => value.ToString());

    /// <summary>Times, nothing known of what was timed: <c>5:32.4</c>. For a piece use <see cref="TimeText"/>.</summary>
    public static readonly TextForm<PieceTime> Time = new(PieceTime.TryParse, static value => value.ToString());

    /// <summary>Courses: <c>round-trip</c>.</summary>
    public static readonly TextForm<Course> Course = new(ReadCourse, static value => Courses.First(one => one.Value == value).Text);

    /// <summary>What timed: <c>hand</c> or <c>watch</c>.</summary>
    public static readonly TextForm<TimedBy> TimedBy = new(
        ReadTimedBy, static value => value == Domain.Values.TimedBy.Watch ? "watch" : "hand");

    /// <summary>Units: <c>in</c> or <c>cm</c>.</summary>
    public static readonly TextForm<LengthUnit> Unit = new(ReadUnit, static value => value == LengthUnit.Centimetres ? "cm" : "in");

    /// <summary>Yes or no.</summary>
    public static readonly TextForm<bool> YesOrNo = new(ReadYesOrNo, static value => value ? "yes" : "no");

    /// <summary>Times of day: <c>06:45</c>.</summary>
    public static readonly TextForm<TimeOnly> TimeOfDay = new(
        ReadTimeOfDay, static value => value.ToString("HH:mm", CultureInfo.InvariantCulture));

    /// <summary>Lengths in a person's unit: <c>49.75</c>; one that is no round number there bears the unit in which it is.</summary>
    public static TextForm<Length> Length(LengthUnit bare) => bare == LengthUnit.Centimetres ? Centimetres : Inches;

    /// <summary>Days, as of today: <c>2026-05-03</c>; also <c>24 nov</c>, <c>sat</c>, <c>-1</c>, <c>today</c>, <c>yesterday</c>.</summary>
    public static TextForm<DateOnly> Date(DateOnly today) => new(
        (string? text, out DateOnly value, [NotNullWhen(false)] out string? problem) =>
            DateText.TryRead(text, today, out value, out problem), DateText.Write);

    private static TextForm<Length> LengthIn(LengthUnit bare) => new(
        (string? text, out Length value, [NotNullWhen(false)] out string? problem) =>
            Domain.Values.Length.TryParse(text, bare, out value, out problem),
        value => WriteLength(value, bare));

    private static string WriteLength(Length length, LengthUnit bare)
    {
        bool metric = bare == LengthUnit.Centimetres;
        decimal inches = decimal.Parse(length.ToDecimalInches(), CultureInfo.InvariantCulture),
            centimetres = length.Nanometres / 10_000_000m;
        bool roundInches = Math.Round(inches, 4) is var round && Domain.Values.Length.FromInches((double)round) == length;
        bool roundCentimetres = centimetres == Math.Round(centimetres, 3);
        return metric
            ? roundCentimetres || !roundInches ? Digits(centimetres) : Digits(Math.Round(inches, 4)) + "in"
            : roundInches ? Digits(Math.Round(inches, 4)) : roundCentimetres ? Digits(centimetres) + "cm" : Digits(inches);
    }

    private static string Digits(decimal value) => value.ToString("0.#########", CultureInfo.InvariantCulture);

    private static bool ReadCourse(string? text, out Course value, [NotNullWhen(false)] out string? problem)
    {
        string typed = (text ?? "").Trim().ToLowerInvariant().Replace(' ', '-');
        int at = Array.FindIndex(Courses, one => one.Text == typed);
        value = at < 0 ? default : Courses[at].Value;
        problem = at < 0 ? $"“{Quoted.Brief(text)}” is not a course; it is round-trip, out, back or loop." : null;
        return at >= 0;
    }

    private static bool ReadTimedBy(string? text, out TimedBy value, [NotNullWhen(false)] out string? problem)
    {
        string typed = (text ?? "").Trim().ToLowerInvariant();
        value = typed == "watch" ? Domain.Values.TimedBy.Watch : Domain.Values.TimedBy.Hand;
        problem = typed is "watch" or "hand" ? null : $"“{Quoted.Brief(text)}” is neither hand nor watch.";
        return problem is null;
    }

    private static bool ReadUnit(string? text, out LengthUnit value, [NotNullWhen(false)] out string? problem)
    {
        string typed = (text ?? "").Trim().ToLowerInvariant();
        value = typed == "cm" ? LengthUnit.Centimetres : LengthUnit.Inches;
        problem = typed is "cm" or "in" or "inch" or "inches" ? null : $"“{Quoted.Brief(text)}” is not a unit; it is in or cm.";
        return problem is null;
    }

    private static bool ReadYesOrNo(string? text, out bool value, [NotNullWhen(false)] out string? problem)
    {
        string typed = (text ?? "").Trim().ToLowerInvariant();
        value = typed is "yes" or "y";
        problem = value || typed is "no" or "n" ? null : $"“{Quoted.Brief(text)}” is neither yes nor no.";
        return problem is null;
    }

    private static bool ReadTimeOfDay(string? text, out TimeOnly value, [NotNullWhen(false)] out string? problem)
    {
        bool read = TimeOnly.TryParseExact(
            (text ?? "").Trim(), ["HH:mm", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out value);
        problem = read ? null : $"“{Quoted.Brief(text)}” is not a time of day; write it like 06:45.";
        return read;
    }
}
