using TrialLog.Domain.Log;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Checks;

/// <summary>Pieces so far from the rest that the heavy tails let them count for little.</summary>
internal sealed class PiecesDiscounted : ILogCheck
{
    /// <summary>
    /// A weight of ¼ belongs to a piece about 3½ noise scales off (4 degrees of freedom: w = 1/(1 + r²/4)), which one
    /// good piece in forty is.
    /// </summary>
    private const double Little = 0.25;

    public HealthCheck? Look(CheckedLog log)
    {
        Dictionary<Guid, CheckedPiece> byId = log.InHull.DistinctBy(piece => piece.Piece.Id).ToDictionary(piece => piece.Piece.Id);
        List<AdjustedPiece> far = [
            .. log.Adjusted.Where(piece => piece.Weight < Little && byId.ContainsKey(piece.PieceId)).OrderBy(piece => piece.Weight)];
        if (far.Count == 0)
            return null;
        CheckedPiece farthest = byId[far[0].PieceId];
        return new("pieces-discounted")
        {
            Count = far.Count, Of = log.Adjusted.Count,
            Piece = (farthest.Outing.Date, farthest.Piece.Order)
        };
    }
}
