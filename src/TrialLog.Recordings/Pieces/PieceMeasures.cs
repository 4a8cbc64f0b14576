using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Recordings.Pieces;

/// <summary>Measures a piece whose legs are known.</summary>
internal static class PieceMeasures
{
    private const double LoopShare = 0.3;
    private const double DeviceDisagrees = 0.03;
    private const double LongestSilentBridge = 10;

    /// <summary>The piece over these legs, which are in order, do not overlap and last some seconds each.</summary>
    /// <exception cref="InvalidValueException">Its distance, time or speed is beyond what a piece can have.</exception>
    public static PieceProposal Measure(Track track, IReadOnlyList<Stretch> stretches, string? leftOutBecause = null)
    {
        Heading outward = track.Between(stretches[0].First, stretches[0].Last);
        Leg[] legs = [.. stretches.Select(s => MeasureLeg(track, s, outward))];
        double? there = MeanSpeed(legs.Where(l => !l.Returns)), home = MeanSpeed(legs.Where(l => l.Returns));
        bool roundTrip = there is not null && home is not null;
        double speed = roundTrip ? (there!.Value + home!.Value) / 2 : MeanSpeed(legs)!.Value;
        Distance distance = Distance.FromMetres(legs.Sum(l => l.Metres));
        if (speed <= 0)
            throw new InvalidValueException("Nothing moves there; choose a stretch that was paddled.");
        PieceTime time = PieceTime.FromSeconds(distance.Metres / speed);
        return new PieceProposal
        {
            Legs = legs,
            Course = roundTrip ? Course.RoundTrip : CourseOf(track, stretches),
            Distance = distance,
            Time = time,
            MetresPerSecond = speed,
            SpeedErrorPercent = SpeedError.Percent(track, [.. stretches.Zip(legs, (s, l) => (s, l.Returns))], speed),
            CurrentMetresPerSecond = roundTrip ? (there!.Value - home!.Value) / 2 : null,
            HeartRate = HeartRateOf(track, stretches),
            StrokeRate = StrokeRateOf(track, stretches),
            FadePercent = Fade(track, stretches),
            QuarterPercent = Quarters(track, stretches),
            LeftOutBecause = leftOutBecause,
            Remarks = [.. Remarks(track, stretches, legs)],
        };
    }

    /// <summary>Mean speed over ground of the steady parts, legs out and back alike in weight; m/s.</summary>
    public static double MeanOverGround(Track track, IReadOnlyList<Stretch> stretches)
    {
        Heading outward = track.Between(stretches[0].First, stretches[0].Last);
        Leg[] legs = [.. stretches.Select(s => MeasureLeg(track, s, outward))];
        double? there = MeanSpeed(legs.Where(l => !l.Returns)), home = MeanSpeed(legs.Where(l => l.Returns));
        return there is { } a && home is { } b ? (a + b) / 2 : MeanSpeed(legs)!.Value;
    }

    private static Leg MeasureLeg(Track track, Stretch stretch, Heading outward) => new()
    {
        Start = TimeSpan.FromSeconds(track.Seconds[stretch.First]),
        End = TimeSpan.FromSeconds(track.Seconds[stretch.Last]),
        Metres = track.Along[stretch.Last] - track.Along[stretch.First],
        MetresPerSecond = Steadiness.MeanSpeed(track, Steadiness.SteadyPart(track, stretch)),
        Returns = track.Between(stretch.First, stretch.Last).Cosine(outward) < 0,
    };

    // Weighted by time, as distance over time would be.
    private static double? MeanSpeed(IEnumerable<Leg> legs)
    {
        double metres = 0, seconds = 0;
        foreach (Leg leg in legs)
            (metres, seconds) = (metres + leg.MetresPerSecond * leg.Duration.TotalSeconds, seconds + leg.Duration.TotalSeconds);
        return seconds > 0 ? metres / seconds : null;
    }

    private static Course CourseOf(Track track, IReadOnlyList<Stretch> legs)
    {
        double paddled = legs.Sum(l => track.Along[l.Last] - track.Along[l.First]);
        if (track.Between(legs[0].First, legs[^1].Last).Length < LoopShare * paddled)
            return Course.Loop;
        // Which way is out is told by all pieces together.
        return Course.Out;
    }

    private static HeartRate? HeartRateOf(Track track, IReadOnlyList<Stretch> legs)
    {
        int from = legs[0].First + (legs[^1].Last - legs[0].First) / 3;
        double? mean = Mean(track.HeartRate, [new Stretch(from, legs[^1].Last)], _ => true);
        return mean is >= 25 and <= 250 ? HeartRate.FromBeatsPerMinute((int)Math.Round(mean.Value)) : null;
    }

    // A stroke rate of nothing is a pause of the sensor or the paddler, not a slow stroke.
    private static StrokeRate? StrokeRateOf(Track track, IReadOnlyList<Stretch> legs) =>
        Mean(track.StrokeRate, legs, s => s > 0) is double mean and >= 5 and <= 150 ? StrokeRate.FromStrokesPerMinute(mean) : null;

    private static double? Mean(float[] values, IReadOnlyList<Stretch> stretches, Func<float, bool> counts)
    {
        double sum = 0;
        int count = 0, all = 0;
        foreach (Stretch stretch in stretches)
        {
            for (int i = stretch.First; i <= stretch.Last; i++, all++)
            {
                if (!float.IsNaN(values[i]) && counts(values[i]))
                    (sum, count) = (sum + values[i], count + 1);
            }
        }

        return count * 2 >= all && count > 0 ? sum / count : null;
    }

    /// <summary>
    /// Within each leg, so that a current that helps one way and hinders the other does not pass for fade; then stretched
    /// from the leg to the whole piece, whose halves lie further apart than a leg's.
    /// </summary>
    private static double? Fade(Track track, IReadOnlyList<Stretch> legs)
    {
        double change = 0, seconds = 0;
        foreach (Stretch leg in legs)
        {
            Stretch steady = Steadiness.SteadyPart(track, leg);
            if (steady.Seconds < 4)
                return null;
            int middle = (steady.First + steady.Last) / 2;
            double first = Steadiness.MeanSpeed(track, new Stretch(steady.First, middle));
            double second = Steadiness.MeanSpeed(track, new Stretch(middle, steady.Last));
            double perSecond = (second - first) / (steady.Seconds / 2.0) / Steadiness.MeanSpeed(track, steady);
            change += perSecond * steady.Seconds;
            seconds += steady.Seconds;
        }

        return Math.Round(100 * change / seconds * (legs.Sum(l => l.Seconds) / 2.0), 2);
    }

    // Within each leg, so that the current plays no part: the quarters of the legs that lie in each quarter of the piece's paddling.
    private static double[] Quarters(Track track, IReadOnlyList<Stretch> legs)
    {
        var relative = new double[4];
        double total = legs.Sum(l => (double)l.Seconds), done = 0;
        var seconds = new double[4];
        foreach (Stretch leg in legs)
        {
            Stretch steady = Steadiness.SteadyPart(track, leg);
            if (steady.Seconds < 20)
                return [];
            double mean = Steadiness.MeanSpeed(track, steady);
            for (int i = steady.First; i < steady.Last; i++)
            {
                int quarter = Math.Min(3, (int)(4 * (done + i - leg.First) / total));
                relative[quarter] += (track.Along[i + 1] - track.Along[i]) / mean;
                seconds[quarter]++;
            }

            done += leg.Seconds;
        }

        return seconds.Any(s => s == 0) ? [] : [.. relative.Zip(seconds, (r, s) => Math.Round(100 * (r / s - 1), 2))];
    }

    private static IEnumerable<string> Remarks(Track track, IReadOnlyList<Stretch> stretches, Leg[] legs)
    {
        if (Mean(track.DeviceSpeed, stretches, s => s > 0) is double device)
        {
            double own = stretches.Sum(s => track.Along[s.Last] - track.Along[s.First]) / stretches.Sum(s => s.Seconds);
            if (Math.Abs(device / own - 1) > DeviceDisagrees)
                yield return $"The watch's own speed is {100 * (device / own - 1):+0.0;-0.0} % from that of its positions.";
        }

        double bridged = track.Gaps.Sum(
            gap => legs.Sum(l => Math.Max(0, Math.Min(gap.End, l.End.TotalSeconds) - Math.Max(gap.Start, l.Start.TotalSeconds))));
        if (bridged > LongestSilentBridge)
            yield return $"The watch lost its position for {bridged:0} s of it; the straight way was taken.";

        if (legs.Any(l => l.MetresPerSecond > Piece.FastestMetresPerSecond))
            yield return "Faster than any paddled piece; check its edges.";
    }
}
