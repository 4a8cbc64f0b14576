using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>Numbers as a paddler says them, the same on a screen, in a command's text and on paper.</summary>
internal static class Saying
{
    /// <summary><c>0.12 %</c>; <c>under 0.01 %</c>.</summary>
    public static string Percent(double percent) => percent is > 0 and < 0.01 ? "under 0.01 %"
        : string.Create(CultureInfo.InvariantCulture, $"{percent:0.00} %");

    /// <summary>A probability in whole percent: <c>62 %</c>, <c>under 1 %</c>, <c>over 99 %</c>.</summary>
    public static string Chance(double probability) => Spoken.Chance(probability);

    /// <summary>A gain over the goal event: <c>about 4 s in an hour</c>, <c>under 1 s in 20 min</c>.</summary>
    public static string Gain(double seconds, double goalSeconds) =>
        $"{Spoken.Seconds(seconds)} in {Spoken.Duration(goalSeconds)}";

    /// <summary>A time without fractions of a second: <c>1:02:10</c>.</summary>
    public static string Clock(double seconds) => PieceTime.FromSeconds(Math.Clamp(Math.Round(seconds), 1, 48 * 3600)).ToString();

    /// <summary>A length as it was set: whole 16ths of an inch as they are, else to a hundredth; centimetres to the millimetre. Files keep every digit.</summary>
    public static string Setting(Length length, LengthUnit unit) =>
        unit == LengthUnit.Centimetres ? string.Create(CultureInfo.InvariantCulture, $"{length.Centimetres:0.#} cm")
        : length.RoundedTo(Length.FromInches(1 / 16.0)) == length ? length.ToText()
        : string.Create(CultureInfo.InvariantCulture, $"{length.Inches:0.##} in");

    /// <summary>A distance to the metre: <c>1.008 km</c>, <c>400 m</c>.</summary>
    public static string Distance(Distance distance) => string.Create(
        CultureInfo.InvariantCulture, $"{(distance.Metres < 1000 ? distance.Metres : distance.Metres / 1000):0.###} {(distance.Metres < 1000 ? "m" : "km")}");

    /// <summary>A time to the tenth of a second: <c>5:14.6</c>.</summary>
    public static string Time(PieceTime time) => PieceTime.FromSeconds(Math.Max(1, Math.Round(time.Seconds, 1))).ToString();

    /// <summary>A likely range, no finer than a quarter inch: <c>49 ¼ to 50 ½ in</c>.</summary>
    public static string Range(Length low, Length high, LengthUnit unit) => Spoken.Range(low, high, unit);

    /// <summary>Time per kilometre: <c>5:32 /km</c>.</summary>
    public static string Pace(Piece piece) => Clock(1000 / piece.MetresPerSecond) + " /km";

    /// <summary>Outings to go: <c>about 3 (1 to 6)</c>.</summary>
    public static string OutingsToGo(Tuning.Assessments.OutingsToGo toGo) => toGo switch
    {
        { High: 0 } => "none",
        _ when toGo.Low == toGo.High => Number(toGo.Median),
        _ => $"about {Number(toGo.Median)} ({toGo.Low} to {Number(toGo.High)})",
    };

    private static string Number(int outings) => outings >= Tuning.Assessments.OutingsToGo.Most ? $"{Tuning.Assessments.OutingsToGo.Most} or more" : outings.ToString();
}
