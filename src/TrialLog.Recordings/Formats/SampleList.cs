using TrialLog.Recordings.Files;

namespace TrialLog.Recordings.Formats;

/// <summary>Collects samples up to the most that are believed.</summary>
internal sealed class SampleList
{
    /// <summary>A sample that says nothing.</summary>
    public static readonly RecordedSample Nothing = new(double.NaN, double.NaN, double.NaN, float.NaN, float.NaN, float.NaN);

    private readonly List<RecordedSample> all = [];

    /// <summary>What was collected.</summary>
    public IReadOnlyList<RecordedSample> All => all;

    /// <summary>Adds one.</summary>
    /// <exception cref="RecordingException">There are too many.</exception>
    public void Add(RecordedSample sample)
    {
        if (all.Count == Recording.MostSamples)
            throw new RecordingException($"the recording holds more than {Recording.MostSamples:#,0} points, more than any outing; check " +
                $"that it is the right file.");
        all.Add(sample);
    }
}
