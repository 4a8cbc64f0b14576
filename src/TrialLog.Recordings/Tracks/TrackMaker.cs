using System.Runtime.InteropServices;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Files;
using TrialLog.Recordings.Formats;

namespace TrialLog.Recordings.Tracks;

/// <summary>From what a file said to a <see cref="Track"/>: mends times and positions, smooths, and puts all on one clock.</summary>
internal static class TrackMaker
{
    /// <summary>A gap in the positions longer than this many seconds is not bridged.</summary>
    public const double LongestBridge = 120;

    /// <summary>The longest outing, in hours of recorded track.</summary>
    public const int MostHours = 48;

    private const int FewestFixes = 10;

    /// <summary>Makes the track.</summary>
    /// <returns>The track, when it began (seconds since 1970), the place then, and what was mended.</returns>
    /// <exception cref="RecordingException">There is no track in it.</exception>
    public static (Track Track, double Start, double Latitude, double Longitude, Mended Mended) Make(Recording recording)
    {
        if (recording.Samples.Count == 0)
            throw new RecordingException(
                "the recording holds no track points; check that it is a recorded outing and not a planned course.");
        var timed = recording.Samples.Where(s => s.HasTime).ToList();
        if (timed.Count == 0)
            throw new RecordingException(
                "the track has no times, so no speed can be told from it; export the recorded outing, with times.");
        (List<RecordedSample> samples, int duplicates, int backward) = IncreasingTimes.Of(timed);
        List<RecordedSample> placed = samples.FindAll(s => s.HasPosition);
        List<Fix> fixes = Jumps.Without(
            placed.ConvertAll(s => new Fix(s.Time, Ellipsoid.ToCartesian(s.Latitude, s.Longitude))), out int jumps);
        List<(int Start, int End)> parts = Parts(fixes);
        if (parts.Count == 0)
            throw TooFewPositions();

        Fix first = fixes[parts[0].Start];
        double interval = UsualInterval(fixes), longest = Math.Max(5, 3 * interval);
        List<(double Start, double End)> gaps = [.. fixes.Zip(fixes.Skip(1))
            .Where(p => p.Second.Time - p.First.Time > longest)
            .Select(p => (p.First.Time - first.Time, p.Second.Time - first.Time))];
        Span<Fix> all = CollectionsMarshal.AsSpan(fixes);
        double noise = FixNoise.Of(all);
        var grid = new TrackGrid(first, parts.Sum(p => fixes[p.End - 1].Time - fixes[p.Start].Time), TrackSmoother.Blur(noise, interval));
        foreach ((int start, int end) in parts)
            grid.Add(TrackSmoother.Smooth(all[start..end], noise));
        RecordedSample launch = placed.First(s => s.Time == first.Time);
        return (grid.ToTrack(samples, gaps), first.Time, launch.Latitude, launch.Longitude, new Mended
        {
            IsCutOff = recording.IsCutOff,
            WithoutTime = recording.Samples.Count - timed.Count,
            WithoutPosition = samples.Count - placed.Count,
            DuplicateTimes = duplicates,
            BackwardTimes = backward,
            Jumps = jumps,
            Dropouts = gaps.Count,
            DropoutSeconds = gaps.Sum(g => g.End - g.Start - interval),
        });
    }

    /// <summary>The sentence for a track that is no more than a few fixes.</summary>
    public static RecordingException TooFewPositions() =>
        new("the recording holds too few positions to find a piece in; record with GPS on, on the water.");

    private static List<(int Start, int End)> Parts(List<Fix> fixes)
    {
        var parts = new List<(int, int)>();
        int start = 0;
        for (int i = 1; i <= fixes.Count; i++)
        {
            if (i < fixes.Count && fixes[i].Time - fixes[i - 1].Time <= LongestBridge && Jumps.Reachable(fixes[i - 1], fixes[i]))
                continue;
            if (i - start >= FewestFixes)
                parts.Add((start, i));
            start = i;
        }

        return parts;
    }

    private static double UsualInterval(List<Fix> fixes)
    {
        double[] steps = [.. fixes.Zip(fixes.Skip(1), (a, b) => b.Time - a.Time)];
        Array.Sort(steps);
        return steps[steps.Length / 2];
    }
}
