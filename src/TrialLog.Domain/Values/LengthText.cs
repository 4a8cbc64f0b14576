using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace TrialLog.Domain.Values;

/// <summary>Lengths as people write them.</summary>
internal static partial class LengthText
{
    private const string Vulgar = "¼½¾⅛⅜⅝⅞";
    private static readonly (int Over, int Under)[] VulgarValues = [(1, 4), (1, 2), (3, 4), (1, 8), (3, 8), (5, 8), (7, 8)];

    // feet' whole num/den or decimal, then a unit. The number part must not be empty; that is checked after the match.
    [GeneratedRegex("""
        ^\s*
        (?:(?<feet>[0-9]{1,3})\s*(?:ft|feet|foot|'|′|’)\s*)?
        (?:(?<number>[0-9]{1,9}(?:[.,][0-9]{1,12})?|[.,][0-9]{1,12})(?![0-9/])|(?<number>)(?=[¼½¾⅛⅜⅝⅞]|[0-9]+\s*/)|(?<number>)(?=\s*$))
        \s*-?\s*
        (?:(?<over>[0-9]{1,3})\s*[/⁄]\s*(?<under>[0-9]{1,3})|(?<vulgar>[¼½¾⅛⅜⅝⅞]))?
        \s*(?<unit>in(?:ch(?:es)?)?|"|″|”|''|cm|mm|m)?\.?\s*$
        """, RegexOptions.IgnorePatternWhitespace | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();

    public static Length Parse(string text, LengthUnit bare) =>
        TryParse(text, bare, out Length length, out string? problem) ? length : throw new InvalidValueException(problem);

    public static bool TryParse(string? text, LengthUnit bare, out Length length, [NotNullWhen(false)] out string? problem)
    {
        length = default;
        Match match = Pattern().Match(text ?? "");
        string number = match.Groups["number"].Value.Replace(',', '.');
        bool fraction = match.Groups["over"].Success || match.Groups["vulgar"].Success;
        bool feet = match.Groups["feet"].Success;
        if (!match.Success || (number.Length == 0 && !fraction && !feet))
        {
            problem = $"“{Quoted.Brief(text)}” is not a length; write it like 49.75in, 49 3/4 or 126.4cm.";
            return false;
        }

        string unit = match.Groups["unit"].Value.ToLowerInvariant();
        long perUnit = unit switch
        {
            "cm" => Length.NanometresPerMillimetre * 10,
            "mm" => Length.NanometresPerMillimetre,
            "m" => Length.NanometresPerMillimetre * 1000,
            "" when !feet && bare == LengthUnit.Centimetres => Length.NanometresPerMillimetre * 10,
            _ => Length.NanometresPerInch,
        };
        bool inches = perUnit == Length.NanometresPerInch;
        if ((fraction && (number.Contains('.') || !inches)) || (feet && !inches))
        {
            problem = $"“{Quoted.Brief(text)}” mixes ways of writing a length; write it like 49.75in, 49 3/4 or 126.4cm.";
            return false;
        }

        decimal value = number.Length == 0 ? 0 : decimal.Parse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        if (feet)
            value += 12 * int.Parse(match.Groups["feet"].Value, CultureInfo.InvariantCulture);
        decimal nanometres = value * perUnit;
        if (fraction)
        {
            (int over, int under) = match.Groups["vulgar"].Success
                ? VulgarValues[Vulgar.IndexOf(match.Groups["vulgar"].Value[0])]
                : (int.Parse(match.Groups["over"].Value, CultureInfo.InvariantCulture),
                   int.Parse(match.Groups["under"].Value, CultureInfo.InvariantCulture));
            if (under == 0 || over >= under)
            {
                problem = $"“{Quoted.Brief(text)}” has a fraction that is not between 0 and 1.";
                return false;
            }

            nanometres += (decimal)perUnit * over / under;
        }

        nanometres = Math.Round(nanometres, MidpointRounding.AwayFromZero);
        if (nanometres > Length.Longest.Nanometres)
        {
            problem = $"“{Quoted.Brief(text)}” is longer than 10 m; check the unit.";
            return false;
        }

        length = Length.FromNanometres((long)nanometres);
        problem = null;
        return true;
    }

    public static string Write(Length length, LengthUnit unit)
    {
        if (unit == LengthUnit.Centimetres)
            return ((decimal)length.Nanometres / (Length.NanometresPerMillimetre * 10)).ToString(CultureInfo.InvariantCulture) + " cm";

        const long sixteenth = Length.NanometresPerInch / 16;
        if (length.Nanometres % sixteenth != 0)
            return length.ToDecimalInches() + " in";

        long sixteenths = length.Nanometres / sixteenth;
        (long whole, long over, long under) = (sixteenths / 16, sixteenths % 16, 16);
        if (over == 0)
            return $"{whole} in";
        while (over % 2 == 0)
            (over, under) = (over / 2, under / 2);
        int vulgar = Array.IndexOf(VulgarValues, ((int)over, (int)under));
        string fraction = vulgar >= 0 ? Vulgar[vulgar].ToString() : $"{over}/{under}";
        return whole == 0 ? $"{fraction} in" : vulgar >= 0 ? $"{whole}{fraction} in" : $"{whole} {fraction} in";
    }
}
