using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook.Rows;

/// <summary>How values lie in the database, both ways, exactly.</summary>
internal static class Stored
{
    public static string Id(Guid id) => id.ToString("D");

    public static string? Id(Guid? id) => id?.ToString("D");

    public static Guid? ToId(string? id) => id is null ? null : Guid.Parse(id);

    public static string NameKey(string name) => name.ToUpperInvariant();

    public static string Date(DateOnly date) => date.ToString("O", CultureInfo.InvariantCulture);

    public static DateOnly ToDate(string text) => DateOnly.ParseExact(text, "O", CultureInfo.InvariantCulture);

    public static string? Time(TimeOnly? time) => time?.ToString("O", CultureInfo.InvariantCulture);

    public static TimeOnly? ToTime(string? text) => text is null ? null : TimeOnly.ParseExact(text, "O", CultureInfo.InvariantCulture);

    public static string Moment(DateTimeOffset moment) => moment.UtcDateTime.ToString("O", CultureInfo.InvariantCulture);

    public static DateTimeOffset ToMoment(string text) =>
        DateTimeOffset.Parse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal);

    public static Length? ToLength(long? nanometres) => nanometres is long n ? Length.FromNanometres(n) : null;

    public static string Unit(LengthUnit unit) => unit == LengthUnit.Inches ? "in" : "cm";

    public static LengthUnit ToUnit(string text) => text == "in" ? LengthUnit.Inches : LengthUnit.Centimetres;

    public static string CourseName(Course course) => course switch
    {
        Course.RoundTrip => "round-trip",
        Course.Out => "out",
        Course.Back => "back",
        Course.Loop => "loop",
        _ => throw new InvalidValueException("A course is a round trip, out, back or a loop."),
    };

    public static Course ToCourse(string text) => text switch
    {
        "round-trip" => Course.RoundTrip,
        "out" => Course.Out,
        "back" => Course.Back,
        "loop" => Course.Loop,
        _ => throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a course; it is round-trip, out, back or loop."),
    };

    public static string? TimedByName(TimedBy? timedBy) => timedBy switch
    {
        null => null,
        TimedBy.Hand => "hand",
        TimedBy.Watch => "watch",
        _ => throw new InvalidValueException("A piece is timed by hand or by a watch."),
    };

    public static TimedBy? ToTimedBy(string? text) => text switch
    {
        null => null,
        "hand" => TimedBy.Hand,
        "watch" => TimedBy.Watch,
        _ => throw new InvalidValueException($"“{Quoted.Brief(text)}” is not what times a piece; it is hand or watch."),
    };

    public static string DecisionName(DecisionKind kind) => Enum.IsDefined(kind)
        ? kind.ToString().ToLowerInvariant()
        : throw new InvalidValueException("A length is raced, ordered, cut, delivered or kept.");

    public static DecisionKind ToDecisionKind(string text) => text switch
    {
        "raced" => DecisionKind.Raced,
        "ordered" => DecisionKind.Ordered,
        "cut" => DecisionKind.Cut,
        "delivered" => DecisionKind.Delivered,
        "kept" => DecisionKind.Kept,
        _ => throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a decision; it is raced, ordered, cut, delivered or kept."),
    };

    public static string Subject(NoteSubject about) => about switch
    {
        NoteSubject.Paddler => "paddler",
        NoteSubject.Outing => "outing",
        NoteSubject.Card => "card",
        _ => throw new InvalidValueException("A note is about a paddler, an outing or a card."),
    };

    public static NoteSubject ToSubject(string text) => text switch
    {
        "paddler" => NoteSubject.Paddler,
        "outing" => NoteSubject.Outing,
        "card" => NoteSubject.Card,
        _ => throw new InvalidValueException($"“{Quoted.Brief(text)}” is not what a note is about; it is paddler, outing or card."),
    };
}
