using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Text;

/// <summary>
/// The time of a piece as a hand types it. <c>532</c> and <c>5.32</c> may be 5:32 or so many seconds: where only one of them makes sense
/// over the distance, and beside how fast the paddler usually is, it is that one.
/// </summary>
internal static partial class TimeText
{
    [GeneratedRegex(@"^\s*(?<m>[0-9]{1,2})[.,]?(?<s>[0-5][0-9])\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex WithoutColon();

    /// <summary>Reads it.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="distance">The piece's distance, where it is known.</param>
    /// <param name="isUsual">Whether a time over a distance is what the paddler usually does, where that is known.</param>
    /// <param name="time">The time.</param>
    /// <param name="problem">What is wrong, or which two times it may be.</param>
    public static bool TryRead(string? text, Distance? distance, Func<Distance, PieceTime, bool>? isUsual, out PieceTime time,
        [NotNullWhen(false)] out string? problem)
    {
        if (WithoutColon().Match(text ?? "") is not { Success: true } bare)
            return PieceTime.TryParse(text, out time, out problem);
        string clock = $"{bare.Groups["m"].Value}:{bare.Groups["s"].Value}", seconds = text!.Trim();
        List<PieceTime> readings = [];
        foreach (string reading in new[] { clock, seconds })
            if (PieceTime.TryParse(reading, out PieceTime one, out _))
                readings.Add(one);
        if (distance is { } far)
        {
            List<PieceTime> believed = [.. readings.Where(one => Piece.ProblemWithSpeed(far, one) is null)];
            List<PieceTime> likely = [.. believed.Where(one => isUsual?.Invoke(far, one) != false)];
            readings = likely.Count == 1 ? likely : believed.Count > 0 ? believed : readings;
        }

        if (readings.Count == 1)
        {
            (time, problem) = (readings[0], null);
            return true;
        }

        (time, problem) = (default, $"“{seconds}” may be {clock} or {seconds} seconds; write {clock} or {seconds}s.");
        return false;
    }

    /// <summary>As <see cref="TryRead"/>.</summary>
    /// <exception cref="InvalidValueException">It cannot be read, or as two times.</exception>
    public static PieceTime Read(string? text, Distance? distance, Func<Distance, PieceTime, bool>? isUsual) =>
        TryRead(text, distance, isUsual, out PieceTime time, out string? problem) ? time : throw new InvalidValueException(problem);
}
