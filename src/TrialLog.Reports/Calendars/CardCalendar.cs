using System.Globalization;
using System.Runtime.Serialization;
using System.Security.Cryptography;
using System.Text;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Tuning.Assessments;
using Calendar = Ical.Net.Calendar;

namespace TrialLog.Reports.Calendars;

/// <summary>
/// The week's trial cards as entries of a calendar file (iCalendar, RFC 5545). An entry keeps its UID through its week and
/// its SEQUENCE only grows, so that importing it again updates the entry instead of doubling it.
/// </summary>
public static class CardCalendar
{
    /// <summary>The calendar with the cards in it: all else that stands in it stays.</summary>
    /// <param name="existing">The calendar file's text; null or blank for a new calendar.</param>
    /// <param name="cards">The cards to put.</param>
    /// <param name="now">The time of writing.</param>
    /// <param name="version">The program's version.</param>
    /// <returns>The file's new text; the very same text where every entry already stood so.</returns>
    /// <exception cref="InvalidValueException">The existing text is not one calendar.</exception>
    public static string Put(string? existing, IEnumerable<CalendarCard> cards, DateTimeOffset now, string version)
    {
        Calendar? old = Read(existing);
        Calendar calendar = old ?? new Calendar { ProductId = $"-//TrialLog//TrialLog {version}//EN" };
        bool changed = old is null;
        foreach (CalendarCard card in cards)
            changed |= PutOne(calendar, card, now);
        return changed ? new CalendarSerializer().SerializeToString(calendar)! : existing!;
    }

    /// <summary>The ISO 8601 week of a day: <c>2026-W18</c>.</summary>
    public static string Week(DateOnly day)
    {
        DateTime date = day.ToDateTime(TimeOnly.MinValue);
        return string.Create(CultureInfo.InvariantCulture, $"{ISOWeek.GetYear(date):0000}-W{ISOWeek.GetWeekOfYear(date):00}");
    }

    internal static string Uid(Guid paddler, Guid hull, DateOnly day)
    {
        Span<byte> hash = SHA256.HashData(Encoding.ASCII.GetBytes($"{paddler:D} {hull:D} {Week(day)}")).AsSpan(0, 16);
        hash[6] = (byte)((hash[6] & 0x0F) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return new Guid(hash, bigEndian: true).ToString("D");
    }

    private static Calendar? Read(string? existing)
    {
        if (string.IsNullOrWhiteSpace(existing))
            return null;
        try
        {
            if (CalendarCollection.Load(existing) is [var only])
                return only;
        }
        catch (Exception problem) when (
            problem is SerializationException or ArgumentException or FormatException or InvalidOperationException or NotSupportedException)
        {
            throw new InvalidValueException("The file is there already and is not a calendar (iCalendar, RFC 5545); name another file.");
        }

        throw new InvalidValueException("The file is there already and does not hold exactly one calendar; name another file.");
    }

    private static bool PutOne(Calendar calendar, CalendarCard card, DateTimeOffset now)
    {
        CalendarEvent? entry = calendar.Events.FirstOrDefault(other => other.Uid == card.Uid);
        if (card.CalledOff)
            return entry is not null && CallOff(entry, card, now);
        string lengths = card.LengthsFollow ? $"with {PlainText.Line(card.Analysis.Paddle.Name)}"
            : CardReason.InALine(card.Analysis, card.StandingCard);
        string title = PlainText.Permitted(
            $"Paddle trial: {PlainText.Line(card.Analysis.Paddler.Name)}, {PlainText.Line(card.Analysis.Hull.Name)}, {lengths}");
        string text = Text(card);
        var day = new CalDateTime(card.Day ?? card.Today);
        if (entry is not null && entry.Summary == title && entry.Description == text && entry.Status != EventStatus.Cancelled
            && (card.Day is null || day.Equals(entry.Start)))
            return false;

        int sequence = (int)Math.Min(int.MaxValue - 1, Math.Max(0, card.Change));
        if (entry is null)
        {
            entry = new CalendarEvent { Uid = card.Uid, Start = day, Transparency = "TRANSPARENT" };
            calendar.Events.Add(entry);
        }
        else
        {
            sequence = Math.Max(sequence, entry.Sequence + 1);
            if (card.Day is not null && !day.Equals(entry.Start))
                (entry.Start, entry.End, entry.Duration) = (day, null, null);
        }

        entry.Status = EventStatus.Confirmed;
        entry.Summary = title;
        entry.Description = text;
        Stamp(entry, sequence, now);
        return true;
    }

    // A calendar that already took the entry in drops it only if it is told so: hence called off, not left out.
    private static bool CallOff(CalendarEvent entry, CalendarCard card, DateTimeOffset now)
    {
        if (entry.Status == EventStatus.Cancelled)
            return false;
        entry.Status = EventStatus.Cancelled;
        entry.Summary = PlainText.Permitted(
            $"Called off: paddle trial, {PlainText.Line(card.Analysis.Paddler.Name)}, {PlainText.Line(card.Analysis.Hull.Name)}");
        entry.Description = PlainText.Permitted(PlainText.Line(Verdict.ToDo(card.Analysis, card.Voice)));
        Stamp(entry, (int)Math.Min(int.MaxValue - 1, Math.Max(card.Change, entry.Sequence + 1L)), now);
        return true;
    }

    private static void Stamp(CalendarEvent entry, int sequence, DateTimeOffset now)
    {
        entry.Sequence = sequence;
        entry.DtStamp = new CalDateTime(now.UtcDateTime, "UTC");
        entry.LastModified = new CalDateTime(now.UtcDateTime, "UTC");
    }

    private static string Text(CalendarCard card)
    {
        TrialCard trial = card.Analysis.Card;
        if (card.LengthsFollow)
            return PlainText.Permitted(
                string.Join(
                    '\n', ["The lengths follow from the outings before this one.", .. CautionsSection.For(card.Analysis, card.Voice)]));
        List<string> lines =
        [
            PlainText.Line(Verdict.Of(card.Analysis, card.Voice)),
            $"Trial card, {PlainText.Line(card.Analysis.Hull.Name)} with {PlainText.Line(card.Analysis.Paddle.Name)}",
            Answer.Plan(trial),
            .. CardReason.Lengths(card.Analysis, card.StandingCard).Select((length, at) => $"{at + 1}. {length}"),
            PlainText.Line(CardReason.Of(card.Analysis, card.StandingCard, card.Voice)),
            .. CautionsSection.For(card.Analysis, card.Voice),
        ];
        return PlainText.Permitted(string.Join('\n', lines));
    }
}
