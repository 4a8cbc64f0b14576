using TrialLog.Domain.Values;
using TrialLog.Screens.Forms;

namespace TrialLog.Commands;

/// <summary>
/// A piece typed in one word of a command line: <c>49.75in,1km,5:32,6</c> (length, distance, time, effort),
/// <c>49.75in,1km,5:32</c>, or by the card <c>5:32,6</c> or <c>5:32</c>.
/// </summary>
internal sealed record PieceText(Length? Length, Distance? Distance, PieceTime Time, Effort? Effort)
{
    public const string Form = "LENGTH,DISTANCE,TIME,EFFORT as in \"49.75in,1km,5:32,6\", or by the card TIME,EFFORT as in \"5:32,6\"";

    public static PieceText Parse(string text, LengthUnit bare)
    {
        string[] parts = text.Split(',', StringSplitOptions.TrimEntries);
        return parts.Length switch
        {
            1 => new(null, null, PieceTime.TryParseByHand(parts[0], out PieceTime time, out string? problem) ? time : throw new InvalidValueException($"{problem} A piece is {Form}."), null),
            2 => new(null, null, PieceTime.ParseByHand(parts[0]), Domain.Values.Effort.Parse(parts[1])),
            3 or 4 => new(
                Domain.Values.Length.Parse(parts[0], bare), Domain.Values.Distance.Parse(parts[1]), PieceTime.ParseByHand(parts[2]),
                parts.Length == 4 ? Domain.Values.Effort.Parse(parts[3]) : null),
            _ => throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a piece; write {Form}."),
        };
    }
}
