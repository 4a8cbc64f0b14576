using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;

namespace TrialLog.Application.Logging;

/// <summary>
/// Which card an outing is paddled by: the newest that was given by that day for the hull and one of the paddles, unless it was paddled
/// already. Days are those of the workspace's clock.
/// </summary>
internal static class OpenCard
{
    /// <summary>The card that is open today.</summary>
    public static GivenCard? Of(Workspace workspace, Chosen chosen) => Of(workspace, chosen, workspace.Today);

    /// <summary>
    /// As <see cref="Of(Workspace, Chosen)"/>, for an outing of that day: a card given only later cannot have been paddled.
    /// </summary>
    public static GivenCard? Of(Workspace workspace, Chosen chosen, DateOnly day) =>
        Among(workspace, workspace.Logbook.Cards(chosen.Paddler.Id), chosen.Hull.Id, chosen.Paddle.Id, day);

    /// <summary>The card that an outing was paddled by, as far as the log tells: that of the paddle used first, else of the next.</summary>
    public static GivenCard? For(Workspace workspace, Outing outing)
    {
        IReadOnlyList<GivenCard> cards = workspace.Logbook.Cards(outing.PaddlerId);
        return outing.Pieces.OrderBy(piece => piece.Order).Select(piece => piece.PaddleId).Distinct()
            .Select(paddle => Among(workspace, cards, outing.HullId, paddle, outing.Date)).FirstOrDefault(card => card is not null);
    }

    private static GivenCard? Among(Workspace workspace, IEnumerable<GivenCard> cards, Guid hull, Guid paddle, DateOnly day) => cards
        .Where(card => card.HullId == hull && card.PaddleId == paddle && workspace.DayOf(card.GivenAt) <= day)
        // Of two in one instant the one that hides its lengths holds, so that nothing is given away.
        .MaxBy(card => (card.GivenAt, card.Blind)) is { PaddledAs: null } open ? open : null;
}
