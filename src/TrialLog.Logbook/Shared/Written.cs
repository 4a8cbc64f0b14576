using System.Globalization;
using TrialLog.Domain.Values;

namespace TrialLog.Logbook.Shared;

/// <summary>How values are written in a shared file: as decimals, exactly both ways.</summary>
internal static class Written
{
    public static decimal Inches(Length length) => decimal.Parse(length.ToDecimalInches(), CultureInfo.InvariantCulture);

    public static decimal? Inches(Length? length) => length is Length known ? Inches(known) : null;

    public static Length ToLength(decimal inches) => Length.Parse(Plain(inches) + "in");

    public static Length? ToLength(decimal? inches) => inches is decimal known ? ToLength(known) : null;

    public static decimal Metres(Distance distance) => decimal.Parse(distance.ToDecimalMetres(), CultureInfo.InvariantCulture);

    public static decimal? Metres(Distance? distance) => distance is Distance known ? Metres(known) : null;

    public static Distance ToDistance(decimal metres) => Distance.Parse(Plain(metres) + "m");

    private static string Plain(decimal number) => number.ToString("0.############################", CultureInfo.InvariantCulture);
}
