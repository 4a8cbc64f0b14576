using TrialLog.Application.Workspaces;
using TrialLog.Logbook;

namespace TrialLog.Commands.Json;

/// <summary>What <c>share --json</c> prints.</summary>
internal sealed record ShareFacts(string File, IReadOnlyList<string> Paddlers, int Outings, int Pieces, IReadOnlyList<string> LeftOut);

/// <summary>What <c>merge --json</c> prints: counts by kind of record, and every conflict with both versions and the choice.</summary>
internal sealed record MergeFacts(
    bool Merged, IReadOnlyDictionary<string, int> Added, IReadOnlyDictionary<string, int> Updated, int Same,
    IReadOnlyList<ConflictFacts> Conflicts, IReadOnlyList<string> Remarks)
{
    public static MergeFacts Of(MergePlan plan, IReadOnlyDictionary<Guid, MergeChoice>? choices) => new(
        choices is not null, plan.Added, plan.Updated, plan.Same,
        [.. plan.Conflicts.Select(conflict => new ConflictFacts(conflict.Id, Question(conflict.Question), conflict.What, conflict.Mine, conflict.Theirs, choices?[conflict.Id].ToString().ToLowerInvariant()))],
        plan.Remarks);

    private static string Question(MergeQuestion question) => question switch
    {
        MergeQuestion.RemovedHere => "removed-here",
        MergeQuestion.PieceOrder => "piece-order",
        _ => "edited-on-both",
    };
}

/// <summary>One conflict; <c>chosen</c> is mine or theirs, null while undecided.</summary>
internal sealed record ConflictFacts(Guid Id, string Question, string What, string Mine, string Theirs, string? Chosen);
