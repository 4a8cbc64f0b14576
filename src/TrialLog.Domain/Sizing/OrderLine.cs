namespace TrialLog.Domain;

/// <summary>What is known of the best length in one hull with one blade, and what to order on it.</summary>
public sealed record OrderLine
{
    /// <summary>The share within a quarter inch from which a length is sure enough to be ordered without a second thought. Chosen, no source.</summary>
    public const double SureEnough = 0.6;

    /// <summary>The least that a paddle is ordered long, inches. Chosen, no source: two cuts by a quarter inch.</summary>
    public const double LeastSpareInches = 0.5;

    /// <summary>The hull's name.</summary>
    public required string Hull { get; init; }

    /// <summary>The paddle whose blade it is, by name.</summary>
    public required string Paddle { get; init; }

    /// <summary>The blade's length.</summary>
    public required Length Blade { get; init; }

    /// <summary>The best length known.</summary>
    public required Length Best { get; init; }

    /// <summary>Lower end of the likely range (central 90 %).</summary>
    public required Length LikelyLow { get; init; }

    /// <summary>Upper end of the likely range.</summary>
    public required Length LikelyHigh { get; init; }

    /// <summary>Probability that the truly best length lies within a quarter inch of <see cref="Best"/>.</summary>
    public required double WithinQuarterInch { get; init; }

    /// <summary>Pieces paddled in this hull that count; 0: carried over by rule alone.</summary>
    public required int Pieces { get; init; }

    /// <summary>Expected loss of speed at <see cref="Best"/>, percent.</summary>
    public required double GainLeftPercent { get; init; }

    /// <summary>Whether testing has come to its end for this hull.</summary>
    public required bool DiminishingReturns { get; init; }

    /// <summary>The length to cut to, to the quarter inch.</summary>
    public Length CutTo => Best.RoundedTo(Spoken.QuarterInch);

    /// <summary>
    /// The length to order or to cut to first: the top of the likely range, at least half an inch long, up to the next quarter
    /// inch; a shaft can be cut, not grown.
    /// </summary>
    public Length OrderAt
    {
        get
        {
            Length spare = CutTo.PlusInches(LeastSpareInches);
            Length at = LikelyHigh > spare ? LikelyHigh : spare;
            Length quarter = at.RoundedTo(Spoken.QuarterInch);
            return quarter < at ? quarter.PlusInches(0.25) : quarter;
        }
    }

    /// <summary>What the length rests on, in a few words: <c>tuned, 24 pieces</c>, <c>by rule from the start length</c>.</summary>
    public required string RestsOn { get; init; }

    /// <summary>What ordering today would risk, in a sentence.</summary>
    public string Risk(LengthUnit unit)
    {
        string within = $"within {Spoken.Fraction(0.25, unit)} of your best length";
        string range = $"{Spoken.ToQuarter(LikelyLow, unit)} to {Spoken.ToQuarter(LikelyHigh, unit)}";
        string cost = $"{GainLeftPercent:0.00} % of speed, {Seconds(GainLeftPercent)} in an hour";
        if (!DiminishingReturns)
            return $"Ordered today, the chance is {Spoken.Chance(WithinQuarterInch)} that it is {within}, which may lie anywhere from {range}; expected cost {cost}. Test on first, or order at the long end and cut down as you learn.";
        string ready = $"Ready to order: all that more testing could still win is {cost}.";
        return WithinQuarterInch >= SureEnough
            ? $"{ready} The chance is {Spoken.Chance(WithinQuarterInch)} that it is {within}."
            : $"{ready} Speed hardly changes nearby (the chance is {Spoken.Chance(WithinQuarterInch)} that it is {within}), so go by comfort from {range}.";
    }

    private static string Seconds(double percent) => (percent * 36) switch
    {
        < 1 => "under a second",
        var seconds => $"about {seconds:0} s",
    };
}
