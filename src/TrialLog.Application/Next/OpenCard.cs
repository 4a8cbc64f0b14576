using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Application.Next;

/// <summary>The newest card that was given for a hull and paddle and not paddled yet.</summary>
internal static class OpenCard
{
    public static GivenCard? Of(Workspace workspace, Chosen chosen) => Of(workspace, chosen, DateOnly.MaxValue);

    /// <summary>As <see cref="Of(Workspace, Chosen)"/>, for an outing of that day: a card given only later cannot have been paddled.</summary>
    public static GivenCard? Of(Workspace workspace, Chosen chosen, DateOnly day) => workspace.Logbook.Cards(chosen.Paddler.Id)
        .Where(card => card.HullId == chosen.Hull.Id && card.PaddleId == chosen.Paddle.Id && DateOnly.FromDateTime(card.GivenAt.LocalDateTime) <= day)
        .MaxBy(card => card.GivenAt) is { PaddledAs: null } open ? open : null;
}
