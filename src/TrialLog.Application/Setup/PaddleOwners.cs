using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;

namespace TrialLog.Application.Setup;

/// <summary>A paddle of which nobody said whose it is.</summary>
/// <param name="Paddle">The paddle.</param>
/// <param name="UsedBy">Who paddled with it, most often first.</param>
internal sealed record OwnerQuestion(Paddle Paddle, IReadOnlyList<Paddler> UsedBy)
{
    /// <summary>The likeliest owner: the only one who used it; null where nobody did, or several, as with a club's paddle.</summary>
    public Paddler? Suggestion => UsedBy is [var only] ? only : null;

    /// <summary>The question with its answers, in a sentence.</summary>
    public string Says => $"Whose is {Quoted.Visible(Paddle.Name)}? "
        + (UsedBy.Count == 0 ? "Nobody has paddled with it yet."
            : $"{string.Join(", ", UsedBy.Select(paddler => Quoted.Visible(paddler.Name)))} " +
                $"{(UsedBy.Count == 1 ? "has" : "have")} paddled with it.");
}

/// <summary>Asks once, by who used what, whose the paddles are in a logbook from before paddles had owners.</summary>
internal static class PaddleOwners
{
    private const string Asked = "owners-asked";

    /// <summary>What is to be asked; nothing where one person keeps the logbook, since all is theirs.</summary>
    public static IReadOnlyList<OwnerQuestion> Questions(Workspace workspace)
    {
        IReadOnlyList<Paddler> paddlers = workspace.Logbook.Paddlers();
        List<Paddle> unsaid = [.. workspace.Logbook.Paddles().Where(paddle => paddle.OwnerId is null && !paddle.BelongsToClub)];
        if (paddlers.Count < 2 || unsaid.Count == 0)
            return [];
        Dictionary<Guid, Paddler> byId = paddlers.ToDictionary(paddler => paddler.Id);
        ILookup<Guid, PaddleUse> uses = workspace.Logbook.PaddleUses().ToLookup(use => use.PaddleId);
        return
        [
            .. unsaid.Select(paddle => new OwnerQuestion(paddle,
                [.. uses[paddle.Id].OrderByDescending(use => use.Pieces).ThenBy(use => use.PaddlerId)
                    .Select(use => byId.GetValueOrDefault(use.PaddlerId)).OfType<Paddler>()])),
        ];
    }

    /// <summary>Whether to point at the questions: once, the first time that there are any.</summary>
    public static bool AreNew(Workspace workspace)
    {
        if (workspace.Logbook.IsReadOnly || workspace.Logbook.Setting(Asked) is not null || Questions(workspace).Count == 0)
            return false;
        workspace.Logbook.SaveSetting(Asked, "yes");
        return true;
    }

    /// <summary>Takes the answers down in one change.</summary>
    /// <param name="workspace">The open logbook.</param>
    /// <param name="answers">For each paddle its owner; null for the club.</param>
    public static void Answer(Workspace workspace, IReadOnlyList<(Paddle Paddle, Paddler? Owner)> answers)
    {
        if (answers.Count > 0)
            workspace.Logbook.Change($"Said whose {answers.Count} paddles are", logbook =>
            {
                foreach ((Paddle paddle, Paddler? owner) in answers)
                    logbook.Put(paddle with { OwnerId = owner?.Id, BelongsToClub = owner is null });
            });
    }
}
