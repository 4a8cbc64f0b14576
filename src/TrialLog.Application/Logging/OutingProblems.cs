using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Logging;

/// <summary>What keeps an outing out of the logbook, whether it is new, changed or from a file: one rule for all.</summary>
internal static class OutingProblems
{
    /// <summary>The most pieces that one outing is believed to have.</summary>
    public const int MostPieces = 200;

    /// <summary>Everything that is wrong, each in a sentence that says where; empty if it can be saved.</summary>
    /// <param name="outing">The outing.</param>
    /// <param name="paddles">The paddles of the logbook.</param>
    /// <param name="others">The paddler's other outings.</param>
    /// <param name="today">The day of saving.</param>
    public static IReadOnlyList<string> Of(Outing outing, IReadOnlyList<Paddle> paddles, IEnumerable<Outing> others, DateOnly today)
    {
        var problems = new List<string>();
        if (Plausible.ProblemWithDate(outing.Date, today) is { } wrongDate)
            problems.Add(wrongDate);
        if (outing.Label.Length > 0 && !NameRule.TryCheck(outing.Label, "label", out _, out string? wrongLabel))
            problems.Add(wrongLabel);
        else if (
            others.Any(other => other.Id != outing.Id && other.Date == outing.Date
            && string.Equals(other.Label, outing.Label, StringComparison.OrdinalIgnoreCase)))
            problems.Add($"There is an outing {FindOuting.NameOf(outing)} already; give another date or label, or change that one with: " +
                $"triallog edit {FindOuting.NameOf(outing)}");
        foreach ((string? text, string kind) in new[] { (outing.Place, "place"), (outing.Water, "water"), (outing.Notes, "note") })
        {
            if (!NoteRule.TryCheck(text, kind, out _, out string? problem))
                problems.Add(problem);
        }

        if (outing.Pieces.Count is 0 or > MostPieces)
            problems.Add($"An outing has 1 to {MostPieces} pieces; this one has {outing.Pieces.Count}.");
        foreach (Piece piece in outing.Pieces)
        {
            if (OfPiece(piece, paddles.FirstOrDefault(paddle => paddle.Id == piece.PaddleId)) is { } problem)
                problems.Add($"Piece {piece.Order}: {problem}");
        }

        return problems;
    }

    /// <summary>What is wrong with a piece with that paddle, or null.</summary>
    public static string? OfPiece(Piece piece, Paddle? paddle) =>
        paddle is null ? "Its paddle is no longer in the logbook; choose another."
        : OfLength(paddle, piece.Length) ?? Piece.ProblemWithSpeed(piece.Distance, piece.Time)
        ?? (NoteRule.TryCheck(piece.Notes, "note", out _, out string? problem) ? null : problem);

    /// <summary>What is wrong with a paddle set to that length, or null.</summary>
    public static string? OfLength(Paddle paddle, Length length) =>
        Plausible.ProblemWithPaddleLength(length)
        ?? (paddle.Reaches(length) ? null
            : $"{length} is outside what {Quoted.Visible(paddle.Name)} can be set to ({paddle.Shortest} to {paddle.Longest}); if its " +
                $"range is wrong: triallog paddle set \"{Quoted.Visible(paddle.Name)}\" --range L..L");
}
