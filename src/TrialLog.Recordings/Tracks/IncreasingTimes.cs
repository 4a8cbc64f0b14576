using TrialLog.Recordings.Formats;

namespace TrialLog.Recordings.Tracks;

/// <summary>
/// The longest run of samples, in file order, whose times strictly increase: leaving out any fewer would leave a
/// duplicate or a backward time. One wild time far in the future costs one sample, not all that follow.
/// Patience sorting, O(n log n).
/// </summary>
internal static class IncreasingTimes
{
    /// <summary>The samples kept, and how many were duplicates of a kept time and how many ran backward.</summary>
    public static (List<RecordedSample> Kept, int Duplicates, int Backward) Of(IReadOnlyList<RecordedSample> samples)
    {
        var last = new int[samples.Count];
        var before = new int[samples.Count];
        int length = 0;
        for (int i = 0; i < samples.Count; i++)
        {
            int low = 0, high = length;
            while (low < high)
            {
                int middle = (low + high) / 2;
                if (samples[last[middle]].Time < samples[i].Time)
                    low = middle + 1;
                else
                    high = middle;
            }

            // Of samples with the same time the first stays.
            if (low < length && samples[last[low]].Time == samples[i].Time)
            {
                before[i] = -2;
                continue;
            }

            before[i] = low > 0 ? last[low - 1] : -1;
            last[low] = i;
            length = Math.Max(length, low + 1);
        }

        var kept = new List<RecordedSample>(length);
        for (int i = length > 0 ? last[length - 1] : -1; i >= 0; i = before[i])
            kept.Add(samples[i]);
        kept.Reverse();
        int duplicates = before.Count(b => b == -2);
        return (kept, duplicates, samples.Count - length - duplicates);
    }
}
