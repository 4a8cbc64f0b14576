using TrialLog.Recordings.Files;
using TrialLog.Recordings.Formats;

namespace TrialLog.Recordings.Tracks;

/// <summary>The outings in one file: several tracks, activities or days.</summary>
internal static class RecordingParts
{
    // No sources: chosen. Fewer samples are no outing.
    private const double LongestPause = 2 * 3600;
    private const int FewestSamples = 60;
    private const int Most = 500;

    /// <summary>Each outing as a recording of its own, by time; the recording itself where it is one outing.</summary>
    /// <exception cref="RecordingException">There are too many.</exception>
    public static IReadOnlyList<Recording> Of(Recording recording)
    {
        var units = new List<List<RecordedSample>>();
        int from = 0;
        foreach (int to in recording.Breaks.Append(recording.Samples.Count))
        {
            (List<RecordedSample> kept, _, _) = IncreasingTimes.Of([.. recording.Samples.Skip(from).Take(to - from).Where(s => s.HasTime)]);
            int start = 0;
            for (int i = 1; i <= kept.Count; i++)
            {
                if (i < kept.Count && kept[i].Time - kept[i - 1].Time <= LongestPause)
                    continue;
                if (i - start >= FewestSamples)
                    units.Add(kept.GetRange(start, i - start));
                start = i;
            }

            from = to;
        }

        // What follows closely is one outing, stopped and started again.
        var outings = new List<List<RecordedSample>>();
        foreach (List<RecordedSample> unit in units.OrderBy(u => u[0].Time))
        {
            if (outings.Count > 0 && unit[0].Time - outings[^1].Max(s => s.Time) <= LongestPause)
                outings[^1].AddRange(unit);
            else
                outings.Add(unit);
        }

        if (outings.Count > Most)
            throw new RecordingException($"it holds {outings.Count} outings, more than {Most}; export fewer at a time.");
        return outings.Count < 2 ? [recording] : [.. outings.Select(samples => recording with
        {
            Samples = samples,
            Laps = [
                .. recording.Laps.Where(
                lap => !double.IsFinite(lap.Start) || (lap.Start >= samples[0].Time - 60 && lap.Start <= samples[^1].Time))],
        })];
    }
}
