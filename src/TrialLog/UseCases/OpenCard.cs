using TrialLog.Domain;

namespace TrialLog.UseCases;

/// <summary>The newest card that was given for a hull and paddle and not paddled yet.</summary>
internal static class OpenCard
{
    public static GivenCard? Of(Desk desk, Chosen chosen) => desk.Logbook.Cards(chosen.Paddler.Id)
        .Where(card => card.HullId == chosen.Hull.Id && card.PaddleId == chosen.Paddle.Id)
        .MaxBy(card => card.GivenAt) is { PaddledAs: null } open ? open : null;
}
