using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Pieces;

/// <summary>A piece as found in a recording or as the user corrected it, not yet saved.</summary>
public sealed record PieceProposal
{
    /// <summary>Its legs in the order paddled; one for a one-way piece, two for a round trip. Never empty.</summary>
    public required IReadOnlyList<Leg> Legs { get; init; }

    /// <summary>How it lay on the water.</summary>
    public required Course Course { get; init; }

    /// <summary>Distance over ground, all legs.</summary>
    public required Distance Distance { get; init; }

    /// <summary>
    /// The distance over <see cref="MetresPerSecond"/>, which for a round trip is the mean of the speeds of the legs out and back.
    /// </summary>
    public required PieceTime Time { get; init; }

    /// <summary>
    /// Speed in m/s; for a round trip the mean of the speeds over ground out and back, in which a steady current cancels.
    /// </summary>
    public required double MetresPerSecond { get; init; }

    /// <summary>
    /// One standard deviation of <see cref="MetresPerSecond"/> as measured, percent: from the recording's noise, the piece's time, dropouts
    /// and legs.
    /// </summary>
    public required double SpeedErrorPercent { get; init; }

    /// <summary>Current along the course in m/s, positive with the first leg; null where there is no leg back to tell it from.</summary>
    public double? CurrentMetresPerSecond { get; init; }

    /// <summary>Mean over the last two thirds.</summary>
    public HeartRate? HeartRate { get; init; }

    /// <summary>Mean over the legs.</summary>
    public StrokeRate? StrokeRate { get; init; }

    /// <summary>Speed of the second half less the first, percent of the mean.</summary>
    public double? FadePercent { get; init; }

    /// <summary>Speed in each quarter of its legs, percent of the mean less 100; empty where they are too short to tell.</summary>
    public IReadOnlyList<double> QuarterPercent { get; init; } = [];

    /// <summary>Metres a stroke; null where no stroke rate was recorded.</summary>
    public double? MetresPerStroke => StrokeRate is { } rate ? MetresPerSecond * 60 / rate.StrokesPerMinute : null;

    /// <summary>What the step of the watch's workout was called that it was paddled as; null where there was none.</summary>
    public string? StepName { get; init; }

    /// <summary>Why it is left out; null where it counts.</summary>
    public string? LeftOutBecause { get; init; }

    /// <summary>What the user should know before trusting it, in plain sentences.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>When it began, since the recording's start.</summary>
    public TimeSpan Start => Legs[0].Start;

    /// <summary>When it ended, since the recording's start.</summary>
    public TimeSpan End => Legs[^1].End;

    /// <summary>Whether it counts.</summary>
    public bool Kept => LeftOutBecause is null;
}
