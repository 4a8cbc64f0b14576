namespace TrialLog.Logbook;

/// <summary>Why a merge has to ask.</summary>
public enum MergeQuestion
{
    /// <summary>The record was edited differently on both sides.</summary>
    EditedOnBoth,

    /// <summary>The record is in the file and was removed here. Taking theirs brings it back, with what hangs on it.</summary>
    RemovedHere,

    /// <summary>The pieces of an outing stand in different orders.</summary>
    PieceOrder,
}

/// <summary>Which version to keep.</summary>
public enum MergeChoice
{
    /// <summary>What is in the logbook stays.</summary>
    Mine,

    /// <summary>The version in the file replaces it.</summary>
    Theirs,
}

/// <summary>Something that a merge does not decide by itself.</summary>
/// <param name="Id">The record's id.</param>
/// <param name="Question">Why it has to be asked.</param>
/// <param name="What">Which record, for a person: <c>piece 3 of Ilse Maro's outing of 2026-05-02</c>.</param>
/// <param name="Mine">What the logbook has, as far as it differs.</param>
/// <param name="Theirs">What the file has, as far as it differs.</param>
public sealed record MergeConflict(Guid Id, MergeQuestion Question, string What, string Mine, string Theirs);
