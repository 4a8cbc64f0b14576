using System.Globalization;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Wording;

/// <summary>Numbers as a paddler says them, in the paddler's unit, without false precision.</summary>
internal sealed class Said(LengthUnit unit)
{
    /// <summary>What stands for something not known.</summary>
    public const string Nothing = "–";

    public LengthUnit Unit => unit;

    /// <summary>A length that was set or is to be set: whole 16ths as fractions, else two decimals; a tenth in centimetres.</summary>
    public string Setting(Length length)
    {
        if (unit == LengthUnit.Centimetres)
            return length.Centimetres.ToString("0.0") + " cm";
        Length near = length.RoundedTo(Length.FromInches(1 / 16.0));
        return Math.Abs(near.InchesMoreThan(length)) < 0.001 ? near.ToText() : length.Inches.ToString("0.00") + " in";
    }

    /// <summary>An estimated length: to the eighth of an inch, or to the tenth of a centimetre.</summary>
    public string Estimate(Length length) => unit == LengthUnit.Centimetres
        ? length.Centimetres.ToString("0.0") + " cm"
        : length.RoundedTo(Length.FromInches(1 / 8.0)).ToText();

    /// <summary>A likely range, no finer than a quarter inch: <c>49 ¼ to 50 ½ in</c>.</summary>
    public string Range(Length low, Length high) => Spoken.Range(low, high, unit);

    /// <summary>A length in plain inches, as <see cref="Estimate"/>; outside what can be held, plain decimals.</summary>
    public string EstimateInches(double inches) =>
        inches is > 0 and < 390 ? Estimate(Length.FromInches(inches)) : inches.ToString("0.0") + " in";

    /// <summary>Inches along an axis in the paddler's unit.</summary>
    public double OnAxis(Length length) => unit == LengthUnit.Centimetres ? length.Centimetres : length.Inches;

    /// <summary>A mark of that axis: <c>49 ½</c>, or plain centimetres.</summary>
    public string OnAxisLabel(double value) => unit == LengthUnit.Inches && value is >= 0 and < 390
        ? Setting(Length.FromInches(value)).Replace(" in", "", StringComparison.Ordinal)
        : value.ToString("0.##");

    /// <summary>The unit's symbol.</summary>
    public string UnitSymbol => unit == LengthUnit.Centimetres ? "cm" : "in";

    /// <summary>A percentage of speed: two decimals, and never a nought that is not one.</summary>
    public static string Percent(double percent) => Math.Abs(percent) switch
    {
        0 => "0 %",
        < 0.005 => "under 0.01 %",
        < 9.95 => Signed(percent.ToString("0.00")) + " %",
        _ => Signed(percent.ToString("0")) + " %",
    };

    /// <summary>Seconds of a race: <c>about 4 s</c>.</summary>
    public static string Seconds(double seconds) => seconds switch
    {
        < 1 => "under 1 s",
        < 119.5 => $"about {seconds:0} s",
        _ => $"about {Duration(seconds)}",
    };

    /// <summary>How far a piece lies from the best length's speed: two decimals of a percent.</summary>
    public static string Deviation(double percent) => Signed(Math.Round(percent, 2) == 0 ? "0.00" : percent.ToString("0.00")) + " %";

    /// <summary>Minutes and seconds, or hours, minutes and seconds, to the second.</summary>
    public static string Duration(double seconds)
    {
        long whole = (long)Math.Round(seconds, MidpointRounding.AwayFromZero);
        return whole >= 3600
            ? string.Create(CultureInfo.InvariantCulture, $"{whole / 3600}:{whole / 60 % 60:00}:{whole % 60:00}")
            : string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}");
    }

    /// <summary>Time per kilometre: <c>5:32 /km</c>.</summary>
    public static string Pace(Piece piece) => Duration(1000 / piece.MetresPerSecond) + " /km";

    /// <summary>A forecast: <c>about 2 (1 to 4)</c>; <c>none</c> where none is expected.</summary>
    public static string OutingsToGo(OutingsToGo toGo)
    {
        if (toGo.Median == 0)
            return toGo.High == 0 ? "none" : $"probably none, up to {toGo.High}";
        string high = toGo.High >= Tuning.Assessments.OutingsToGo.Most ? $"{Tuning.Assessments.OutingsToGo.Most} or more" : $"{toGo.High}";
        return toGo.Low == toGo.High ? $"about {toGo.Median}" : $"about {toGo.Median} ({toGo.Low} to {high})";
    }

    /// <summary>A day: <c>2026-05-03</c>.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Lengths in the order to paddle them: <c>49 ¼, 50 ¾, 50 ¾, 49 ¼ in</c>.</summary>
    public string Order(IEnumerable<Length> lengths)
    {
        List<string> all = [.. lengths.Select(Setting)];
        string tail = " " + UnitSymbol;
        return all.Count == 0 ? Nothing : string.Join(", ", all.Select(text => text[..^tail.Length])) + tail;
    }

    // A true minus, which readers and screen readers tell from a hyphen.
    private static string Signed(string number) => number.Replace('-', '\u2212');
}
