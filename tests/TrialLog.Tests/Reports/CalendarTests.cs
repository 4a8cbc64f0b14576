using System.Diagnostics;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using CsCheck;
using TrialLog.Application.Reporting;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Calendars;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Reports;

public partial class CalendarTests
{
    private static readonly DateTimeOffset Now = new(2026, 5, 1, 7, 30, 0, TimeSpan.Zero);
    private static readonly DateOnly Friday = new(2026, 5, 1);

    private static CalendarCard CardOf(string name = "Ilse Maro", long change = 5, DateOnly? day = null, string paddle = "Reed")
    {
        ReportContents contents = SampleContents.Of();
        return new CalendarCard(contents.Analysis with
        {
            Paddler = contents.Analysis.Paddler with { Name = name },
            Paddle = contents.Analysis.Paddle with { Name = paddle },
        }, Friday, day, change);
    }

    private static string Put(string? existing, params CalendarCard[] cards) => CardCalendar.Put(existing, cards, Now, "0.1.0");

    [Fact]
    public void The_same_week_twice_changes_nothing_and_a_new_card_updates_its_entry()
    {
        string first = Put(null, CardOf());
        Assert.Equal(first, Put(first, CardOf(change: 9)));

        string second = CardCalendar.Put(first, [CardOf(change: 9, paddle: "Nearer now.")], Now.AddDays(1), "0.1.0");
        Assert.Single(Events(second));
        Assert.Contains("Nearer now.", second);
        Assert.Equal(Value(first, "UID"), Value(second, "UID"));
        Assert.Equal("5", Value(first, "SEQUENCE"));
        Assert.Equal("9", Value(second, "SEQUENCE"));
        Assert.Equal("20260501", Value(second, "DTSTART;VALUE=DATE"));

        string third = Put(second, CardOf(change: 2, paddle: "Taken back."));
        Assert.Equal("10", Value(third, "SEQUENCE"));
    }

    [Fact]
    public void An_entry_is_for_one_paddler_one_hull_and_one_iso_week()
    {
        CalendarCard card = CardOf();
        CalendarCard other = card with { Analysis = card.Analysis with { Hull = SampleContents.Six } };
        CalendarCard someone = card
            with
        { Analysis = card.Analysis with { Paddler = card.Analysis.Paddler with { Id = SampleContents.Id(77) } } };
        Assert.Equal(card.Uid, (card with { Day = new DateOnly(2026, 5, 3) }).Uid);
        Assert.Equal(4, new[] { card.Uid, other.Uid, someone.Uid, (card with { Day = new DateOnly(2026, 5, 4) }).Uid }.Distinct().Count());
        Assert.Equal(2, Events(Put(Put(null, card), other)).Count());

        // ISO 8601: the week of a year's first Thursday is its week 1.
        Assert.Equal(("2026-W53", "2025-W01"), (CardCalendar.Week(new(2027, 1, 3)), CardCalendar.Week(new(2024, 12, 30))));
    }

    [Fact]
    public void Naming_a_day_moves_the_entry_and_otherwise_it_stays_where_it_stands()
    {
        string moved = Put(Put(null, CardOf()), CardOf(change: 6, day: new DateOnly(2026, 5, 2)));
        Assert.Equal("20260502", Value(moved, "DTSTART;VALUE=DATE"));
        string again = Put(moved, CardOf(change: 7, paddle: "Other."));
        Assert.Equal("20260502", Value(again, "DTSTART;VALUE=DATE"));
        Assert.Single(Events(again));
    }

    [Fact]
    public void What_else_stands_in_the_calendar_stays()
    {
        const string theirs =
            "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Somebody//EN\r\nBEGIN:VEVENT\r\nUID:dentist\r\nDTSTAMP:20260101T000000Z\r\n"
            + "DTSTART:20260501T090000Z\r\nSUMMARY:Dentist\\, "
            + "upstairs\r\nX-FLOOR:2\r\nBEGIN:VALARM\r\nACTION:DISPLAY\r\nDESCRIPTION:go\r\n"
            + "TRIGGER:-PT30M\r\nEND:VALARM\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n";
        string both = Put(theirs, CardOf());
        Assert.Equal(2, Events(both).Count());
        foreach (
            string kept in new[] { "UID:dentist", "SUMMARY:Dentist\\, upstairs", "X-FLOOR:2", "TRIGGER:-PT30M", "PRODID:-//Somebody//EN" })
            Assert.Contains(kept, both);
    }

    [Theory]
    [InlineData("hello")]
    [InlineData("BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n")]
    [InlineData("<html></html>")]
    [InlineData("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nEND:VCALENDAR\r\nBEGIN:VCALENDAR\r\nVERSION:2.0\r\nEND:VCALENDAR\r\n")]
    public void A_file_that_is_not_one_calendar_is_refused(string existing) =>
        Assert.Throws<InvalidValueException>(() => Put(existing, CardOf()));

    [Fact]
    public void Every_line_keeps_to_the_grammar_of_RFC_5545_whatever_the_names()
    {
        Gen.Select(HostileText.Any, HostileText.Any)
            .Sample((name, reason) => KeepsToTheGrammar(Put(null, CardOf(name, paddle: reason))), iter: 100);
    }

    [Fact]
    public async Task Another_reader_reads_the_same_card_back()
    {
        const string reader = "import sys,json,icalendar\n"
            + "c=icalendar.Calendar.from_ical(sys.stdin.buffer.read())\n"
            + "print(json.dumps([dict(uid=str(e['UID']),summary=str(e['SUMMARY']),text=str(e['DESCRIPTION']),"
            + "start=e['DTSTART'].dt.isoformat(),sequence=int(e['SEQUENCE'])) for e in c.walk('VEVENT')]))\n";
        Assert.SkipUnless(File.Exists("/usr/bin/python3")
            && (await Run(reader, "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nEND:VCALENDAR\r\n")) is not null,
            "No icalendar for Python found: the calendar was NOT read back by another reader. Install Debian's " +
                "python3-icalendar to run this.");
        // No backslash right before n, a comma or a semicolon: this reader (4.0.3) takes the escaped backslash for the next escape.
        string[] texts = [.. HostileText.Samples, "Tova Lind; back, slash \\ and"];
        CalendarCard[] cards = [.. texts.Select((text, number) => Numbered(CardOf(text, paddle: text), number))];
        Dictionary<string, JsonElement> read = JsonDocument.Parse((await Run(reader, Put(null, cards)))!).RootElement.EnumerateArray()
            .ToDictionary(entry => entry.GetProperty("uid").GetString()!);
        Assert.Equal(texts.Length, read.Count);
        foreach ((string text, CalendarCard card) in texts.Zip(cards))
        {
            string written = PlainText.Permitted(PlainText.Line(text));
            JsonElement entry = read[card.Uid];
            Assert.Equal("2026-05-01", entry.GetProperty("start").GetString());
            Assert.Equal(5, entry.GetProperty("sequence").GetInt32());
            Assert.Equal($"Paddle trial: {written}, OC1, 49¼, 50¾, 50¾, 49¼ in", entry.GetProperty("summary").GetString());
            Assert.Equal([$"Trial card, OC1 with {written}", "1. 49¼ in", "2. 50¾ in", "3. 50¾ in", "4. 49¼ in"],
                entry.GetProperty("text").GetString()!.Split('\n') is var lines ? [lines[1], .. lines[3..7]] : []);
        }
    }

    private static CalendarCard Numbered(CalendarCard card, int number) =>
        card with { Analysis = card.Analysis with { Paddler = card.Analysis.Paddler with { Id = SampleContents.Id(7000 + number) } } };

    private static void KeepsToTheGrammar(string calendar)
    {
        Assert.EndsWith("\r\n", calendar);
        Assert.DoesNotContain('\n', calendar.Replace("\r\n", ""));
        Assert.DoesNotContain('\r', calendar.Replace("\r\n", ""));
        Assert.All(calendar.Split("\r\n"), line => Assert.InRange(Encoding.UTF8.GetByteCount(line), 0, 75));
        string[] lines = calendar.Replace("\r\n ", "").TrimEnd().Split("\r\n");
        Assert.All(lines, line => Assert.Matches(ContentLine(), line));
        foreach (
            string text in lines.Where(line => line.StartsWith("SUMMARY:", StringComparison.Ordinal)
            || line.StartsWith("DESCRIPTION:", StringComparison.Ordinal)))
            Assert.Matches(TextValue(), text[(text.IndexOf(':') + 1)..]);
        foreach (string required in new[] { "VERSION:2.0", "PRODID:", "UID:", "DTSTAMP:", "DTSTART;VALUE=DATE:" })
            Assert.Single(lines, line => line.StartsWith(required, StringComparison.Ordinal));
    }

    // RFC 5545, 3.1: name, parameters, value; no control character but the tab. 3.3.11: text with its escapes.
    [GeneratedRegex(
        """^[A-Za-z0-9-]+(;[A-Za-z0-9-]+=("[^"\p{Cc}]*"|[^";:,\p{Cc}]*)(,("[^"\p{Cc}]*"|[^";:,\p{Cc}]*))*)*:[^\x00-\x08\x0A-\x1F\x7F]*$""")]
    private static partial Regex ContentLine();

    [GeneratedRegex(@"^([^\\;,\x00-\x08\x0A-\x1F\x7F]|\\[\\;,nN])*$")]
    private static partial Regex TextValue();

    private static IEnumerable<string> Events(string calendar) => calendar.Split("\r\n").Where(line => line == "BEGIN:VEVENT");

    private static string Value(string calendar, string name) =>
        calendar.Split("\r\n").Single(line => line.StartsWith(name + ":", StringComparison.Ordinal))[(name.Length + 1)..];

    private static async Task<string?> Run(string script, string input)
    {
        using Process process = Process.Start(new ProcessStartInfo("/usr/bin/python3", ["-c", script])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(false),
        })!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        await errors;
        return process.ExitCode == 0 ? output : null;
    }
}
