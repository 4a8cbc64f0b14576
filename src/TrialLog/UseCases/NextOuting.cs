using TrialLog.Domain;
using TrialLog.Tuning;

namespace TrialLog.UseCases;

/// <summary>The next trial card and what the log says, and a note in the logbook that the card was given.</summary>
internal static class NextOuting
{
    /// <summary>Analyses the log for the hull and paddle.</summary>
    public static Analysis For(Desk desk, Chosen chosen)
    {
        Analysis analysis = Tuner.Analyse(desk.Question(chosen));
        RecordCard(desk, analysis);
        desk.Remember(chosen.Paddler);
        return analysis;
    }

    /// <summary>
    /// Notes that a card was given: a coach wants to see what was suggested when. Asking twice for one card gives it once.
    /// </summary>
    public static void RecordCard(Desk desk, Analysis analysis)
    {
        if (desk.Logbook.IsReadOnly)
            return;
        GivenCard? latest = desk.Logbook.Cards(analysis.Paddler.Id)
            .Where(card => card.HullId == analysis.Hull.Id && card.PaddleId == analysis.Paddle.Id)
            .MaxBy(card => card.GivenAt);
        if (latest is { PaddledAs: null } && latest.Outings == analysis.Outings && latest.Pieces == analysis.Pieces && Same(latest.Card, analysis.Card))
            return;
        var given = new GivenCard
        {
            Id = Guid.CreateVersion7(desk.Now),
            PaddlerId = analysis.Paddler.Id,
            HullId = analysis.Hull.Id,
            PaddleId = analysis.Paddle.Id,
            GivenAt = desk.Now,
            Card = analysis.Card,
            Best = analysis.Best.Length,
            LikelyLow = analysis.Best.LikelyLow,
            LikelyHigh = analysis.Best.LikelyHigh,
            GainLeftPercent = analysis.GainLeftPercent,
            DiminishingReturns = analysis.DiminishingReturns,
            Outings = analysis.Outings,
            Pieces = analysis.Pieces,
            AsOfChange = desk.Logbook.LastChange,
        };
        desk.Logbook.Note($"Gave {analysis.Paddler.Name} a card for {analysis.Hull.Name}", logbook => logbook.Put(given));
    }

    private static bool Same(TrialCard a, TrialCard b) =>
        a.Lengths.SequenceEqual(b.Lengths) && a.Distance == b.Distance && a.Effort == b.Effort && a.Rest == b.Rest;
}
