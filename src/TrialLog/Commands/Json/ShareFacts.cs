using TrialLog.Application.Workspaces;
using TrialLog.Logbook.Exchange;
using TrialLog.Logbook.Shared;
using TrialLog.Reports.Documents;

namespace TrialLog.Commands.Json;

/// <summary>What <c>share --json</c> prints.</summary>
internal sealed record ShareFacts(string File, IReadOnlyList<string> Paddlers, int Outings, int Pieces, IReadOnlyList<string> LeftOut);

/// <summary>What <c>merge --json</c> prints: counts by kind of record, and every question with both versions and the choice.</summary>
internal sealed record MergeFacts(
    bool Merged, IReadOnlyDictionary<string, int> Added, IReadOnlyDictionary<string, int> Updated,
    IReadOnlyDictionary<string, int> Removed, int Same,
    IReadOnlyList<QuestionFacts> Questions, IReadOnlyList<string> Remarks)
{
    public static MergeFacts Of(MergePlan plan, IReadOnlyDictionary<Guid, MergeChoice>? choices) => new(
        choices is not null, plan.Added, plan.Updated, plan.Removed, plan.Same,
        [.. plan.Questions.Select(question => Fact(question, choices?[question.Id]))],
        plan.Remarks);

    /// <summary>One question, with the choice made of it.</summary>
    public static QuestionFacts Fact(MergeQuestion question, MergeChoice? choice = null) =>
        new(question.Id, Why(question.Kind), question.What, question.Here, question.InFile, Chosen(choice));

    private static string? Chosen(MergeChoice? choice) => choice switch
    {
        null => null,
        MergeChoice.KeepHere => "keep-here",
        MergeChoice.TakeFromFile => "take-from-file",
        MergeChoice.Same => "same",
        _ => "later",
    };

    private static string Why(MergeQuestionKind kind) => kind switch
    {
        MergeQuestionKind.RemovedHere => "removed-here",
        MergeQuestionKind.RemovedInFile => "removed-in-file",
        MergeQuestionKind.SameName => "same-name",
        MergeQuestionKind.PieceOrder => "piece-order",
        _ => "edited-on-both",
    };
}

/// <summary>One question; <c>chosen</c> is keep-here, take-from-file or same, null while undecided.</summary>
internal sealed record QuestionFacts(Guid Id, string Question, string What, string Here, string InFile, string? Chosen);
