using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Sizing;

/// <summary>What is known of the best length in one hull with one blade, and what to order on it.</summary>
public sealed record OrderLine
{
    /// <summary>
    /// The share within a quarter inch from which a length is sure enough to be ordered without a second thought. Chosen, no source.
    /// </summary>
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

    /// <summary>How long the goal event takes, over which a cost is told; an hour where none is named. Seconds.</summary>
    public double GoalSeconds { get; init; } = 3600;

    /// <summary>What a cost is told over: <c>over your 16 km</c>; where no race is named, <c>in an hour</c>.</summary>
    public string OverTheRace { get; init; } = "in an hour";

    /// <summary>Why pieces as short as the log's cannot settle it; null where they can.</summary>
    public ShortPieces? TooShort { get; init; }

    /// <summary>Whether effort rests on the paddler's word alone.</summary>
    public bool OnToldEffort { get; init; }

    /// <summary>Whether testing has come to its end for this hull.</summary>
    public required bool DiminishingReturns { get; init; }

    /// <summary>The length that a fixed paddle with this blade has now; null where the paddler's is adjustable.</summary>
    public Length? FixedAt { get; init; }

    /// <summary>The longest length to propose while the paddler has been sore of late; null where they have not.</summary>
    public Length? SorenessCeiling { get; init; }

    /// <summary>Whether soreness that stands forbids ordering, whatever the length: no paddle is bought for one that hurts.</summary>
    public bool NotNow => SorenessCeiling is not null;

    /// <summary>The length to cut to, to the quarter inch.</summary>
    public Length CutTo => Best.RoundedTo(Length.QuarterInch);

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
            Length quarter = at.RoundedTo(Length.QuarterInch);
            return quarter < at ? quarter.PlusInches(0.25) : quarter;
        }
    }

    /// <summary>What the length rests on, in a few words: <c>from 24 pieces</c>, <c>by rule from the start length</c>.</summary>
    public required string RestsOn { get; init; }
}
