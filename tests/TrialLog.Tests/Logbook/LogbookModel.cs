using System.Text.Json;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Logbook;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Logbook;

/// <summary>A logbook as plain dictionaries: what the real one must agree with.</summary>
internal sealed record LogbookModel
{
    public required Dictionary<Guid, Hull> Hulls { get; init; }
    public Dictionary<Guid, Paddler> Paddlers { get; init; } = [];
    public Dictionary<Guid, Paddle> Paddles { get; init; } = [];
    public Dictionary<Guid, Outing> Outings { get; init; } = [];
    public Dictionary<Guid, GivenCard> Cards { get; init; } = [];
    public Dictionary<Guid, TechniqueCheck> Checks { get; init; } = [];
    public Dictionary<Guid, SorenessClearance> Clearances { get; init; } = [];
    public Dictionary<Guid, Decision> Decisions { get; init; } = [];
    public Dictionary<Guid, CoachNote> Notes { get; init; } = [];

    public static LogbookModel New() => new() { Hulls = StandardHulls.All.ToDictionary(hull => hull.Id) };

    public LogbookModel Copy() => new()
    {
        Hulls = new(Hulls),
        Paddlers = new(Paddlers),
        Paddles = new(Paddles),
        Outings = new(Outings),
        Cards = new(Cards),
        Checks = new(Checks),
        Clearances = new(Clearances),
        Decisions = new(Decisions),
        Notes = new(Notes),
    };

    public void RemoveOuting(Guid id)
    {
        Outings.Remove(id);
        RemoveNotesAbout(id);
        foreach (GivenCard card in Cards.Values.Where(card => card.PaddledAs == id).ToList())
            Cards[card.Id] = card with { PaddledAs = null };
    }

    public void RemoveCard(Guid id)
    {
        Cards.Remove(id);
        RemoveNotesAbout(id);
    }

    public void RemovePaddler(Guid id)
    {
        Paddlers.Remove(id);
        RemoveNotesAbout(id);
        foreach (Outing outing in Outings.Values.Where(outing => outing.PaddlerId == id).ToList())
            RemoveOuting(outing.Id);
        RemoveCards(card => card.PaddlerId == id);
        foreach (TechniqueCheck check in Checks.Values.Where(check => check.PaddlerId == id).ToList())
            Checks.Remove(check.Id);
        foreach (Guid clearance in Clearances.Values.Where(x => x.PaddlerId == id).Select(x => x.Id).ToList())
            Clearances.Remove(clearance);
        foreach (Guid decision in Decisions.Values.Where(x => x.PaddlerId == id).Select(x => x.Id).ToList())
            Decisions.Remove(decision);
        foreach (Paddle paddle in Paddles.Values.Where(x => x.OwnerId == id).ToList())
            Paddles[paddle.Id] = paddle with { OwnerId = null };
    }

    public void RemoveHull(Guid id)
    {
        Hulls.Remove(id);
        RemoveCards(card => card.HullId == id);
    }

    public void RemovePaddle(Guid id)
    {
        Paddles.Remove(id);
        RemoveCards(card => card.PaddleId == id);
    }

    public bool UsesHull(Guid id) => Outings.Values.Any(x => x.HullId == id)
        || Checks.Values.Any(x => x.HullId == id) || Decisions.Values.Any(x => x.HullId == id)
            || Paddlers.Values.Any(x => x.Goal?.HullId == id);

    public bool UsesPaddle(Guid id) => Outings.Values.Any(x => x.Pieces.Any(piece => piece.PaddleId == id))
        || Checks.Values.Any(x => x.PaddleId == id) || Decisions.Values.Any(x => x.PaddleId == id);

    private void RemoveCards(Func<GivenCard, bool> which)
    {
        foreach (GivenCard card in Cards.Values.Where(which).ToList())
            RemoveCard(card.Id);
    }

    private void RemoveNotesAbout(Guid id)
    {
        foreach (CoachNote note in Notes.Values.Where(note => note.AboutId == id).ToList())
            Notes.Remove(note.Id);
    }

    /// <summary>Everything in it as text, in an order of its own, so that two can be compared to the last digit.</summary>
    public string Text() =>
        Text(Paddlers.Values, Hulls.Values, Paddles.Values, Outings.Values, Cards.Values, Checks.Values, Clearances.Values,
        Decisions.Values, Notes.Values);

    public static string Text(LogbookSnapshot log) =>
        Text(log.Paddlers, log.Hulls, log.Paddles, log.Outings, log.Cards, log.TechniqueChecks, log.SorenessClearances,
            log.Decisions, log.Notes);

    private static string Text(IEnumerable<Paddler> paddlers, IEnumerable<Hull> hulls, IEnumerable<Paddle> paddles,
        IEnumerable<Outing> outings, IEnumerable<GivenCard> cards, IEnumerable<TechniqueCheck> checks,
        IEnumerable<SorenessClearance> clearances, IEnumerable<Decision> decisions, IEnumerable<CoachNote> notes) =>
        JsonSerializer.Serialize(new
        {
            paddlers = paddlers.OrderBy(x => x.Id),
            hulls = hulls.OrderBy(x => x.Id),
            paddles = paddles.OrderBy(x => x.Id)
                .Select(
                x => new
                {
                    x.Id, x.Name, x.Blade, x.BladeAreaSquareInches, x.Steering, x.Shortest, x.Longest, x.Step, x.OwnerId,
                    x.BelongsToClub
                }),
            outings = outings.OrderBy(x => x.Id),
            cards = cards.OrderBy(x => x.Id),
            toGo = cards.OrderBy(x => x.Id).Select(x => $"{x.OutingsToGo}"),
            clearances = clearances.OrderBy(x => x.Id),
            decisions = decisions.OrderBy(x => x.Id),
            checks = checks.OrderBy(x => x.Id),
            notes = notes.OrderBy(x => x.Id),
        }, Written);

    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true };
}
