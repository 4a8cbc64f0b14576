using TrialLog.Domain.Values;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Formats;

namespace TrialLog.Recordings.Tracks;

/// <summary>Puts smoothed fixes on a clock of one second.</summary>
internal sealed class TrackGrid
{
    private readonly Fix first;
    private readonly double blur;
    private readonly int courseSeconds;
    private readonly Point3 east, north;
    private readonly List<float> speed, easts, norths;
    private readonly List<double> seconds, along;
    private readonly List<int> part;
    private int parts;

    /// <summary>A grid whose clock and frame start at that fix, with room for so many seconds, for fixes blurred over so many.</summary>
    /// <exception cref="RecordingException">More than two days.</exception>
    public TrackGrid(Fix first, double duration, double blur)
    {
        if (duration > TrackMaker.MostHours * 3600)
            throw new RecordingException(
                $"the track lasts longer than {TrackMaker.MostHours} hours; cut it to one outing, or check the watch's clock.");
        int room = (int)duration + 64;
        this.first = first;
        this.blur = blur;
        courseSeconds = (int)Math.Round(1 + 4 * blur);
        (speed, easts, norths, seconds, along, part) = (new(room), new(room), new(room), new(room), new(room), new(room));

        // Any two directions at right angles on the ground will do where east has no meaning, at the poles.
        Point3 up = 1 / first.Position.Norm * first.Position;
        Point3 sideways = new(-up.Y, up.X, 0);
        east = sideways.Norm < 1e-9 ? new Point3(1, 0, 0) : 1 / sideways.Norm * sideways;
        north = new Point3(up.Y * east.Z - up.Z * east.Y, up.Z * east.X - up.X * east.Z, up.X * east.Y - up.Y * east.X);
    }

    /// <summary>Adds an unbroken part.</summary>
    public void Add(SmoothedFix[] fixes)
    {
        double start = Math.Ceiling(fixes[0].Time - first.Time);
        var positions = new List<Point3>();
        int i = 0;
        for (double at = start; first.Time + at <= fixes[^1].Time; at++)
        {
            while (i < fixes.Length - 2 && fixes[i + 1].Time < first.Time + at)
                i++;
            (Point3 position, Point3 velocity) = Between(fixes[i], fixes[i + 1], first.Time + at);
            positions.Add(position);
            seconds.Add(at);
            speed.Add((float)velocity.Norm);
            Point3 place = position - first.Position;
            easts.Add((float)place.Dot(east));
            norths.Add((float)place.Dot(north));
            part.Add(parts);
        }

        AddWay(positions);
        parts++;
    }

    // Noise across the course would lengthen every step, so a step counts only along the course of the seconds around it.
    private void AddWay(List<Point3> positions)
    {
        double way = along.Count > 0 ? along[^1] : 0;
        for (int i = 0; i < positions.Count; i++)
        {
            if (i > 0)
            {
                Point3 course = positions[Math.Min(i - 1 + courseSeconds, positions.Count - 1)] - positions[Math.Max(i - courseSeconds, 0)];
                Point3 step = positions[i] - positions[i - 1];
                way += course.Norm > 0 ? Math.Max(0, step.Dot(course) / course.Norm) : 0;
            }

            along.Add(way);
        }
    }

    /// <summary>
    /// The finished track, with heart rate, stroke rate and device speed held from the last sample for up to ten seconds.
    /// </summary>
    public Track ToTrack(List<RecordedSample> samples, IReadOnlyList<(double Start, double End)> gaps)
    {
        int n = seconds.Count;
        if (n < 2)
            throw TrackMaker.TooFewPositions();
        var track = new Track
        {
            Blur = blur,
            Gaps = gaps,
            Seconds = [.. seconds],
            Along = [.. along],
            Speed = [.. speed],
            East = [.. easts],
            North = [.. norths],
            Part = [.. part],
            HeartRate = new float[n],
            StrokeRate = new float[n],
            DeviceSpeed = new float[n],
        };
        Hold(samples, s => s.HeartRate is >= 25 and <= 250, s => s.HeartRate, track.HeartRate);
        Hold(samples, s => s.Cadence is >= 0 and <= 254, s => s.Cadence, track.StrokeRate);
        Hold(samples, s => s.Speed is >= 0 and <= 30, s => s.Speed, track.DeviceSpeed);
        return track.WithNoise();
    }

    private void Hold(List<RecordedSample> samples, Func<RecordedSample, bool> isGiven, Func<RecordedSample, float> value, float[] into)
    {
        const double longest = 10;
        int next = 0;
        double told = double.NegativeInfinity;
        float held = float.NaN;
        for (int i = 0; i < into.Length; i++)
        {
            double now = first.Time + seconds[i];
            for (; next < samples.Count && samples[next].Time <= now; next++)
            {
                if (isGiven(samples[next]))
                    (told, held) = (samples[next].Time, value(samples[next]));
            }

            into[i] = now - told <= longest ? held : float.NaN;
        }
    }

    // Between two known positions and velocities the expected way of a craft whose velocity wanders is the cubic through them.
    private static (Point3 Position, Point3 Velocity) Between(SmoothedFix a, SmoothedFix b, double time)
    {
        double step = b.Time - a.Time, u = (time - a.Time) / step;
        double u2 = u * u, u3 = u2 * u;
        Point3 position = (2 * u3 - 3 * u2 + 1) * a.Position + (step * (u3 - 2 * u2 + u)) * a.Velocity
            + (3 * u2 - 2 * u3) * b.Position + (step * (u3 - u2)) * b.Velocity;
        Point3 velocity = (6 * (u2 - u) / step) * a.Position + (3 * u2 - 4 * u + 1) * a.Velocity
            + (6 * (u - u2) / step) * b.Position + (3 * u2 - 2 * u) * b.Velocity;
        return (position, velocity);
    }
}
