using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Formats;

/// <summary>Times as XML writes them (ISO 8601 with seconds).</summary>
internal static class IsoTime
{
    /// <summary>
    /// Reads <c>2026-05-01T06:00:00.250Z</c> or with <c>+02:00</c>. Without a zone it is taken as UTC, as GPX demands.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="seconds">Seconds since 1970-01-01T00:00:00Z.</param>
    /// <param name="offset">The offset written, if one was. Neither Z nor +00:00 is one: so services write UTC.</param>
    public static bool TryRead(ReadOnlySpan<char> text, out double seconds, out TimeSpan? offset)
    {
        seconds = double.NaN;
        offset = null;
        text = text.Trim();
        if (text.Length < 19 || text[4] != '-' || text[7] != '-' || text[10] is not ('T' or ' ') || text[13] != ':' || text[16] != ':')
            return false;
        if (!Digits(text[..4], out int year) || !Digits(text.Slice(5, 2), out int month) || !Digits(text.Slice(8, 2), out int day)
            || !Digits(text.Slice(11, 2), out int hour) || !Digits(text.Slice(14, 2), out int minute)
                || !Digits(text.Slice(17, 2), out int second))
            return false;
        if (year < 1 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month) || hour > 23 || minute > 59
            || second > 60)
            return false;

        ReadOnlySpan<char> rest = text[19..];
        double fraction = 0;
        if (rest is ['.' or ',', ..])
        {
            int digits = 1;
            for (double unit = 0.1; digits < rest.Length && char.IsAsciiDigit(rest[digits]); digits++, unit /= 10)
                fraction += unit * (rest[digits] - '0');
            rest = rest[digits..];
        }

        if (!TryZone(rest, out TimeSpan zone, out bool told))
            return false;
        // A leap second (60) runs into the next minute.
        double local = (new DateTime(year, month, day, hour, minute, 0, DateTimeKind.Utc) - DateTime.UnixEpoch).TotalSeconds
            + second + fraction;
        seconds = local - zone.TotalSeconds;
        offset = told && zone != TimeSpan.Zero ? zone : null;
        return true;
    }

    private static bool TryZone(ReadOnlySpan<char> text, out TimeSpan zone, out bool told)
    {
        zone = TimeSpan.Zero;
        told = false;
        if (text.Length == 0 || text is "Z" or "z")
            return true;
        if (text[0] is not ('+' or '-') || text.Length is not (5 or 6) || (text.Length == 6 && text[3] != ':'))
            return false;
        if (!Digits(text.Slice(1, 2), out int hours) || !Digits(text[^2..], out int minutes) || hours * 60 + minutes > 14 * 60
            || minutes > 59)
            return false;
        zone = new TimeSpan(hours, minutes, 0) * (text[0] == '-' ? -1 : 1);
        told = true;
        return true;
    }

    private static bool Digits(ReadOnlySpan<char> text, out int value)
    {
        value = 0;
        foreach (char c in text)
        {
            if (!char.IsAsciiDigit(c))
                return false;
            value = value * 10 + (c - '0');
        }

        return true;
    }
}
