using TrialLog.Domain.Values;

namespace TrialLog.Tuning.Model;

/// <summary>A piece on the response curve.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="OutingId">Of which outing.</param>
/// <param name="Length">Its length carried over to this hull and paddle.</param>
/// <param name="Percent">Its speed less everything the model explains but length, on the curve's scale.</param>
/// <param name="Weight">0 to 1: how much the heavy tails let it count; 1 is fully.</param>
public sealed record AdjustedPiece(Guid PieceId, Guid OutingId, Length Length, double Percent, double Weight);
