using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>
/// Numbers as a paddler says them: one formatter each, for commands, screens and paper alike. All round half up, none says
/// more digits than the number deserves, and no number is rounded onto a threshold that it has not reached.
/// </summary>
internal static class Say
{
    /// <summary>What stands for something not known.</summary>
    public const string Nothing = "–";

    private static readonly Length Sixteenth = Domain.Values.Length.FromInches(1 / 16.0);

    /// <summary>
    /// A length that was set or is to be set: <c>49¼ in</c>, <c>49 1/16 in</c>, else <c>49.03 in</c>; <c>126.4 cm</c>. Files keep every
    /// digit.
    /// </summary>
    public static string Length(Length length, LengthUnit unit)
    {
        if (unit == LengthUnit.Centimetres)
            return Digits(length.Centimetres, 1) + " cm";
        Length near = length.RoundedTo(Sixteenth);
        return Math.Abs(near.InchesMoreThan(length)) < 0.001 ? near.ToText() : Digits(length.Inches, 2) + " in";
    }

    /// <summary>Two lengths that were set, and all between: <c>48 to 54 in</c>.</summary>
    public static string Lengths(Length shortest, Length longest, LengthUnit unit) =>
        Between(Length(shortest, unit), Length(longest, unit), " to ");

    /// <summary>Lengths in the order to paddle them: <c>49¼, 50¾, 50¾, 49¼ in</c>.</summary>
    public static string Order(IEnumerable<Length> lengths, LengthUnit unit)
    {
        string tail = " " + Symbol(unit);
        string[] all = [.. lengths.Select(length => Length(length, unit))];
        return all.Length == 0 ? Nothing : string.Join(", ", all.Select(text => text[..^tail.Length])) + tail;
    }

    /// <summary>An estimated length, to the quarter inch; with centimetres chosen, to the millimetre.</summary>
    public static string Quarter(Length length, LengthUnit unit) =>
        unit == LengthUnit.Centimetres ? Length(length, unit) : length.RoundedTo(Domain.Values.Length.QuarterInch).ToText();

    /// <summary>
    /// As <see cref="Quarter(Length, LengthUnit)"/>, for inches that may lie outside what a length can hold: those to the inch.
    /// </summary>
    public static string Quarter(double inches, LengthUnit unit) => inches is > 0 and < 390
        ? Quarter(Domain.Values.Length.FromInches(inches), unit)
        : Signed(unit == LengthUnit.Centimetres ? inches * 2.54 : inches, 0) + " " + Symbol(unit);

    /// <summary>A likely range, its ends rounded outwards to the quarter inch or half centimetre: <c>48¼ to 50¾ in</c>.</summary>
    public static string Range(Length low, Length high, LengthUnit unit) => Outwards(low, high, unit, " to ");

    /// <summary>As <see cref="Range"/>, after the word between: <c>48¼ and 50¾ in</c>.</summary>
    public static string RangeAfterBetween(Length low, Length high, LengthUnit unit) =>
        Outwards(low, high, unit, " and ");

    /// <summary>A body measure, to the tenth of an inch or centimetre: <c>50.3 in</c>.</summary>
    public static string Tenth(Length length, LengthUnit unit) => Amount(length.Inches, unit);

    /// <summary>A difference in inches, to the tenth of an inch or centimetre: <c>1.2 in</c>, <c>−0.8 in</c>.</summary>
    public static string Amount(double inches, LengthUnit unit) => Spoken.Amount(inches, unit);

    /// <summary>A small length in inches as it stands on a tape, to the sixteenth: <c>¼ in</c>; centimetres to the tenth.</summary>
    /// <exception cref="InvalidValueException">Negative, or over 10 m.</exception>
    public static string Fraction(double inches, LengthUnit unit) =>
        unit == LengthUnit.Centimetres ? Amount(inches, unit) : Domain.Values.Length.FromInches(Math.Round(inches * 16) / 16).ToText();

    /// <summary><c>in</c> or <c>cm</c>.</summary>
    public static string Symbol(LengthUnit unit) => unit == LengthUnit.Centimetres ? "cm" : "in";

    /// <summary>A length along an axis in the paddler's unit.</summary>
    public static double OnAxis(Length length, LengthUnit unit) => unit == LengthUnit.Centimetres ? length.Centimetres : length.Inches;

    /// <summary>A mark of that axis: <c>49½</c>, or plain centimetres.</summary>
    public static string OnAxisLabel(double value, LengthUnit unit) => unit == LengthUnit.Inches && value is >= 0 and < 390
        ? Length(Domain.Values.Length.FromInches(value), unit)[..^3]
        : value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A share of speed that was estimated: two decimals below 1, one from there on; <c>0.08%</c>, <c>under 0.01%</c>.</summary>
    public static string Percent(double percent) => Math.Abs(percent) switch
    {
        < 0.01 => "under 0.01%",
        < 0.995 => Signed(percent, 2, fixedDigits: true) + "%",
        _ => Signed(percent, 1, fixedDigits: true) + "%",
    };

    /// <summary>A percentage that somebody chose, as it was chosen: <c>0.3%</c>.</summary>
    public static string ChosenPercent(double percent) => Digits(percent, 3) + "%";

    /// <summary>How far one speed lies from another in percent, with its sign: <c>+0.12</c>, <c>−0.85</c>, <c>0</c>.</summary>
    public static string Difference(double percent) =>
        Math.Abs(percent) < 0.005 ? "0" : (percent > 0 ? "+" : "") + Signed(percent, 2, fixedDigits: true);

    /// <summary>
    /// A probability in whole percent: <c>4%</c>, <c>under 1%</c>, <c>over 99%</c>. Close to the chance at which a search stops it has a
    /// decimal, cut off: what is still under 2% never reads as 2%.
    /// </summary>
    public static string Chance(double probability) => (100 * probability) switch
    {
        < 1 => "under 1%",
        > 99 => "over 99%",
        >= 1.5 and < 2.5 and var near => (Math.Floor(near * 10 + 1e-9) / 10).ToString("0.#", CultureInfo.InvariantCulture) + "%",
        var percent => Digits(percent, 0) + "%",
    };

    /// <summary>A chance with its article: <c>a 4% chance</c>, <c>an 8% chance</c>, <c>a chance of under 1%</c>.</summary>
    public static string AChance(double probability)
    {
        string chance = Chance(probability);
        return char.IsLetter(chance[0]) ? $"a chance of {chance}"
            : chance[0] == '8' || chance.StartsWith("11%", StringComparison.Ordinal) || chance.StartsWith("18%", StringComparison.Ordinal)
                ? $"an {chance} chance"
            : $"a {chance} chance";
    }

    /// <summary>Seconds of a race: <c>4 s</c>, <c>under 1 s</c>, <c>2.5 min</c>.</summary>
    public static string Seconds(double seconds) => AboutSeconds(seconds).Replace("about ", "", StringComparison.Ordinal);

    /// <summary>As <see cref="Seconds"/>, with "about" where it fits.</summary>
    public static string AboutSeconds(double seconds) => seconds switch
    {
        < 1 => "under 1 s",
        < 89.5 => $"about {Digits(seconds, 0)} s",
        _ => $"about {Digits(seconds / 60, 1)} min",
    };

    /// <summary>How long an event takes, to the minute: <c>an hour</c>, <c>20 min</c>, <c>1 h 44 min</c>.</summary>
    public static string Duration(double seconds)
    {
        long minutes = (long)Math.Round(seconds / 60, MidpointRounding.AwayFromZero);
        return (minutes / 60, minutes % 60) switch
        {
            (0, < 2) => seconds.ToString("0", CultureInfo.InvariantCulture) + " s",
            (0, var rest) => $"{rest} min",
            (1, 0) => "an hour",
            (var hours, 0) => $"{hours} h",
            (var hours, var rest) => $"{hours} h {rest} min",
        };
    }

    /// <summary>The race that seconds are told over: <c>over your 16 km</c>; where none is named, <c>in an hour</c>.</summary>
    public static string OverTheRace(Paddler paddler, Voice voice = default) =>
        TheRace(paddler, voice) is { } race ? $"over {race}" : "in an hour";

    /// <summary>The race: <c>your 16 km</c>; null where none is named.</summary>
    public static string? TheRace(Paddler paddler, Voice voice = default) => paddler.Goal switch
    {
        { Distance: { } distance } => $"{voice.Your} {Distance(distance)}",
        { Time: { } time } => $"{voice.Your} {Duration(time.Seconds)}",
        _ => null,
    };

    /// <summary>Minutes and seconds, or hours, minutes and seconds, without a fraction: <c>5:32</c>.</summary>
    public static string Clock(double seconds) => PieceTime.FromSeconds(Math.Clamp(HalfUp(seconds, 0), 1, 48 * 3600)).ToString();

    /// <summary>A piece's time, to the tenth of a second: <c>5:14.6</c>.</summary>
    public static string Time(PieceTime time) => PieceTime.FromSeconds(Math.Max(1, HalfUp(time.Seconds, 1))).ToString();

    /// <summary>Time per kilometre: <c>5:33 /km</c>.</summary>
    public static string Pace(double metresPerSecond) => Clock(1000 / metresPerSecond) + " /km";

    /// <summary>Time per kilometre: <c>5:33 /km</c>.</summary>
    public static string Pace(Piece piece) => Pace(piece.MetresPerSecond);

    /// <summary>Time per kilometre of that distance in that time.</summary>
    public static string Pace(Distance distance, PieceTime time) => Pace(distance.Metres / time.Seconds);

    /// <summary>
    /// Whose the time of a piece is: <c>by watch, error 0.7%</c>; <c>by hand</c> only beside pieces by the watch, since that is what an
    /// outing's times are where nothing else is said. Null where nothing needs saying.
    /// </summary>
    public static string? TimedBy(Piece piece, Outing outing) => piece.TimedBy == Domain.Values.TimedBy.Watch
        ? piece.SpeedErrorPercent is { } error ? $"by watch, error {Digits(error, 1)}%" : "by watch"
        : outing.Pieces.Any(other => other.TimedBy == Domain.Values.TimedBy.Watch) ? "by hand" : null;

    /// <summary>A distance to the metre: <c>1.008 km</c>, <c>400 m</c>.</summary>
    public static string Distance(Distance distance) =>
        distance.Metres < 1000 ? Digits(distance.Metres, 0) + " m" : Digits(distance.Metres / 1000, 3) + " km";

    /// <summary>
    /// A forecast: <c>about 2 (1 to 4, 8 times in 10)</c>, <c>about 5, perhaps 30 or more</c>, <c>30 or more</c>, <c>none: time to
    /// stop</c>.
    /// </summary>
    public static string OutingsToGo(OutingsToGo toGo) => toGo switch
    {
        { High: 0 } => "none: time to stop",
        { Median: >= Tuning.Assessments.OutingsToGo.Most } => $"{Tuning.Assessments.OutingsToGo.Most} or more",
        { High: >= Tuning.Assessments.OutingsToGo.Most } => $"about {toGo.Median}, perhaps {Tuning.Assessments.OutingsToGo.Most} or more",
        _ when toGo.Low == toGo.High => $"about {toGo.Median}",
        _ => $"about {toGo.Median} ({toGo.Low} to {toGo.High}, 8 times in 10)",
    };

    /// <summary>A count with its noun: <c>1 outing</c>, <c>2,000 outings</c>.</summary>
    public static string Count(int count, string noun) =>
        count == 1 ? $"1 {noun}" : $"{count.ToString("N0", CultureInfo.InvariantCulture)} {noun}s";

    /// <summary>A day in tables and names: <c>2026-05-03</c>.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>A day with its weekday: <c>Sunday, 3 May 2026</c>.</summary>
    public static string WeekdayInWords(DateOnly day) => day.ToString("dddd, d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A day in a sentence: <c>3 May 2026</c>.</summary>
    public static string DayInWords(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Outwards(Length low, Length high, LengthUnit unit, string word)
    {
        bool metric = unit == LengthUnit.Centimetres;
        double step = metric ? 0.5 : 0.25, from = metric ? low.Centimetres : low.Inches, to = metric ? high.Centimetres : high.Inches;
        // A hair's breadth keeps an end that is a whole step where it is.
        return Between(Text(Math.Max(0, Math.Floor(from / step + 1e-6)) * step), Text(Math.Ceiling(to / step - 1e-6) * step), word);

        string Text(double value) => metric ? Digits(value, 1) + " cm"
            : Domain.Values.Length.FromInches(Math.Min(value, Domain.Values.Length.Longest.Inches)).ToText();
    }

    private static string Between(string from, string to, string word) => from == to ? to : from[..from.LastIndexOf(' ')] + word + to;

    private static double HalfUp(double value, int digits)
    {
        double scale = Math.Pow(10, digits);
        return Math.Floor(value * scale + 0.5 + 1e-9) / scale;
    }

    private static string Digits(double value, int digits) =>
        HalfUp(value, digits).ToString(digits == 0 ? "0" : "0." + new string('#', digits), CultureInfo.InvariantCulture);

    // A true minus, which readers and screen readers tell from a hyphen.
    private static string Signed(double value, int digits, bool fixedDigits = false) => (value < 0 ? "−" : "")
        + HalfUp(Math.Abs(value), digits)
            .ToString(digits == 0 ? "0" : "0." + new string(fixedDigits ? '0' : '#', digits), CultureInfo.InvariantCulture);
}
