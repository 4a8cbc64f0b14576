using TrialLog.Domain.Values;

namespace TrialLog.Domain.Boats;

/// <summary>A paddle: a blade on a shaft that is adjustable within a range, or fixed.</summary>
public sealed record Paddle
{
    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>1 to 80 characters, unique in a logbook without regard to case.</summary>
    public required string Name { get; init; }

    /// <summary>Blade tip to throat.</summary>
    public required Length Blade { get; init; }

    /// <summary>Blade area in square inches, where known; 20 to 250.</summary>
    public double? BladeAreaSquareInches { get; init; }

    /// <summary>Whether this is a steering blade, which is sized by its own advice and never tuned for speed.</summary>
    public bool Steering { get; init; }

    /// <summary>The shortest overall length the shaft can be set to.</summary>
    public required Length Shortest { get; init; }

    /// <summary>The longest overall length the shaft can be set to; the same as <see cref="Shortest"/> for a fixed paddle.</summary>
    public required Length Longest { get; init; }

    /// <summary>The step between settings, counted from <see cref="Shortest"/>; a quarter inch unless told.</summary>
    public required Length Step { get; init; }

    /// <summary>Whose paddle it is; null where it is the club's or nobody said.</summary>
    public Guid? OwnerId { get; init; }

    /// <summary>Whether it is the club's, for everybody to use.</summary>
    public bool BelongsToClub { get; init; }

    /// <summary>Whether that paddler may be given it unasked: their own, or the club's.</summary>
    public bool IsFor(Guid paddlerId) => BelongsToClub || OwnerId == paddlerId;

    /// <summary>Whether the length cannot be changed.</summary>
    public bool IsFixed => Shortest == Longest;

    /// <summary>Whether the shaft can be set to that length: inside the range, within a millimetre at its ends.</summary>
    public bool Reaches(Length length) =>
        length.InchesMoreThan(Shortest) > -0.04 && Longest.InchesMoreThan(length) > -0.04;

    /// <summary>Every setting from shortest to longest.</summary>
    public IEnumerable<Length> Settings()
    {
        long step = Math.Max(1, Step.Nanometres);
        for (long at = Shortest.Nanometres; at <= Longest.Nanometres; at += step)
            yield return Length.FromNanometres(at);
    }
}
