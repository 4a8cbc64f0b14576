using TrialLog.Application.Wording;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook.Shared;

namespace TrialLog.Application.Logging;

/// <summary>An outing in a line.</summary>
/// <param name="Lengths">The lengths paddled: <c>49 ¼ to 50 ¾ in</c>.</param>
/// <param name="Pieces">How many pieces.</param>
/// <param name="LeftOut">How many of them do not count.</param>
/// <param name="Pace">The pace of the fastest piece; empty without a piece.</param>
/// <param name="Soreness">The worst soreness; null where none was told.</param>
internal sealed record OutingSummary(string Lengths, int Pieces, int LeftOut, string Pace, Soreness? Soreness)
{
    public static OutingSummary Of(Outing outing, LengthUnit unit)
    {
        if (outing.Pieces.Count == 0)
            return new("", 0, 0, "", null);
        Piece fastest = outing.Pieces.MaxBy(piece => piece.MetresPerSecond)!;
        return new(
            Say.Lengths(outing.Pieces.Min(piece => piece.Length), outing.Pieces.Max(piece => piece.Length), unit),
            outing.Pieces.Count,
            outing.Pieces.Count(piece => piece.ExcludedBecause is not null),
            Say.Pace(fastest),
            outing.Pieces.Where(piece => piece.Soreness is not null).Select(piece => piece.Soreness).MaxBy(sore => sore!.Value.Halves));
    }
}
