using TrialLog.Domain.Values;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook;

/// <summary>What merging a shared record into a logbook would do. Nothing is done until <see cref="Apply"/>.</summary>
public sealed class MergePlan
{
    private readonly MergeSide _mine;
    private readonly SharedContents _theirs;
    private readonly IReadOnlyDictionary<Guid, NamedItem> _standby;
    private readonly long _lastChange;

    internal MergePlan(MergeSide mine, SharedContents theirs, IReadOnlyDictionary<Guid, NamedItem> standby, long lastChange,
        IReadOnlyList<MergeStep> steps, IReadOnlyList<string> remarks, int same)
    {
        _mine = mine;
        _theirs = theirs;
        _standby = standby;
        _lastChange = lastChange;
        Steps = steps;
        Remarks = remarks;
        Same = same;
    }

    internal IReadOnlyList<MergeStep> Steps { get; }

    /// <summary>How many records are new here, by kind: <c>outing</c>, <c>piece</c>, <c>paddler</c> and so on.</summary>
    public IReadOnlyDictionary<string, int> Added => Count(MergeStepKind.Add);

    /// <summary>How many records are replaced by a newer version of the same, or filled in where they were unknown here, by kind.</summary>
    public IReadOnlyDictionary<string, int> Updated => Count(MergeStepKind.Update);

    /// <summary>How many records need nothing: they are the same on both sides, or newer here.</summary>
    public int Same { get; }

    /// <summary>What the user has to decide.</summary>
    public IReadOnlyList<MergeConflict> Conflicts => [.. Steps.Where(step => step.Conflict is not null).Select(step => step.Conflict!)];

    /// <summary>What else the user should know, a sentence each: names kept apart, equipment that stays removed.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>Whether there is nothing to do and nothing to decide.</summary>
    public bool ChangesNothing => Steps.Count == 0;

    /// <summary>Merges, in one change that can be taken back.</summary>
    /// <param name="logbook">The logbook that the plan was made for.</param>
    /// <param name="choose">Decides each conflict.</param>
    /// <exception cref="LogbookException">The logbook has changed since the plan was made, or cannot be written; nothing was merged.</exception>
    public void Apply(LogbookFile logbook, Func<MergeConflict, MergeChoice> choose)
    {
        List<MergeStep> taken = [.. Steps.Select(step => step.Decided(choose)).OfType<MergeStep>()];
        if (taken.Count == 0)
            return;
        string whose = string.Join(", ", _theirs.Paddlers.Select(paddler => paddler.Name).Take(3));
        logbook.Change($"Merged the record of {(whose.Length == 0 ? "nobody" : whose)}{(_theirs.Paddlers.Count > 3 ? " and others" : "")}", writer =>
        {
            if (logbook.LastChange != _lastChange + 1)
                throw new LogbookException("The logbook was changed while the merge was being decided; nothing was merged, merge again.");
            new MergeWriter(_mine, _standby, writer).Write(taken);
        });
    }

    private Dictionary<string, int> Count(MergeStepKind kind) => Steps
        .Where(step => step.Kind == kind)
        .GroupBy(step => step.Item.Kind())
        .ToDictionary(group => group.Key, group => group.Count());
}

/// <summary>What is done with a record from the file.</summary>
internal enum MergeStepKind
{
    Add,
    Update,
    Ask,
}

/// <summary>One record from the file that is to be written, at once or if the user says so.</summary>
/// <param name="Kind">New here, newer than here, or to be decided.</param>
/// <param name="Item">The version to write.</param>
/// <param name="OutingId">For a piece: the outing it belongs to.</param>
/// <param name="Conflict">What to ask first.</param>
/// <param name="Otherwise">The version to write if mine is to stay: what mine did not know, filled in from theirs.</param>
internal sealed record MergeStep(MergeStepKind Kind, SharedItem Item, Guid? OutingId, MergeConflict? Conflict = null, SharedItem? Otherwise = null)
{
    /// <summary>What is to be done once the choice is made; null if nothing.</summary>
    public MergeStep? Decided(Func<MergeConflict, MergeChoice> choose) =>
        Conflict is null || choose(Conflict) == MergeChoice.Theirs ? this
        : Otherwise is not null ? new MergeStep(MergeStepKind.Update, Otherwise, OutingId)
        : null;
}
