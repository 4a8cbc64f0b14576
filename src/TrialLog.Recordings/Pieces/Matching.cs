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

    private static string Counted(int pieces) => pieces == 1 ? "1 piece" : $"{pieces} pieces";
}
