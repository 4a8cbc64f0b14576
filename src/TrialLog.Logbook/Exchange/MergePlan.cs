using TrialLog.Domain.Values;
using TrialLog.Logbook.Shared;

namespace TrialLog.Logbook.Exchange;

/// <summary>What merging a shared record into a logbook would do. Nothing is done until <see cref="Apply"/>.</summary>
public sealed class MergePlan
{
    private readonly RecordSet _here;
    private readonly SharedContents _file;
    private readonly IReadOnlyDictionary<Guid, SharedItem> _standby;
    private readonly IReadOnlyDictionary<Guid, Guid> _joined;

    internal MergePlan(RecordSet here, SharedContents file, IReadOnlyDictionary<Guid, SharedItem> standby,
        IReadOnlyDictionary<Guid, Guid> joined, IReadOnlyList<MergeStep> steps, IReadOnlyList<string> remarks, int same)
    {
        (_here, _file, _standby, _joined, Steps, Same) = (here, file, standby, joined, steps, same);
        Remarks = [.. remarks, .. new NamesApart(here, [.. steps.SelectMany(step => step.Always)]).Remarks];
    }

    internal IReadOnlyList<MergeStep> Steps { get; }

    /// <summary>How many records are new here, by kind: <c>outing</c>, <c>piece</c>, <c>paddler</c> and so on.</summary>
    public IReadOnlyDictionary<string, int> Added => Count(MergeStepKind.Add);

    /// <summary>How many records have fields that are newer in the file, by kind.</summary>
    public IReadOnlyDictionary<string, int> Updated => Count(MergeStepKind.Update);

    /// <summary>How many records were removed in the file and are removed here, by kind; what hangs on them is not counted.</summary>
    public IReadOnlyDictionary<string, int> Removed => Count(MergeStepKind.Remove);

    /// <summary>How many records need nothing: they are the same on both sides, or newer here.</summary>
    public int Same { get; }

    /// <summary>What the user has to decide.</summary>
    public IReadOnlyList<MergeQuestion> Questions => [.. Steps.Select(step => step.Question).OfType<MergeQuestion>()];

    /// <summary>What else the user should know, a sentence each: what is removed, names kept apart.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>Whether no record is changed and nothing is to decide.</summary>
    public bool ChangesNothing => Steps.All(step => step.Kind == MergeStepKind.Learn);

    /// <summary>Merges, in one change that can be taken back; records that are joined by name are joined in a change of its own.</summary>
    /// <param name="logbook">The logbook that the plan was made for.</param>
    /// <param name="choose">Decides each question.</param>
    /// <exception cref="LogbookException">The logbook has changed since the plan was made, or cannot be written; nothing was
    /// merged.</exception>
    public void Apply(LogbookFile logbook, Func<MergeQuestion, MergeChoice> choose)
    {
        Dictionary<MergeQuestion, MergeChoice> choices = Questions.ToDictionary(question => question, choose);
        List<MergeWrite> writes = [.. Steps.SelectMany(step => step.Decided(question => choices[question]))];
        if (writes.Count == 0)
            return;
        string whose = string.Join(", ", _file.Paddlers.Select(paddler => paddler.Name).Take(3));
        string what = $"Merged the record of {(whose.Length == 0 ? "nobody" : whose)}{(_file.Paddlers.Count > 3 ? " and others" : "")}";
        logbook.Merge(what, altersRecords: writes.Any(write => write is not (LearnEdits or LearnJoin)), writer =>
        {
            if (logbook.LastChange != _here.LastChange + 1)
                throw new LogbookException("The logbook was changed while the merge was being decided; nothing was merged, merge again.");
            new MergeWriter(_here, _standby, _joined, new NamesApart(_here, writes), writer).Write(writes);
        });
        foreach (
            MergeQuestion same in choices.Where(choice => choice.Value == MergeChoice.Same && choice.Key.Kind == MergeQuestionKind.SameName)
            .Select(choice => choice.Key))
            JoinSame(logbook, Steps.First(step => step.Question == same));
    }

    private static void JoinSame(LogbookFile logbook, MergeStep step)
    {
        NamedItem item = step.Always.OfType<PutRecord>().Select(put => (NamedItem)put.Item).First();
        Guid into = step.MayBe!.Value;
        logbook.Change($"Joined the {item.Kind()} “{item.Name}” of the file into the one here", writer =>
        {
            if (item is SharedPaddler)
                writer.JoinPaddlers(item.Id, into);
            else if (item is SharedHull)
                writer.JoinHulls(item.Id, into);
            else
                writer.JoinPaddles(item.Id, into);
        });
    }

    private Dictionary<string, int> Count(MergeStepKind kind) => Steps
        .Where(step => step.Kind == kind)
        .GroupBy(step => step.ItemKind)
        .ToDictionary(group => group.Key, group => group.Count());
}
