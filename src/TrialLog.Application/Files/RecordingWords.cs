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

    /// <summary>The words that <see cref="Shape"/> reads, apart by bars.</summary>
    public static string AllShapes => string.Join("|", Shapes.Select(s => s.Word));

    /// <summary>The word for a way to read the stretches as pieces.</summary>
    public static string Of(PieceShape shape) => Shapes.First(s => s.Shape == shape).Word;

    /// <summary>The way to read the stretches that a word means.</summary>
    /// <exception cref="InvalidValueException">It is no such word.</exception>
    public static PieceShape Shape(string word) =>
        Shapes.Where(s => s.Word.Equals(word.Trim(), StringComparison.OrdinalIgnoreCase)).Select(s => (PieceShape?)s.Shape).FirstOrDefault()
        ?? throw new InvalidValueException($"“{Quoted.Brief(word)}” is none of: {string.Join(", ", Shapes.Select(s => s.Word))}.");
}
