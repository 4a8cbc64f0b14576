using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>An active step of a workout that the watch led through.</summary>
/// <param name="Stretch">From where to where.</param>
/// <param name="Name">What the step was called; null where it had no name.</param>
internal readonly record struct WatchStep(Stretch Stretch, string? Name);

/// <summary>What the paddler or the watch itself marked on the track.</summary>
internal sealed class WatchMarks
{
    private const int NearEnds = 10;
    private const int Most = 1000;

    /// <summary>Nothing marked.</summary>
    public static readonly WatchMarks None = new() { Presses = [], Steps = [] };

    /// <summary>
    /// Track points at the edges of pressed laps, in order. The start and end of the recording are no presses, so a
    /// recording of a single lap has none.
    /// </summary>
    public required IReadOnlyList<int> Presses { get; init; }

    /// <summary>The active steps of a workout, in order; empty where the watch led through none.</summary>
    public required IReadOnlyList<WatchStep> Steps { get; init; }

    /// <summary>The marks in these laps.</summary>
    /// <param name="recording">What the file said.</param>
    /// <param name="start">Of the track, seconds since 1970.</param>
    /// <param name="track">The track.</param>
    public static WatchMarks Of(Recording recording, double start, Track track)
    {
        double end = track.Seconds[^1];
        bool workout = recording.Laps.Any(lap => lap.Kind is LapKind.Rest || lap.Step is not null);
        return new WatchMarks
        {
            Presses =
            [
                .. recording.Laps.Where(lap => lap.Pressed)
                    .Select(lap => lap.End)
                    .Where(double.IsFinite)
                    .Select(time => Math.Round(time - start))
                    .Where(time => time > NearEnds && time < end - NearEnds)
                    .Select(track.IndexAt)
                    .Distinct()
                    .Order()
                    .Take(Most),
            ],
            Steps = workout ? [.. StepsOf(recording, start, track).Take(Most)] : [],
        };
    }

    private static IEnumerable<WatchStep> StepsOf(Recording recording, double start, Track track)
    {
        foreach (LapMark lap in recording.Laps)
        {
            LapKind kind = lap.Kind;
            string? name = null;
            if (lap.Step is int number && recording.Steps.TryGetValue(number, out RecordedStep? step))
                (kind, name) = (step.Kind, step.Name);
            if (kind is not LapKind.Active || !double.IsFinite(lap.Start) || !double.IsFinite(lap.End))
                continue;
            int first = track.IndexAt(Math.Round(lap.Start - start)), last = track.IndexAt(Math.Round(lap.End - start));
            last = Math.Min(last, track.Count - 1);
            if (last - first >= RecordedOuting.ShortestLeg.TotalSeconds && track.Part[first] == track.Part[last])
                yield return new WatchStep(new Stretch(first, last), name);
        }
    }
}
