using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Which of two sets of legs was paddled harder.</summary>
internal enum Harder
{
    /// <summary>Nothing tells.</summary>
    Unknown,

    /// <summary>Neither.</summary>
    Neither,

    /// <summary>The first.</summary>
    First,

    /// <summary>The second.</summary>
    Second,
}

/// <summary>Compares the effort of legs by what a current cannot change: stroke rate and heart rate.</summary>
internal static class Efforts
{
    // No sources: chosen. Wind and chop change the stroke rate by some percent at one effort; an easy way back by far more.
    private const double SameStrokes = 0.05, OtherStrokes = 0.09;
    private const double SameBeats = 6, OtherBeats = 12;

    /// <summary>Which legs were paddled harder, as far as sensors tell; where they disagree, unknown.</summary>
    public static Harder Compare(Track track, IReadOnlyList<Stretch> first, IReadOnlyList<Stretch> second)
    {
        if (first.Count == 0 || second.Count == 0)
            return Harder.Unknown;
        Harder strokes = Told(Math.Log(Mean(track.StrokeRate, first) / Mean(track.StrokeRate, second)), SameStrokes, OtherStrokes);
        Harder beats = Told(Mean(track.HeartRate, first) - Mean(track.HeartRate, second), SameBeats, OtherBeats);
        return strokes == Harder.Unknown ? beats
            : beats is Harder.Unknown || beats == strokes ? strokes
            : beats == Harder.Neither || strokes == Harder.Neither ? Harder.Unknown
            : Harder.Unknown;
    }

    private static Harder Told(double difference, double same, double other) =>
        double.IsNaN(difference) ? Harder.Unknown
        : Math.Abs(difference) <= same ? Harder.Neither
        : Math.Abs(difference) < other ? Harder.Unknown
        : difference > 0 ? Harder.First : Harder.Second;

    // The second half of each leg, since the heart follows the work by a minute or so; NaN where less than half is known.
    private static double Mean(float[] values, IReadOnlyList<Stretch> legs)
    {
        double sum = 0;
        int count = 0, all = 0;
        foreach (Stretch leg in legs)
        {
            for (int i = (leg.First + leg.Last) / 2; i <= leg.Last; i++, all++)
            {
                if (values[i] > 0)
                    (sum, count) = (sum + values[i], count + 1);
            }
        }

        return 2 * count >= all && count > 0 ? sum / count : double.NaN;
    }

    /// <summary>
    /// The drift of a canoe at rest, m/s along a course: the current, and what the wind adds. Null without half a minute of rest to tell it
    /// by.
    /// </summary>
    /// <param name="track">The track.</param>
    /// <param name="course">The course.</param>
    /// <param name="rests">Stretches without paddling.</param>
    public static double? Drift(Track track, Heading course, IEnumerable<Stretch> rests)
    {
        // Until the canoe has lost its way.
        const int glide = 12;
        double metres = 0, seconds = 0;
        foreach (Stretch rest in rests.Where(r => r.Seconds > 2 * glide))
        {
            Heading moved = track.Between(rest.First + glide, rest.Last - 2);
            metres += moved.Length * moved.Cosine(course);
            seconds += track.Seconds[rest.Last - 2] - track.Seconds[rest.First + glide];
        }

        return seconds >= 30 ? metres / seconds : null;
    }
}
