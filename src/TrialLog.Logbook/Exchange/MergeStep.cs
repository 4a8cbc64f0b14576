using TrialLog.Domain.Log;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>What a step of a merge does, as it is counted.</summary>
internal enum MergeStepKind
{
    Add,
    Update,
    Remove,
    Ask,

    /// <summary>No record changes; only what is known of edits.</summary>
    Learn,
}

/// <summary>Something to be written.</summary>
internal abstract record MergeWrite(Guid Id);

/// <summary>A record to put as it stands here, in the outing where it is a piece.</summary>
internal sealed record PutRecord(SharedItem Item, Guid? Outing) : MergeWrite(Item.Id);

/// <summary>A record to remove, with all that hangs on it.</summary>
internal sealed record RemoveRecord(Guid Id) : MergeWrite(Id);

/// <summary>The number to give a piece among those of its outing.</summary>
internal sealed record OrderPiece(Guid Id, int Order) : MergeWrite(Id);

/// <summary>Edits that a field is now known to build upon.</summary>
/// <param name="Id">The record.</param>
/// <param name="Field">The field.</param>
/// <param name="Edits">The edits.</param>
/// <param name="Decided">The user decided it: an edit of this merge's own is added, so that it stands above both sides.</param>
internal sealed record LearnEdits(Guid Id, string Field, IReadOnlySet<long> Edits, bool Decided = false) : MergeWrite(Id);

/// <summary>The edits behind a record that was removed here go with what it was: it comes back as it is elsewhere.</summary>
internal sealed record ForgetEdits(Guid Id) : MergeWrite(Id);

/// <summary>A record that is gone became another.</summary>
internal sealed record LearnJoin(Guid Id, Guid Into) : MergeWrite(Id);

/// <summary>One step of a merge: what is written in any case, and what follows from a question.</summary>
internal sealed record MergeStep(MergeStepKind Kind, string ItemKind)
{
    /// <summary>What has to be asked; null where nothing has.</summary>
    public MergeQuestion? Question { get; init; }

    /// <summary>For a question of names: the record here that it may be.</summary>
    public Guid? MayBe { get; init; }

    /// <summary>What is written whatever is chosen.</summary>
    public List<MergeWrite> Always { get; init; } = [];

    /// <summary>What is written where the file's version is taken.</summary>
    public List<MergeWrite> IfTaken { get; init; } = [];

    /// <summary>What is written where the version here is kept.</summary>
    public List<MergeWrite> IfKept { get; init; } = [];

    /// <summary>What is to be written once the choice is made.</summary>
    public IEnumerable<MergeWrite> Decided(Func<MergeQuestion, MergeChoice> choose) => Question is null ? Always : choose(Question) switch
    {
        MergeChoice.TakeFromFile => Always.Concat(IfTaken),
        MergeChoice.KeepHere => Always.Concat(IfKept),
        _ => Always,
    };
}
