using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Information;
using TrialLog.Tuning.Model;

namespace TrialLog.Tuning.Planning;

/// <summary>
/// A fixed paddle has no lengths to try, so its outing puts it against an adjustable one at the best length: the check of a paddle that was
/// bought.
/// </summary>
internal static class FollowUp
{
    /// <summary>
    /// The lengths of that outing in order, and the paddle for each; both empty where the log has no adjustable paddle of this paddler.
    /// </summary>
    public static (IReadOnlyList<Length> Lengths, IReadOnlyList<Paddle> Paddles) Of(AssessedFit assessed, TrialForm form)
    {
        (AnalysisInput input, Paddle own) = (assessed.Input, assessed.Input.Paddle);
        HashSet<Guid> used = [.. assessed.Fit.Table.Pieces.Select(static piece => piece.PaddleId)];
        Paddle? other = input.Paddles
            .Where(paddle => !paddle.IsFixed && !paddle.Steering && (used.Contains(paddle.Id) || paddle.IsFor(input.Paddler.Id)))
            .OrderByDescending(paddle => assessed.Fit.Table.Pieces.Count(piece => piece.PaddleId == paddle.Id))
                .ThenBy(static paddle => paddle.Id).FirstOrDefault();
        if (other is null || !assessed.Allowed.IsOpen)
            return ([], []);
        double best = assessed.Fit.Alignment.LengthInches(assessed.Align(assessed.Says.Ideal.Length), input.Hull, other.Blade);
        Length setting = AllowedSettings.Of(other, assessed.Soreness.Length).Nearest(best);
        int[] order = CardOrder.OfTwo(form.PiecesAreOpen ? input.Settings.CardPieces : form.Pieces);
        return ([.. order.Select(at => at == 0 ? own.Longest : setting)], [.. order.Select(at => at == 0 ? own : other)]);
    }
}
