using TrialLog.Application.Text;
using TrialLog.Domain.Values;
using TrialLog.Screens.Forms;

namespace TrialLog.Commands;

/// <summary>
/// A piece typed in one word of a command line: <c>49.75in,1km,5:32,6</c> (length, distance, time, effort),
/// <c>49.75in,1km,5:32</c>, or by the card <c>5:32,6</c> or <c>5:32</c>. The time is read once the distance is known.
/// </summary>
internal sealed record PieceText(Length? Length, Distance? Distance, string Time, Effort? Effort)
{
    public const string Form = "LENGTH,DISTANCE,TIME,EFFORT as in \"49.75in,1km,5:32,6\", or by the card TIME,EFFORT as in \"5:32,6\"";

    public static PieceText Parse(string text, LengthUnit bare)
    {
        string[] parts = text.Split(',', StringSplitOptions.TrimEntries);
        return parts.Length switch
        {
            1 => PieceTime.TryParse(parts[0], out _, out string? problem) ? new(null, null, parts[0], null)
                : throw new InvalidValueException($"{problem} A piece is {Form}."),
            2 => new(null, null, parts[0], TextForms.Effort.Read(parts[1])),
            3 or 4 => new(
                TextForms.Length(bare).Read(parts[0]), TextForms.Distance.Read(parts[1]), parts[2],
                parts.Length == 4 ? TextForms.Effort.Read(parts[3]) : null),
            _ => throw new InvalidValueException($"“{Quoted.Brief(text)}” is not a piece; write {Form}."),
        };
    }
}
