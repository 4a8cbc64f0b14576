using System.Globalization;
using TrialLog.Application.Wording;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;

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
    /// <param name="lengths">Of the pieces that count, in order, as far as they are known.</param>
    /// <param name="unit">The unit of lengths.</param>
    public static IEnumerable<string> Lines(RecordedOuting recording, IReadOnlyList<Length> lengths, LengthUnit unit)
    {
        if (Current(recording.Currents) is { } current)
            yield return current;
        PieceProposal[] told = [.. recording.Kept.Where(piece => piece.QuarterPercent.Count == 4)];
        if (told.Length > 0)
            yield return $"Speed by quarters, against the mean: " +
                $"{string.Join(", ", Enumerable.Range(0, 4).Select(q => Percent(told.Average(piece => piece.QuarterPercent[q]))))}.";
        if (lengths.Count == recording.Kept.Count)
        {
            foreach (string line in ByLength(recording.Kept, lengths, unit))
                yield return line;
        }
    }

    private static string? Current(IReadOnlyList<double> currents)
    {
        if (currents.Count == 0)
            return null;
        string says = Numbers($"Current along the course {Math.Abs(currents.Average()):0.00} m/s on average.");
        return currents.Max() > Turned && currents.Min() < -Turned
            ? says
                + Numbers($" The tide turned between the pieces ({currents[0]:+0.0;−0.0} m/s in the first, {currents[^1]:+0.0;−0.0} m/s")
                + " in the last)"
                + ": within a piece that is out and back only a steady current cancels."
            : says;
    }

    private static IEnumerable<string> ByLength(IReadOnlyList<PieceProposal> kept, IReadOnlyList<Length> lengths, LengthUnit unit)
    {
        double mean = kept.Average(piece => piece.MetresPerSecond);
        foreach (IGrouping<Length, PieceProposal> pieces in kept.Zip(lengths).GroupBy(pair => pair.Second, pair => pair.First)
            .OrderBy(group => group.Key))
        {
            string[] facts =
            [
                .. Mean(pieces, piece => piece.StrokeRate?.StrokesPerMinute) is { } rate ? [Numbers($"{rate:0.0} strokes a minute")]
                    : Array.Empty<string>(),
                .. Mean(pieces, piece => piece.MetresPerStroke) is { } way ? [Numbers($"{way:0.00} m a stroke")] : Array.Empty<string>(),
                .. Mean(pieces, piece => AtEqualSpeed(piece, mean)) is { } beats ? [Numbers($"heart rate {beats:0} at equal speed")]
                    : Array.Empty<string>(),
            ];
            if (facts.Length > 0)
                yield return $"{Say.Length(pieces.Key, unit)}: {string.Join(", ", facts)}.";
        }
    }

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
