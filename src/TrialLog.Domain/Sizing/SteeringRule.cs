using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;

namespace TrialLog.Domain.Sizing;

/// <summary>
/// How long a steering paddle might be. With a large blade keep the top hand lower than for forward strokes; with a small
/// one, length much as for forward paddling (common practice, no source). Never tuned for speed.
/// </summary>
public static class SteeringRule
{
    /// <summary>From this area a steering blade counts as large, square inches. Chosen, no source.</summary>
    public const double LargeAreaSquareInches = 135;

    /// <summary>From this length a steering blade counts as large where its area is not known. Chosen, no source.</summary>
    public static readonly Length LargeBlade = Length.FromInches(21);

    /// <summary>How much lower the top hand is kept with a large blade, inches. Chosen, no source.</summary>
    public const double LowerHandInches = 2;

    /// <summary>How far either way the proposal may well be off, inches. Chosen, no source.</summary>
    public const double GiveOrTakeInches = 1.5;

    /// <summary>Whether a steering blade counts as large: by its area where that is known, else by its length.</summary>
    public static bool IsLarge(Paddle paddle) =>
        paddle.BladeAreaSquareInches is { } area ? area >= LargeAreaSquareInches : paddle.Blade >= LargeBlade;

    /// <summary>The length to begin with, to the quarter inch.</summary>
    /// <param name="forward">The best length for forward paddling in that hull with that blade, by the exposed-shaft rule.</param>
    /// <param name="paddle">The steering paddle.</param>
    /// <exception cref="InvalidValueException">The result is not between 0 and 10 m.</exception>
    public static SteeringProposal Propose(Length forward, Paddle paddle)
    {
        bool large = IsLarge(paddle);
        Length length = forward.PlusInches(large ? -LowerHandInches : 0).RoundedTo(Length.QuarterInch);
        return new(length, length.PlusInches(-GiveOrTakeInches), length.PlusInches(GiveOrTakeInches), large);
    }
}

/// <summary>A length for a steering paddle to begin with.</summary>
/// <param name="Length">The length.</param>
/// <param name="Low">The shortest that may well be right.</param>
/// <param name="High">The longest that may well be right.</param>
/// <param name="Large">Whether the blade counts as large.</param>
public sealed record SteeringProposal(Length Length, Length Low, Length High, bool Large);
