using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace TrialLog.Domain.Values;

/// <summary>How long a piece or an event took: 1 s to 48 h, held as whole milliseconds.</summary>
public readonly partial record struct PieceTime : IComparable<PieceTime>
{
    private const long Shortest = 1000, Longest = 48L * 3600 * 1000;

    // Counted from the shortest time, so that one that was never set is 1 s and not impossible.
    private readonly long _beyondShortest;

    private PieceTime(long milliseconds) => _beyondShortest = milliseconds - Shortest;

    /// <summary>The time in milliseconds, 1,000 to 172,800,000.</summary>
    public long Milliseconds => _beyondShortest + Shortest;

    /// <summary>The time in seconds.</summary>
    public double Seconds => Milliseconds / 1000.0;

    /// <summary>A time of so many milliseconds.</summary>
    /// <exception cref="InvalidValueException">Not between 1 s and 48 h.</exception>
    public static PieceTime FromMilliseconds(long milliseconds) =>
        milliseconds is < Shortest or > Longest
            ? throw new InvalidValueException("A time lies between 1 second and 48 hours.")
            : new PieceTime(milliseconds);

    /// <summary>The time nearest to so many seconds.</summary>
    /// <exception cref="InvalidValueException">Not a number, or not between 1 s and 48 h.</exception>
    public static PieceTime FromSeconds(double seconds) =>
        double.IsFinite(seconds) && Math.Abs(seconds) < 1e9
            ? FromMilliseconds((long)Math.Round(seconds * 1000, MidpointRounding.AwayFromZero))
            : throw new InvalidValueException("A time lies between 1 second and 48 hours.");

    // Clock; or seconds alone; or hours, minutes, seconds with their units, of which the last may be left out after a larger one.
    [GeneratedRegex("""
        ^\s*(?:
          (?:(?<h>[0-9]{1,3}):)?(?<m>[0-9]{1,4}):(?<s>[0-9]{2}(?:[.,][0-9]{1,3})?)
        | (?<s>[0-9]{1,6}(?:[.,][0-9]{1,3})?)\s*(?:s|sec|secs|seconds)?
        | (?<h>[0-9]{1,3})\s*h\s*(?<m>[0-9]{1,2})
        | (?:(?<h>[0-9]{1,3})\s*h(?:r|rs|ours?)?)?\s*
          (?:(?<m>[0-9]{1,4})\s*(?:m|min|mins|minutes?|'|′)(?:\s*(?<s>[0-9]{1,2}(?:[.,][0-9]{1,3})?)\s*(?:s|sec|secs|seconds|"|″|\'\')?)?)?
        )\s*$
        """, RegexOptions.IgnorePatternWhitespace | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();

    /// <summary>
    /// Reads <c>5:32</c>, <c>5:32.4</c>, <c>1:02:10</c>, <c>332s</c>, <c>332.4</c> (seconds), <c>45min</c>, <c>1h 30min</c>, <c>5m32s</c>,
    /// <c>5'32"</c>.
    /// </summary>
    /// <exception cref="InvalidValueException">It cannot be read as a time, or is not between 1 s and 48 h.</exception>
    public static PieceTime Parse(string text) =>
        TryParse(text, out PieceTime time, out string? problem) ? time : throw new InvalidValueException(problem);

    /// <summary>As <see cref="Parse"/>, without the exception; <paramref name="problem"/> says what is wrong.</summary>
    public static bool TryParse(string? text, out PieceTime time, [NotNullWhen(false)] out string? problem)
    {
        time = default;
        Match match = string.IsNullOrWhiteSpace(text) ? Match.Empty : Pattern().Match(text);
        if (!match.Success)
        {
            problem = $"“{Quoted.Brief(text)}” is not a time; write it like 5:32, 5:32.4, 1:02:10 or 332s.";
            return false;
        }

        decimal hours = Part("h"), minutes = Part("m"), seconds = Part("s");
        bool clock = match.Groups["s"].Success && match.Groups["m"].Success;
        if (clock && (seconds >= 60 || (match.Groups["h"].Success && minutes >= 60)))
        {
            problem = $"“{Quoted.Brief(text)}” has 60 or more minutes or seconds beside a larger unit.";
            return false;
        }

        decimal milliseconds = ((hours * 60 + minutes) * 60 + seconds) * 1000;
        if (milliseconds is < Shortest or > Longest)
        {
            problem = $"“{Quoted.Brief(text)}” is not between 1 second and 48 hours.";
            return false;
        }

        time = FromMilliseconds((long)milliseconds);
        problem = null;
        return true;

        decimal Part(string name) => match.Groups[name] is { Success: true } group
            ? decimal.Parse(group.Value.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture)
            : 0;
    }

    /// <summary><c>5:32</c>, <c>5:32.4</c>, <c>1:02:10</c>. Parsing gives the same time back.</summary>
    public override string ToString()
    {
        long whole = Milliseconds / 1000, rest = Milliseconds % 1000;
        string fraction = rest == 0 ? "" : "." + rest.ToString("000", CultureInfo.InvariantCulture).TrimEnd('0');
        return whole >= 3600
            ? $"{whole / 3600}:{whole / 60 % 60:00}:{whole % 60:00}{fraction}"
            : $"{whole / 60}:{whole % 60:00}{fraction}";
    }

    /// <inheritdoc/>
    public int CompareTo(PieceTime other) => Milliseconds.CompareTo(other.Milliseconds);

    /// <summary>Shorter than.</summary>
    public static bool operator <(PieceTime a, PieceTime b) => a.Milliseconds < b.Milliseconds;

    /// <summary>Longer than.</summary>
    public static bool operator >(PieceTime a, PieceTime b) => a.Milliseconds > b.Milliseconds;

    /// <summary>Not longer than.</summary>
    public static bool operator <=(PieceTime a, PieceTime b) => a.Milliseconds <= b.Milliseconds;

    /// <summary>Not shorter than.</summary>
    public static bool operator >=(PieceTime a, PieceTime b) => a.Milliseconds >= b.Milliseconds;
}
