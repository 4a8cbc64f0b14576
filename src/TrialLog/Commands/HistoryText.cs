using TrialLog.Application.Logging;
using TrialLog.Application.Text;
using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Plots;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Coach;
using TrialLog.Screens.Base;

namespace TrialLog.Commands;

/// <summary>An outing and its pieces as text.</summary>
internal static class HistoryText
{
    public static void Write(TextWriter to, Outing outing, Hull hull, IReadOnlyDictionary<Guid, Paddle> paddles, LengthUnit unit,
        int width = 80)
    {
        string paddle = string.Join(", ", outing.Pieces.Select(piece => piece.PaddleId).Distinct().Select(id => paddles[id].Name));
        to.WriteLine($"{Quoted.Visible(FindOuting.NameOf(outing))}  {Quoted.Visible(hull.Name)}  {Quoted.Visible(paddle)}"
            + (outing.Place is { } place ? $"  {Quoted.Visible(place)}" : "") + (outing.Wind is { } wind ? $"  wind {wind}" : ""));
        if (outing.Notes is { Length: > 0 } notes)
            Wrapped.Write(to, Quoted.Visible(notes), width, "    ", 4);
        foreach (Piece piece in outing.Pieces)
        {
            to.WriteLine($"  {piece.Order,2}.  {Say.Length(piece.Length, unit),-10}  {Say.Distance(piece.Distance),-8}  " +
                $"{Say.Time(piece.Time),-8}  {Say.Pace(piece),-9}"
                + (piece.Effort is { } effort ? $"  effort {effort}" : "")
                    + (piece.Soreness is { Halves: > 0 } sore ? $"  soreness {sore}" : "")
                + (Say.TimedBy(piece, outing) is { } clock ? $"  {clock}" : "")
                + (piece.Course == Course.RoundTrip ? "" : $"  {TextForms.Course.Write(piece.Course)}")
                + (piece.ExcludedBecause is { } reason ? $"  left out: {Quoted.Visible(reason)}" : ""));
            if (piece.Notes is { Length: > 0 } pieceNotes)
                Wrapped.Write(to, Quoted.Visible(pieceNotes), width, "        ", 8);
        }
    }
}
