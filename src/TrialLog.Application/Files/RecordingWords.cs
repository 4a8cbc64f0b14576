using System.Globalization;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;

namespace TrialLog.Application.Files;

/// <summary>The words for what a recording shows.</summary>
internal static class RecordingWords
{
    private static readonly (PieceShape Shape, string Word)[] Shapes =
    [
        (PieceShape.RoundTrips, "out-and-back"),
        (PieceShape.OneWay, "one-way"),
        (PieceShape.EasyWayBack, "easy-way-back"),
        (PieceShape.Intervals, "watch"),
    ];

    /// <summary>Whose the times are.</summary>
    public const string WhoseTime = "Times are the watch's: getting going and easing off are left out of every piece alike, which a " +
        "stopwatch does not.";

    /// <summary>The words that <see cref="Shape"/> reads, apart by bars.</summary>
    public static string AllShapes => string.Join("|", Shapes.Select(s => s.Word));

    /// <summary>The word for a way to read the stretches as pieces.</summary>
    public static string Of(PieceShape shape) => Shapes.First(s => s.Shape == shape).Word;

    /// <summary>A local day and time when a recording began.</summary>
    /// <exception cref="InvalidValueException">It is none.</exception>
    public static DateTime Start(string text) =>
        DateTime.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime local) ? local
        : throw new InvalidValueException($"“{Quoted.Brief(text)}” is no time such as 2026-05-09 10:00.");

    /// <summary>The way to read the stretches that a word means.</summary>
    /// <exception cref="InvalidValueException">It is no such word.</exception>
    public static PieceShape Shape(string word) =>
        Shapes.Where(s => s.Word.Equals(word.Trim(), StringComparison.OrdinalIgnoreCase)).Select(s => (PieceShape?)s.Shape).FirstOrDefault()
        ?? throw new InvalidValueException($"“{Quoted.Brief(word)}” is none of: {string.Join(", ", Shapes.Select(s => s.Word))}.");
}
