using TrialLog.Domain;

namespace TrialLog.UseCases;

/// <summary>The newest card that was given for a hull and paddle and not paddled yet.</summary>
internal static class OpenCard
{
    public static GivenCard? Of(Desk desk, Chosen chosen) => Of(desk, chosen, DateOnly.MaxValue);

    /// <summary>As <see cref="Of(Desk, Chosen)"/>, for an outing of that day: a card given only later cannot have been paddled.</summary>
    public static GivenCard? Of(Desk desk, Chosen chosen, DateOnly day) => desk.Logbook.Cards(chosen.Paddler.Id)
        .Where(card => card.HullId == chosen.Hull.Id && card.PaddleId == chosen.Paddle.Id && DateOnly.FromDateTime(card.GivenAt.LocalDateTime) <= day)
        .MaxBy(card => card.GivenAt) is { PaddledAs: null } open ? open : null;
}
