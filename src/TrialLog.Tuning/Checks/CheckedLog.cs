using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Checks;

/// <summary>A log as the checks look at it: the pieces that count, on one scale of length.</summary>
internal sealed class CheckedLog
{
    /// <summary>Lays out the log.</summary>
    public CheckedLog(AnalysisInput question,
        IReadOnlyList<AdjustedPiece> adjusted, double bestInches, Func<Guid, double?>? bestWithoutInches)
    {
        (Question, Adjusted, BestInches, BestWithoutInches) = (question, adjusted, bestInches, bestWithoutInches);
        Dictionary<Guid, Hull> hulls = question.Hulls.Append(question.Hull).DistinctBy(hull => hull.Id).ToDictionary(hull => hull.Id);
        Dictionary<Guid, Paddle> paddles = question.Paddles.Append(question.Paddle).DistinctBy(paddle => paddle.Id)
            .ToDictionary(paddle => paddle.Id);
        var alignment = new Alignment(StartLength.Of(question.Paddler).Length, hulls.Values);
        Counted =
        [
            .. from outing in question.Outings
               where hulls.ContainsKey(outing.HullId)
               orderby outing.Date, outing.Time, outing.Label, outing.Id
               from piece in outing.Pieces.OrderBy(piece => piece.Order).ThenBy(piece => piece.Id)
               where piece.ExcludedBecause is null && paddles.TryGetValue(piece.PaddleId, out Paddle? paddle) && !paddle.Steering
               let aligned = alignment.Align(piece.Length, hulls[outing.HullId], paddles[piece.PaddleId].Blade)
               select new CheckedPiece(outing, piece, aligned, alignment.LengthInches(aligned, question.Hull, question.Paddle.Blade)),
        ];
        InHull = [.. Counted.Where(piece => piece.Outing.HullId == question.Hull.Id)];
    }

    /// <summary>What was asked.</summary>
    public AnalysisInput Question { get; }

    /// <summary>The pieces of the hull asked for, as the response curve shows them.</summary>
    public IReadOnlyList<AdjustedPiece> Adjusted { get; }

    /// <summary>The best length, not rounded, inches.</summary>
    public double BestInches { get; }

    /// <summary>The best length without one piece.</summary>
    public Func<Guid, double?>? BestWithoutInches { get; }

    /// <summary>How heart rate went with length where the lengths were known; null where nothing tells.</summary>
    public HeartRateSlope? HeartRate { get; init; }

    /// <summary>The pieces that count in any hull, by outing and order.</summary>
    public IReadOnlyList<CheckedPiece> Counted { get; }

    /// <summary>Those in the hull asked for.</summary>
    public IReadOnlyList<CheckedPiece> InHull { get; }
}

/// <summary>A piece that counts.</summary>
/// <param name="Outing">Its outing.</param>
/// <param name="Piece">The piece.</param>
/// <param name="Aligned">Its aligned length, inches.</param>
/// <param name="LengthInches">Its length carried over to the hull and blade asked for, inches.</param>
internal sealed record CheckedPiece(Outing Outing, Piece Piece, double Aligned, double LengthInches);
