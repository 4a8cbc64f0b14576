using TrialLog.Domain.Values;

namespace TrialLog.Domain.Log;

/// <summary>A timed stretch at steady effort inside an outing: the unit of data.</summary>
public sealed record Piece
{
    /// <summary>The fastest speed over a piece that is believed, m/s. No source: well above any paddled piece on flat water.</summary>
    public const double FastestMetresPerSecond = 8;

    /// <summary>The slowest speed over a piece that is believed, m/s. No source: slower than drifting with the paddle out.</summary>
    public const double SlowestMetresPerSecond = 0.3;

    /// <summary>Stable across logbooks.</summary>
    public required Guid Id { get; init; }

    /// <summary>Order within the outing, from 1.</summary>
    public required int Order { get; init; }

    /// <summary>The paddle used.</summary>
    public required Guid PaddleId { get; init; }

    /// <summary>Overall paddle length, blade tip to top of grip.</summary>
    public required Length Length { get; init; }

    /// <summary>Distance paddled.</summary>
    public required Distance Distance { get; init; }

    /// <summary>Time taken. For a round trip from a recording: the distance over the mean of the two legs' speeds.</summary>
    public required PieceTime Time { get; init; }

    /// <summary>Perceived exertion, if told.</summary>
    public Effort? Effort { get; init; }

    /// <summary>Mean heart rate over the last two thirds, if known.</summary>
    public HeartRate? HeartRate { get; init; }

    /// <summary>Mean stroke rate, if known.</summary>
    public StrokeRate? StrokeRate { get; init; }

    /// <summary>The way the piece lay on the water.</summary>
    public Course Course { get; init; } = Course.RoundTrip;

    /// <summary>Soreness of shoulder, elbow or back, if told.</summary>
    public Soreness? Soreness { get; init; }

    /// <summary>Speed of the second half less the first, in percent of the mean, where a recording told it.</summary>
    public double? FadePercent { get; init; }

    /// <summary>Why the piece does not count; null where it counts.</summary>
    public string? ExcludedBecause { get; init; }

    /// <summary>Anything else.</summary>
    public string? Notes { get; init; }

    /// <summary>Fingerprint of the row or recording it came from; null where typed.</summary>
    public string? Origin { get; init; }

    /// <summary>What timed it; null where nobody said.</summary>
    public TimedBy? TimedBy { get; init; }

    /// <summary>Standard error of its mean speed as measured, percent, above 0 to 20; null where it is not known.</summary>
    public double? SpeedErrorPercent { get; init; }

    /// <summary>Mean speed in m/s.</summary>
    public double MetresPerSecond => Distance.Metres / Time.Seconds;

    /// <summary>Says what is wrong with a piece of that distance and time, or null where the speed can be believed.</summary>
    public static string? ProblemWithSpeed(Distance distance, PieceTime time) => (distance.Metres / time.Seconds) switch
    {
        > FastestMetresPerSecond => $"{distance} in {time} is {distance.Metres / time.Seconds:0.0} m/s, faster than any paddled piece; " +
            $"check distance and time.",
        < SlowestMetresPerSecond => $"{distance} in {time} is {distance.Metres / time.Seconds:0.00} m/s, slower than drifting; " +
            $"check distance and time.",
        _ => null,
    };
}
