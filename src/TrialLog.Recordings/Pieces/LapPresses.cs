using TrialLog.Recordings.Formats;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>The times at which the paddler pressed for a lap.</summary>
internal static class LapPresses
{
    private const int NearEnds = 10;
    private const int Most = 1000;

    /// <summary>
    /// Track points at the edges of pressed laps, in order. The start and end of the recording are no presses, so a
    /// recording of a single lap has none.
    /// </summary>
    public static IReadOnlyList<int> Of(IReadOnlyList<LapMark> laps, double start, Track track)
    {
        double end = track.Seconds[^1];
        return
        [
            .. laps.Where(lap => lap.Pressed)
                .Select(lap => lap.End)
                .Where(double.IsFinite)
                .Select(time => Math.Round(time - start))
                .Where(time => time > NearEnds && time < end - NearEnds)
                .Select(track.IndexAt)
                .Distinct()
                .Order()
                .Take(Most),
        ];
    }
}
