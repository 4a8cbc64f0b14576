using TrialLog.Logbook.Sync;
using TrialLog.Reports.Documents;

namespace TrialLog.Commands.Json;

/// <summary>What <c>sync --json</c> prints.</summary>
internal sealed record SyncFacts(
    string File, int FilesTakenIn, IReadOnlyDictionary<string, int> Added, IReadOnlyDictionary<string, int> Updated,
    IReadOnlyDictionary<string, int> Removed, IReadOnlyList<QuestionFacts> Waiting, IReadOnlyList<string> Remarks,
    IReadOnlyList<string> Unread)
{
    public static SyncFacts Of(SyncResult result) => new(
        result.File, result.FilesTakenIn, result.Added, result.Updated, result.Removed,
            [.. result.Waiting.Select(question => MergeFacts.Fact(question))], result.Remarks, result.Unread);
}
