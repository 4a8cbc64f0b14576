using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Next;

/// <summary>The next trial card and what the log says, and a note in the logbook that the card was given.</summary>
internal static class NextOuting
{
    /// <summary>Analyses the log for the hull and paddle.</summary>
    public static Analysis For(Workspace workspace, Chosen chosen)
    {
        Analysis analysis = Tuner.Analyse(workspace.Question(chosen));
        Record(workspace, [analysis]);
        workspace.Remember(chosen.Paddler);
        return analysis;
    }

    /// <summary>Notes the cards as given: a coach wants to see what was suggested when. Asking twice for one card gives it once.</summary>
    public static void Record(Workspace workspace, IReadOnlyList<Analysis> analyses)
    {
        if (workspace.Logbook.IsReadOnly)
            return;
        ILookup<Guid, GivenCard> before = workspace.Logbook.Cards(analyses.Count == 1 ? analyses[0].Paddler.Id : null).ToLookup(card => card.PaddlerId);
        long change = workspace.Logbook.LastChange;
        List<GivenCard> cards = [.. analyses.Where(analysis => analysis.HasCard && !IsOpen(before[analysis.Paddler.Id], analysis)).Select(analysis => Given(workspace, analysis, change))];
        if (cards.Count == 0)
            return;
        string what = cards.Count == 1 ? $"Gave {analyses.First(one => one.Paddler.Id == cards[0].PaddlerId).Paddler.Name} a card" : $"Gave {cards.Count} paddlers a card";
        workspace.Logbook.Note(what, logbook => cards.ForEach(logbook.Put));
    }

    private static bool IsOpen(IEnumerable<GivenCard> before, Analysis analysis)
    {
        GivenCard? latest = before.Where(card => card.HullId == analysis.Hull.Id && card.PaddleId == analysis.Paddle.Id).MaxBy(card => card.GivenAt);
        return latest is { PaddledAs: null } && latest.Outings == analysis.Outings && latest.Pieces == analysis.Pieces && Same(latest.Card, analysis.Card);
    }

    private static GivenCard Given(Workspace workspace, Analysis analysis, long change) => new()
    {
        Id = Guid.CreateVersion7(workspace.Now),
        PaddlerId = analysis.Paddler.Id,
        HullId = analysis.Hull.Id,
        PaddleId = analysis.Paddle.Id,
        GivenAt = workspace.Now,
        Card = analysis.Card,
        Reason = CardReason.Of(analysis),
        Best = analysis.Best.Length,
        LikelyLow = analysis.Best.LikelyLow,
        LikelyHigh = analysis.Best.LikelyHigh,
        GainLeftPercent = analysis.GainLeftPercent,
        DiminishingReturns = analysis.DiminishingReturns,
        Outings = analysis.Outings,
        Pieces = analysis.Pieces,
        AsOfChange = change,
        OutingsToGo = (analysis.OutingsToGo.Median, analysis.OutingsToGo.Low, analysis.OutingsToGo.High),
    };

    private static bool Same(TrialCard a, TrialCard b) =>
        a.Lengths.SequenceEqual(b.Lengths) && a.Distance == b.Distance && a.Effort == b.Effort && a.Rest == b.Rest;
}
