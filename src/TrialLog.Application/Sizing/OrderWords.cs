using TrialLog.Application.Wording;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Sizing;

/// <summary>A line of the order sheet in words.</summary>
internal static class OrderWords
{
    /// <summary>A fixed paddle so near to the length to cut to stays as it is, inches.</summary>
    private const double AsItIs = 0.125;

    /// <summary>What ordering today would risk, and what to do with the fixed paddle that the paddler has.</summary>
    public static string Of(OrderLine line, LengthUnit unit) => Own(line, unit) is { } own ? $"{Risk(line, unit)} {own}" : Risk(line, unit);

    /// <summary>What ordering today would risk, in a sentence or two.</summary>
    public static string Risk(OrderLine line, LengthUnit unit)
    {
        string range = Say.Range(line.LikelyLow, line.LikelyHigh, unit);
        string cost = $"{Say.Percent(line.GainLeftPercent)} of speed, " +
            $"{Say.AboutSeconds(line.GoalSeconds * (1 - Math.Exp(-line.GainLeftPercent / 100)))} {line.OverTheRace}";
        if (line.NotNow)
            return RestFirst.NoOrder;
        if (!line.DiminishingReturns)
            return $"Better test first{(line.TooShort is null ? "" : ", with longer pieces")}. If you order today, expect to lose " +
                $"{cost}, on average; your best length may be anywhere from {range}. If you must order, order long.";
        if (line.Pieces == 0)
            return $"You have not paddled this hull yet: this comes by rule (likely {range}). Set or borrow a paddle of this length in " +
                $"this hull before you order.";
        string ready = $"Ready to order. On average more testing could gain {cost}.";
        string sure = line.WithinQuarterInch >= OrderLine.SureEnough
            ? $"{ready} There is {Say.AChance(line.WithinQuarterInch)} that it is within {Say.Fraction(0.25, unit)} of your best length."
            : $"{ready} The exact length is not certain (likely {range}), but that costs little speed, so order long and cut.";
        return line.OnToldEffort ? $"{sure} {EffortWords.Provisional()}" : sure;
    }

    private static string? Own(OrderLine line, LengthUnit unit) => line.FixedAt is not { } now ? null
        : now.InchesMoreThan(line.CutTo) switch
        {
            > AsItIs and var more => $"Yours is {Say.Quarter(now, unit)}: it can be cut, by {Say.Fraction(more, unit)} in all.",
            < -AsItIs and var more => $"Yours is {Say.Quarter(now, unit)}, {Say.Fraction(-more, unit)} too short: it takes a new shaft.",
            _ => $"Yours is {Say.Quarter(now, unit)}: leave it as it is.",
        };
}
