namespace TrialLog.Logbook.Exchange;

/// <summary>Why a merge has to ask.</summary>
public enum MergeQuestionKind
{
    /// <summary>The same fields of the record were edited differently here and in the file.</summary>
    EditedOnBoth,

    /// <summary>
    /// The record was removed here and edited or added to in the file. Taking it from the file brings it back, with what hangs on it.
    /// </summary>
    RemovedHere,

    /// <summary>
    /// The record was removed in the file and edited or added to here. Taking that from the file removes it here, with what hangs on it.
    /// </summary>
    RemovedInFile,

    /// <summary>The pieces of an outing were put in different orders.</summary>
    PieceOrder,

    /// <summary>
    /// A paddler, hull or paddle of the file is named as one here, or nearly so, and may be the same: <see cref="MergeChoice.Same"/> joins
    /// them, any other choice keeps both.
    /// </summary>
    SameName,
}

/// <summary>What to do about a question.</summary>
public enum MergeChoice
{
    /// <summary>What is in the logbook stays.</summary>
    KeepHere,

    /// <summary>What is in the file replaces it.</summary>
    TakeFromFile,

    /// <summary>To be asked again the next time: nothing is decided, and what is here stays until then.</summary>
    Later,

    /// <summary>Two names are one person, hull or paddle.</summary>
    Same,
}

/// <summary>Something that a merge does not decide by itself. Ids tell questions apart: no two of one plan have the same.</summary>
/// <param name="Id">The record's id.</param>
/// <param name="Kind">Why it has to be asked.</param>
/// <param name="What">Which record, for a person: <c>piece 3 of Ilse Maro's outing of 2026-05-02</c>.</param>
/// <param name="Here">What the logbook has, as far as it differs.</param>
/// <param name="InFile">What the file has, as far as it differs.</param>
public sealed record MergeQuestion(Guid Id, MergeQuestionKind Kind, string What, string Here, string InFile);
