using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Tracks;

/// <summary>
/// The mended, smoothed track, once a second, without coordinates: how far along, how fast, and east and north of the
/// start in metres. Gaps too long to bridge leave no points.
/// </summary>
internal sealed class Track
{
    /// <summary>Seconds over which noise was averaged: a change of speed is blurred over some such times.</summary>
    public required double Blur { get; init; }

    /// <summary>Whole seconds since the first position.</summary>
    public required double[] Seconds { get; init; }

    /// <summary>Metres along the smoothed track.</summary>
    public required double[] Along { get; init; }

    /// <summary>Speed over ground, m/s.</summary>
    public required float[] Speed { get; init; }

    /// <summary>Metres east of the start.</summary>
    public required float[] East { get; init; }

    /// <summary>Metres north of the start.</summary>
    public required float[] North { get; init; }

    /// <summary>Number of the unbroken part a point belongs to.</summary>
    public required int[] Part { get; init; }

    /// <summary>Heart rate, beats a minute; NaN where unknown.</summary>
    public required float[] HeartRate { get; init; }

    /// <summary>Stroke rate, strokes a minute; NaN where unknown.</summary>
    public required float[] StrokeRate { get; init; }

    /// <summary>The device's own speed, m/s; NaN where unknown.</summary>
    public required float[] DeviceSpeed { get; init; }

    /// <summary>Dropouts that were bridged, seconds since the first position.</summary>
    public required IReadOnlyList<(double Start, double End)> Gaps { get; init; }

    /// <summary>The number of points.</summary>
    public int Count => Seconds.Length;

    /// <summary>The first point at or after that time; <see cref="Count"/> past the end.</summary>
    public int IndexAt(double seconds)
    {
        int at = Array.BinarySearch(Seconds, seconds);
        return at < 0 ? ~at : at;
    }

    /// <summary>Whether all from one point to another belongs to one unbroken part.</summary>
    public bool Unbroken(int from, int to) => from >= 0 && to < Count && Part[from] == Part[to];

    /// <summary>Displacement between two points, metres east and north.</summary>
    public Heading Between(int from, int to) => new(East[to] - East[from], North[to] - North[from]);
}

/// <summary>A displacement over water, metres east and north.</summary>
internal readonly record struct Heading(double East, double North)
{
    /// <summary>Its length in metres.</summary>
    public double Length => Math.Sqrt(East * East + North * North);

    /// <summary>Cosine of the angle between two displacements; 0 if either has no length.</summary>
    public double Cosine(Heading other)
    {
        double lengths = Length * other.Length;
        return lengths < 1e-9 ? 0 : (East * other.East + North * other.North) / lengths;
    }
}
