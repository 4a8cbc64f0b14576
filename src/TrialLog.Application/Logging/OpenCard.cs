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
        Among(workspace.Logbook.Cards(chosen.Paddler.Id), chosen.Hull.Id, chosen.Paddle.Id, day, workspace.DayOf);

    /// <summary>The card that an outing was paddled by, as far as the log tells: that of the paddle used first, else of the next.</summary>
    public static GivenCard? For(Workspace workspace, Outing outing) =>
        For(outing, workspace.Logbook.Cards(outing.PaddlerId), workspace.DayOf);

    /// <summary>As <see cref="For(Workspace, Outing)"/>, among the paddler's cards.</summary>
    public static GivenCard? For(Outing outing, IEnumerable<GivenCard> cards, Func<DateTimeOffset, DateOnly> dayOf)
    {
        List<GivenCard> all = [.. cards];
        return outing.Pieces.OrderBy(piece => piece.Order).Select(piece => piece.PaddleId).Distinct()
            .Select(paddle => Among(all, outing.HullId, paddle, outing.Date, dayOf)).FirstOrDefault(card => card is not null);
    }

    private static GivenCard? Among(
        IEnumerable<GivenCard> cards, Guid hull, Guid paddle, DateOnly day, Func<DateTimeOffset, DateOnly> dayOf) => cards
        .Where(card => card.HullId == hull && card.PaddleId == paddle && dayOf(card.GivenAt) <= day)
        // Of two in one instant the one that hides its lengths holds, so that nothing is given away.
        .MaxBy(card => (card.GivenAt, card.Blind)) is { PaddledAs: null } open ? open : null;
}
