using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Sizing;

/// <summary>The best length in one hull with one paddle, what it rests on, and whether the paddle can be set to it.</summary>
internal sealed record CarriedRow
{
    public required Hull Hull { get; init; }

    public required Paddle Paddle { get; init; }

    /// <summary>The best length, to the quarter inch.</summary>
    public required Length Best { get; init; }

    /// <summary>The central 90 % range; null where a length given by hand stays in its hull with its blade.</summary>
    public (Length Low, Length High)? Likely { get; init; }

    /// <summary>Probability of being within a quarter inch; null where a single length was carried over by hand.</summary>
    public double? WithinQuarterInch { get; init; }

    public double? GainLeftPercent { get; init; }

    public bool DiminishingReturns { get; init; }

    /// <summary>Why pieces as short as the log's cannot settle it; null where they can.</summary>
    public ShortPieces? TooShort { get; init; }

    /// <summary>Whether effort rests on the paddler's word alone.</summary>
    public bool OnToldEffort { get; init; }

    /// <summary>The longest length to propose while the paddler has been sore of late; null where they have not.</summary>
    public Length? SorenessCeiling { get; init; }

    /// <summary>The longest length to paddle once it no longer hurts; null where nothing hurts, or the paddle goes no shorter.</summary>
    public Length? ForNow { get; init; }

    public required CarriedEvidence Evidence { get; init; }

    /// <summary>Pieces in this hull that count.</summary>
    public int Pieces { get; init; }

    /// <summary>Inches this hull's paddle is longer than the solo canoe's, by seat height.</summary>
    public required double SeatHeightOffsetInches { get; init; }

    /// <summary>Inches a paddle with this blade is longer than one with the reference blade.</summary>
    public double BladeOffsetInches => ExposedShaftRule.OffsetInches(Paddle.Blade);

    /// <summary>Whether the paddle can be set to the best length.</summary>
    public bool InRange => Paddle.Reaches(Best);

    /// <summary>What the length rests on, in a few words: pieces and rule told apart.</summary>
    public string RestsOn(LengthUnit unit) => Evidence switch
    {
        CarriedEvidence.Tuned => $"from {Count}",
        CarriedEvidence.OtherBlades => $"from {Count}; blade by rule",
        CarriedEvidence.OtherHulls => "by rule from other hulls",
        CarriedEvidence.StartLength => "by rule from the start length",
        _ => $"by rule: seat {Signed(SeatHeightOffsetInches, unit)}, blade {Signed(BladeOffsetInches, unit)}",
    };

    private string Count => Pieces == 1 ? "1 piece" : $"{Pieces} pieces";

    private static string Signed(double inches, LengthUnit unit) =>
        Math.Abs(inches) < 0.03 ? "0" : (inches > 0 ? "+" : "−") + Say.Fraction(Math.Abs(inches), unit);

    /// <summary>How far the paddle falls short of it or cannot be made short enough, as a phrase; null where it can be set so.</summary>
    public string? OutOfRange(LengthUnit unit) => InRange ? null
        : Best > Paddle.Longest
            ? $"{(Paddle.IsFixed ? "the paddle" : "its longest")} is {Say.Quarter(Paddle.Longest, unit)}, " +
                $"{Say.Fraction(Best.InchesMoreThan(Paddle.Longest), unit)} too short"
            : $"{(Paddle.IsFixed ? "the paddle" : "its shortest")} is {Say.Quarter(Paddle.Shortest, unit)}, " +
                $"{Say.Fraction(Paddle.Shortest.InchesMoreThan(Best), unit)} too long";
}

/// <summary>What a carried length rests on, weakest first.</summary>
internal enum CarriedEvidence
{
    /// <summary>The start length and the rules; nothing was paddled yet.</summary>
    StartLength,

    /// <summary>Pieces in other hulls, carried over by the rules.</summary>
    OtherHulls,

    /// <summary>Pieces in this hull with other blades, carried over by the exposed-shaft rule.</summary>
    OtherBlades,

    /// <summary>Pieces in this hull with this paddle.</summary>
    Tuned,

    /// <summary>One length given by hand, carried over by the rules alone.</summary>
    ByHand,
}
