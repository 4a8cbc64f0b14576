using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Recordings.Pieces;

/// <summary>From the pieces that count to the log.</summary>
public sealed partial record RecordedOuting
{
    /// <summary>
    /// What to ask before lengths can be given to pieces in order: a sentence where their numbers differ, null where they
    /// agree. Which piece is missing or too many is never guessed.
    /// </summary>
    public string? QuestionFor(int lengths)
    {
        int found = Proposals.Count(p => p.Kept);
        if (found == lengths)
            return null;
        string says = $"The card has {Counted(lengths)}, the recording shows {found}";
        return found > lengths
            ? $"{says}: drop or merge those that are none of the card's, or say the length of each."
            : $"{says}: add, keep or split the missing ones, or say the length of each that was paddled.";
    }

    /// <summary>The pieces that count, each with its length, in order; or the question that must be answered first.</summary>
    /// <exception cref="InvalidValueException">A piece has a speed that cannot be believed.</exception>
    public MatchedPieces ToPieces(PieceAnswers answers)
    {
        if (QuestionFor(answers.Lengths.Count) is string question)
            return new MatchedPieces { Question = question };
        IReadOnlyList<PieceProposal> kept = Kept;
        foreach (PieceProposal proposal in kept)
        {
            if (Piece.ProblemWithSpeed(proposal.Distance, proposal.Time) is string problem)
                throw new InvalidValueException(problem);
        }

        return new MatchedPieces { Pieces = [.. kept.Select((p, i) => ToPiece(p, i, answers))] };
    }

    private Piece ToPiece(PieceProposal proposal, int index, PieceAnswers answers) => new()
    {
        Id = Guid.NewGuid(),
        Order = index + 1,
        PaddleId = answers.PaddleId,
        Length = answers.Lengths[index],
        Distance = proposal.Distance,
        Time = proposal.Time,
        Effort = answers.Effort,
        Soreness = answers.Soreness,
        HeartRate = proposal.HeartRate,
        StrokeRate = proposal.StrokeRate,
        Course = proposal.Course,
        FadePercent = proposal.FadePercent,
        Notes = proposal.CurrentMetresPerSecond is double current ? $"Current along the course {Math.Abs(current):0.00} m/s." : null,
        Origin = $"{Hash}#{index + 1}",
    };

    private static string Counted(int pieces) => pieces == 1 ? "1 piece" : $"{pieces} pieces";
}
