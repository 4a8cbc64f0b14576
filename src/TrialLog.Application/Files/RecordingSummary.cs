using System.Globalization;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;
using TrialLog.Recordings.Tracks;

namespace TrialLog.Application.Files;

/// <summary>What else a recording knows, in lines to read: nothing of it changes what is saved.</summary>
internal static class RecordingSummary
{
    // A current that changes its way by more than this to either side is a tide that turned. No source: chosen, some twice its error.
    private const double Turned = 0.1;

    // Heart rate above rest goes about with power, and power with the cube of speed: taken for small differences. No source: chosen.
    private const double AtRest = 60, Cube = 3;

    /// <summary>The lines; empty where it knows nothing more.</summary>
    /// <param name="recording">The outing.</param>
    /// <param name="lengths">Of the pieces that count.</param>
    /// <param name="unit">The unit of lengths.</param>
    public static IEnumerable<string> Lines(RecordedOuting recording, RecordingLengths lengths, LengthUnit unit)
    {
        if (Current(recording.Currents) is { } current)
            yield return current;
        PieceProposal[] told = [.. recording.Kept.Where(piece => piece.QuarterPercent.Count == 4)];
        if (told.Length > 0)
            yield return $"Speed by quarters, against the mean: " +
                $"{string.Join(", ", Enumerable.Range(0, 4).Select(q => Percent(told.Average(piece => piece.QuarterPercent[q]))))}.";
        foreach (LengthFacts facts in ByLength(recording, lengths))
        {
            string[] says =
            [
                .. facts.StrokeRate is { } rate ? [Numbers($"{rate:0.0} strokes a minute")] : Array.Empty<string>(),
                .. facts.MetresPerStroke is { } way ? [Numbers($"{way:0.00} m a stroke")] : Array.Empty<string>(),
                .. facts.HeartRateAtEqualSpeed is { } beats ? [Numbers($"heart rate {beats:0} at equal speed")] : Array.Empty<string>(),
            ];
            if (says.Length > 0)
                yield return $"{lengths.Shown(facts.Length, unit)}: {string.Join(", ", says)}.";
        }
    }

    /// <summary>All that is shown of a recording, in sentences, for those who do not see the picture of it.</summary>
    public static IEnumerable<string> InWords(RecordedOuting recording, RecordingLengths lengths, LengthUnit unit)
    {
        yield return $"Begun {recording.Date:yyyy-MM-dd} {recording.Time:HH:mm}, lasting " +
            $"{Say.Clock(Math.Floor(recording.Duration.TotalSeconds))}. " +
            recording.ClockNote;
        if (!recording.Mended.IsNothing)
            yield return recording.Mended.ToString();
        int next = 0;
        for (int i = 0; i < recording.Proposals.Count; i++)
        {
            PieceProposal piece = recording.Proposals[i];
            string says = $"{i + 1}: from {At(piece.Start)} to {At(piece.End)}, {Say.Distance(piece.Distance)} in " +
                $"{Say.Time(piece.Time)}, " +
                $"{Say.Pace(piece.MetresPerSecond)}, error {Numbers($"{piece.SpeedErrorPercent:0.0}")}%, " +
                    $"{TextForms.Course.Write(piece.Course)}";
            yield return piece.Kept ? $"{says}, {lengths.Of(next++, unit) ?? "length not known"}."
                : $"{says}; left out: {piece.LeftOutBecause}.";
            foreach (string remark in piece.Remarks)
                yield return remark;
        }

        if (recording.Presses.Count > 0)
            yield return $"The lap button was pressed at {string.Join(", ", recording.Presses.Select(At))}.";
        yield return RecordingWords.WhoseTime;
        foreach (string line in Lines(recording, lengths, unit))
            yield return line;
        foreach (RecordingQuestion question in recording.Questions)
            yield return question.Says;
    }

    private static string At(TimeSpan since) => Say.Clock(Math.Floor(since.TotalSeconds));

    /// <summary>Whether the current changed its way between the pieces, by more than its error.</summary>
    public static bool TideTurned(IReadOnlyList<double> currents) =>
        currents.Count > 0 && currents.Max() > Turned && currents.Min() < -Turned;

    /// <summary>What the recording knows of each length; empty where lengths are missing.</summary>
    public static IEnumerable<LengthFacts> ByLength(RecordedOuting recording, RecordingLengths lengths)
    {
        IReadOnlyList<PieceProposal> kept = recording.Kept;
        if (lengths.All.Count != kept.Count || kept.Count == 0)
            return [];
        double mean = kept.Average(piece => piece.MetresPerSecond);
        return kept.Zip(lengths.All).GroupBy(pair => pair.Second, pair => pair.First)
            // In the order of their letters where the card is blind: the order of lengths would give them away.
            .OrderBy(group => lengths.Blind ? default : group.Key)
            .Select(pieces => new LengthFacts(
                pieces.Key, Mean(pieces, piece => piece.StrokeRate?.StrokesPerMinute), Mean(pieces, piece => piece.MetresPerStroke),
                Mean(pieces, piece => AtEqualSpeed(piece, mean))));
    }

    private static string? Current(IReadOnlyList<double> currents)
    {
        if (currents.Count == 0)
            return null;
        string says = Numbers($"Current along the course {Math.Abs(currents.Average()):0.00} m/s on average.");
        return TideWarning(currents) is { } warning ? $"{says} {warning}" : says;
    }

    /// <summary>What is said where the tide turned; null where it did not.</summary>
    public static string? TideWarning(IReadOnlyList<double> currents) => !TideTurned(currents) ? null
        : Numbers($"The tide turned between the pieces ({currents[0]:+0.0;−0.0} m/s at first, {currents[^1]:+0.0;−0.0} m/s at last): ")
            + "out and back only a steady current cancels.";

    private static double? AtEqualSpeed(PieceProposal piece, double speed) => piece.HeartRate is { } rate
        ? rate.BeatsPerMinute + Cube * (rate.BeatsPerMinute - AtRest) * (speed / piece.MetresPerSecond - 1)
        : null;

    private static double? Mean(IEnumerable<PieceProposal> pieces, Func<PieceProposal, double?> value)
    {
        double[] all = [.. pieces.Select(value).OfType<double>()];
        return all.Length == 0 ? null : all.Average();
    }

    private static string Percent(double value) => Numbers($"{value:+0.0;−0.0}%");

    private static string Numbers(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>What a recording knows of the pieces of one length: their means.</summary>
/// <param name="Length">The length.</param>
/// <param name="StrokeRate">Strokes a minute; null where none was recorded.</param>
/// <param name="MetresPerStroke">Metres a stroke.</param>
/// <param name="HeartRateAtEqualSpeed">Heart rate, beats a minute, as it would be at the mean speed of all pieces.</param>
internal sealed record LengthFacts(Length Length, double? StrokeRate, double? MetresPerStroke, double? HeartRateAtEqualSpeed);
