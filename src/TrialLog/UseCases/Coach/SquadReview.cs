using TrialLog.Domain;
using TrialLog.Reports;
using TrialLog.Tuning;

namespace TrialLog.UseCases.Coach;

/// <summary>What a whole squad does this week: every paddler's analysis, and a card for each.</summary>
internal static class SquadReview
{
    /// <summary>
    /// Analyses every paddler of the logbook, on all processors, and notes the cards as given. A paddler whose hull or
    /// paddle cannot be told is left out with the reason.
    /// </summary>
    public static SquadContents Of(Desk desk, string? hullName, string? paddleName)
    {
        ILookup<Guid, Outing> outings = desk.Logbook.Outings().ToLookup(outing => outing.PaddlerId);
        var questions = new List<TuningQuestion>();
        var leftOut = new List<string>();
        ILookup<Guid, GivenCard> cards = desk.Logbook.Cards().ToLookup(card => card.PaddlerId);
        foreach (Paddler paddler in desk.Logbook.Paddlers())
        {
            List<Outing> theirs = [.. outings[paddler.Id]];
            try
            {
                Chosen chosen = (theirs.Count == 0 && hullName is null && paddleName is null ? ByLastCard(desk, paddler, cards[paddler.Id]) : null)
                    ?? desk.Choose(paddler, hullName, paddleName, theirs);
                questions.Add(desk.Question(chosen, theirs));
            }
            catch (RequestException reason)
            {
                leftOut.Add($"{paddler.Name}: {reason.Message} A first card settles it: triallog next --paddler \"{paddler.Name}\" --paddle NAME");
            }
        }

        List<Analysis> analyses = [.. questions.AsParallel().AsOrdered().Select(Tuner.Analyse)];
        NextOuting.Record(desk, analyses);
        return new SquadContents([.. analyses.Select(analysis => SquadMember.Of(analysis, [.. outings[analysis.Paddler.Id]], desk.Today))], desk.Today, ProgramVersion.Text)
        {
            LeftOut = leftOut,
        };
    }

    // Before the first outing, the card that was given tells what is going to be paddled.
    private static Chosen? ByLastCard(Desk desk, Paddler paddler, IEnumerable<GivenCard> cards) =>
        cards.MaxBy(card => card.GivenAt) is { } last
        && desk.Logbook.Hulls().FirstOrDefault(hull => hull.Id == last.HullId) is { } hull
        && desk.Logbook.Paddles().FirstOrDefault(paddle => paddle.Id == last.PaddleId) is { } paddle
            ? new Chosen(paddler, hull, paddle)
            : null;
}
