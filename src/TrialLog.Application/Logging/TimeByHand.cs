using TrialLog.Application.Workspaces;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Logging;

/// <summary>
/// A piece's time as quick fingers type it. <c>532</c> and <c>5.32</c> are read as 5:32 where only that makes sense over the
/// distance; where both might be meant, it is asked.
/// </summary>
internal static class TimeByHand
{
    /// <summary>Mean speeds of a paddled piece where nothing is known of the paddler, m/s. Chosen wide, no source.</summary>
    private const double SlowestUsual = 1.9, FastestUsual = 6;

    /// <summary>Reads it.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="distance">The distance paddled; null where it is not known.</param>
    /// <param name="usual">How fast the paddler usually is; null where it is not known.</param>
    /// <exception cref="InvalidValueException">It is not a time, or may be two.</exception>
    public static PieceTime Parse(string text, Distance? distance, UsualSpeed? usual)
    {
        if (PieceTime.TryParseByHand(text, out PieceTime time, out string? problem))
            return time;
        string digits = new([.. text.Where(char.IsAsciiDigit)]);
        bool bare = text.Trim().All(glyph => char.IsAsciiDigit(glyph) || glyph is '.' or ',') && digits.Length is 3 or 4;
        if (distance is { } over && bare && PieceTime.TryParse($"{digits[..^2]}:{digits[^2..]}", out PieceTime clock, out _)
            && MakesSense(over, clock) && !(PieceTime.TryParse(text, out PieceTime seconds, out _) && MakesSense(over, seconds)))
            return clock;
        throw new InvalidValueException(problem);

        bool MakesSense(Distance over, PieceTime took) => Piece.ProblemWithSpeed(over, took) is null
            && (usual is { IsKnown: true } ? usual.Doubt(over, took) is null : over.Metres / took.Seconds is > SlowestUsual and < FastestUsual);
    }
}
