using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Classical;

/// <summary>A piece that counts, with its outing and its length carried over to the blade asked for.</summary>
/// <param name="Outing">The outing.</param>
/// <param name="Piece">The piece.</param>
/// <param name="LengthInches">Overall length had the blade been the one asked for, by the exposed-shaft rule, inches.</param>
internal sealed record CountedPiece(Outing Outing, Piece Piece, double LengthInches)
{
    /// <summary>100·ln(speed in m/s): differences read as percent of speed.</summary>
    public double LogSpeedPercent => 100 * Math.Log(Piece.MetresPerSecond);

    /// <summary>The pieces that count in the hull asked for, by date, time, label and order. Steering blades do not count.</summary>
    public static IReadOnlyList<CountedPiece> InHull(AnalysisInput question)
    {
        Dictionary<Guid, Paddle> paddles = question.Paddles.Append(question.Paddle).DistinctBy(paddle => paddle.Id)
            .ToDictionary(paddle => paddle.Id);
        return
        [
            .. from outing in question.Outings
               where outing.HullId == question.Hull.Id
               orderby outing.Date, outing.Time, outing.Label, outing.Id
               from piece in outing.Pieces.OrderBy(piece => piece.Order).ThenBy(piece => piece.Id)
               where piece.ExcludedBecause is null && paddles.TryGetValue(piece.PaddleId, out Paddle? paddle) && !paddle.Steering
               select new CountedPiece(
                   outing, piece, piece.Length.Inches - paddles[piece.PaddleId].Blade.InchesMoreThan(question.Paddle.Blade)),
        ];
    }
}
