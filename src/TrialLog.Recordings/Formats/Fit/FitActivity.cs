using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Formats.Fit;

/// <summary>Gathers samples and laps from FIT messages, and keeps the running clock that compressed timestamps count from.</summary>
internal sealed class FitActivity
{
    private readonly SampleList samples = new();
    private readonly List<LapMark> laps = [];
    private readonly Dictionary<int, RecordedStep> steps = [];
    private readonly List<int> breaks = [];
    private string? sport;
    private TimeSpan? offset;
    private uint? clock;

    /// <summary>A new file begins: its clock does not go on from the one before.</summary>
    public void BeginFile()
    {
        clock = null;
        if (samples.All.Count > 0)
            breaks.Add(samples.All.Count);
    }

    /// <summary>Moves the clock to the next time whose lowest five bits are these.</summary>
    public void AdvanceTo(int lowestFiveBits)
    {
        if (clock is uint last)
            clock = unchecked(last + (((uint)lowestFiveBits - last) & 0x1F));
    }

    /// <summary>Takes what a message says about the outing.</summary>
    public void Take(FitMessage message)
    {
        if (message.Whole(FitProfile.Timestamp) is long told and >= 0 and <= uint.MaxValue)
            clock = (uint)told;
        double now = Seconds(clock);
        switch (message.Number)
        {
            case FitProfile.Record:
                samples.Add(new RecordedSample(
                    now,
                    Degrees(message.Whole(FitProfile.Latitude)),
                    Degrees(message.Whole(FitProfile.Longitude)),
                    message.Whole(FitProfile.HeartRate) ?? float.NaN,
                    Cadence(message),
                    (message.Whole(FitProfile.EnhancedSpeed) ?? message.Whole(FitProfile.Speed)) / 1000f ?? float.NaN));
                break;
            case FitProfile.Lap when laps.Count < Recording.MostSamples:
                double start = Seconds(message.Whole(FitProfile.LapStart));
                double end = message.Whole(FitProfile.LapElapsed) is long elapsed ? start + elapsed / 1000.0 : now;
                laps.Add(
                    new LapMark(start, end, message.Whole(FitProfile.LapTrigger) == FitProfile.Manual,
                    FitProfile.KindOf(message.Whole(FitProfile.LapIntensity)), (int?)message.Whole(FitProfile.LapStep)));
                break;
            case FitProfile.WorkoutStep when message.Whole(FitProfile.MessageIndex) is long index and < 1000:
                steps[(int)index] = new RecordedStep(
                    message.Text(FitProfile.StepName), FitProfile.KindOf(message.Whole(FitProfile.StepIntensity)));
                break;
            case FitProfile.Session:
                sport ??= FitProfile.SportOf(message.Whole(FitProfile.SessionSport));
                break;
            case FitProfile.Sport:
                sport ??= FitProfile.SportOf(message.Whole(FitProfile.SportSport));
                break;
            case FitProfile.Activity when Seconds(message.Whole(FitProfile.LocalTimestamp)) - now is var difference
                && Math.Abs(difference) <= 14 * 3600:
                // Devices set the two clocks a second or so apart; offsets are quarters of an hour.
                offset = TimeSpan.FromMinutes(15 * Math.Round(difference / 900));
                break;
        }
    }

    /// <summary>What was gathered.</summary>
    public Recording ToRecording(bool cutOff) =>
        new() { Samples = samples.All, Breaks = breaks, IsCutOff = cutOff, Laps = laps, Steps = steps, Sport = sport, Offset = offset };

    private static double Seconds(long? time) =>
        time is >= FitProfile.FirstDate and <= uint.MaxValue ? FitProfile.Epoch + (double)time : double.NaN;

    private static double Degrees(long? semicircles) => semicircles * FitProfile.DegreesPerSemicircle ?? double.NaN;

    private static float Cadence(FitMessage message) =>
        message.Whole(FitProfile.Cadence256) / 256f
        ?? message.Whole(FitProfile.Cadence) + (message.Whole(FitProfile.FractionalCadence) ?? 0) / 128f
        ?? float.NaN;
}
