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

    /// <summary>
    /// How fast noise carries the positions away from the course, m²/s on one axis: the variance of the way across the course in ten
    /// seconds at paddling speed, over these ten seconds.
    /// </summary>
    public double Wander { get; private set; }

    /// <summary>The slow noise of its positions.</summary>
    public PositionNoise Noise { get; private set; }

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

    /// <summary>Measures <see cref="Wander"/> and <see cref="Noise"/>; no values before this is called.</summary>
    public Track WithNoise()
    {
        const int step = 5;
        const double paddling = 1.2;
        // Median of the square of a normal number over its variance (chi-squared, one degree of freedom).
        const double median = 0.4549;
        var squares = new List<double>();
        for (int i = 2 * step; i + 2 * step < Count; i += 2)
        {
            if (!Unbroken(i - 2 * step, i + 2 * step))
                continue;
            // The way across from second 5 before to second 5 after, against the straight line from 10 before to 10 after.
            Heading all = Between(i - 2 * step, i + 2 * step), inner = Between(i - step, i + step);
            if (all.Length < 4 * step * paddling)
                continue;
            double across = (inner.East * all.North - inner.North * all.East) / all.Length;
            squares.Add(across * across);
        }

        squares.Sort();
        // Of a random walk, half of its variance in the middle half is left beside the line through its ends.
        Wander = squares.Count < 30 ? 0 : squares[squares.Count / 2] / median / (2 * step) / 0.5;
        Noise = PositionNoise.Of(this);
        return this;
    }

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
