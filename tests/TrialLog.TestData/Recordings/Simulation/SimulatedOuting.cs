using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.TestData.Recordings.Writing;

namespace TrialLog.TestData.Recordings.Simulation;

/// <summary>A point of an outing, as it was or as a watch recorded it. Not-a-number: not recorded.</summary>
/// <param name="Time">Seconds since 1970.</param>
/// <param name="Latitude">Degrees north.</param>
/// <param name="Longitude">Degrees east.</param>
/// <param name="HeartRate">Beats a minute.</param>
/// <param name="Cadence">Strokes a minute.</param>
internal readonly record struct RecordedPoint(double Time, double Latitude, double Longitude, double HeartRate, double Cadence);

/// <summary>A piece as it truly was.</summary>
/// <param name="Start">Seconds from the outing's start at which the paddler went.</param>
/// <param name="End">Seconds from the outing's start at which the paddler stopped.</param>
/// <param name="Speed">Mean speed through the water once up to speed, turns left out; m/s.</param>
/// <param name="Legs">When each leg was paddled at full speed, seconds from the outing's start; two for a round trip.</param>
internal sealed record TruePiece(double Start, double End, double Speed, IReadOnlyList<(double Start, double End)> Legs)
{
    /// <summary>As <see cref="Speed"/>, but over ground where there is no leg back to cancel the current.</summary>
    public double OverGround { get; init; }

    /// <summary>Whether it went out and back.</summary>
    public bool RoundTrip => Legs.Count == 2;
}

/// <summary>A simulated outing: what was paddled and what the watch made of it.</summary>
internal sealed record SimulatedOuting
{
    /// <summary>Every second as it truly was.</summary>
    public required IReadOnlyList<RecordedPoint> True { get; init; }

    /// <summary>What the watch recorded.</summary>
    public required IReadOnlyList<RecordedPoint> Recorded { get; init; }

    /// <summary>What the watch would have recorded without dropouts and glitches, every second.</summary>
    public required IReadOnlyList<RecordedPoint> Noisy { get; init; }

    /// <summary>The pieces.</summary>
    public required IReadOnlyList<TruePiece> Pieces { get; init; }

    /// <summary>Times at which the lap button was pressed, seconds since 1970; empty if it was not used.</summary>
    public required IReadOnlyList<double> Presses { get; init; }

    /// <summary>Laps of the workout that the watch led through; null where it led through none.</summary>
    public IReadOnlyList<WrittenLap>? Laps { get; init; }

    /// <summary>The current, m/s with the first leg.</summary>
    public required double Current { get; init; }

    /// <summary>Local time less UTC.</summary>
    public required TimeSpan Offset { get; init; }
}
