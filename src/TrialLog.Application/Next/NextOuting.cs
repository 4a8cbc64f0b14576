using TrialLog.Application.Logging;
using TrialLog.Application.Wording;
using TrialLog.Application.Workspaces;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Application.Next;

/// <summary>What was asked for of the next card.</summary>
internal sealed record CardWish
{
    /// <summary>Nothing beyond the card that the log asks for.</summary>
    public static readonly CardWish None = new();

    /// <summary>What differs for this outing alone.</summary>
    public TrialHabits ThisOuting { get; init; } = TrialHabits.Untold;

    /// <summary>A coach's lengths instead of the program's; empty for the program's.</summary>
    public IReadOnlyList<Length> Lengths { get; init; } = [];

    /// <summary>The coach.</summary>
    public string? By { get; init; }

    /// <summary>Why.</summary>
    public string? Because { get; init; }

    /// <summary>Whether the paddler is not to know the lengths until the times are in.</summary>
    public bool Blind { get; init; }

    /// <summary>Whether no card but the one that stands was asked for.</summary>
    public bool IsPlain => ThisOuting == TrialHabits.Untold && Lengths.Count == 0;
}

/// <summary>The next trial card and what the log says, and a note in the logbook that the card was given.</summary>
internal static class NextOuting
{
    /// <summary>Analyses the log for the hull and paddle.</summary>
    public static Analysis For(Workspace workspace, Chosen chosen) => For(workspace, chosen, CardWish.None).Analysis;

    /// <summary>As <see cref="For(Workspace, Chosen)"/>, with what was asked for of the card; gives the card as it is noted.</summary>
    /// <exception cref="RequestException">A coach's card lacks who gave it, or a length cannot be set.</exception>
    public static (Analysis Analysis, GivenCard Card) For(Workspace workspace, Chosen chosen, CardWish wish)
    {
        Analysis analysis = Tuner.Analyse(workspace.Question(chosen) with { ThisOuting = wish.ThisOuting });
        if (wish.IsPlain && StandingCard(workspace, analysis) is { } standing)
            return (analysis with { Card = standing.Card }, standing);
        GivenCard card = Wished(workspace, analysis, wish);
        GivenCard kept = analysis.HasCard || card.By is not null ? Record(workspace, [card])[0] : card;
        workspace.Remember(chosen.Paddler);
        return (analysis with { Card = kept.Card }, kept);
    }

    /// <summary>Notes the cards as given: a coach wants to see what was suggested when. Asking twice for one card gives it once.</summary>
    public static void Record(Workspace workspace, IReadOnlyList<Analysis> analyses) =>
        Record(workspace,
            [.. analyses.Where(analysis => analysis.HasCard && StandingCard(workspace, analysis) is null)
            .Select(analysis => Given(workspace, analysis))]);

    /// <summary>
    /// The coach's or blind card that is open for an analysis: it stands until it is paddled or another outing is logged; null where there
    /// is none.
    /// </summary>
    public static GivenCard? StandingCard(Workspace workspace, Analysis analysis) =>
        StandingCard(OpenCard.Of(workspace, new Chosen(analysis.Paddler, analysis.Hull, analysis.Paddle)), analysis);

    /// <summary>As <see cref="StandingCard(Workspace, Analysis)"/>, where the open card is known.</summary>
    public static GivenCard? StandingCard(GivenCard? open, Analysis analysis) =>
        open is { } card && (card.By is not null || card.Blind)
            && card.Outings == analysis.Outings && card.Pieces == analysis.Pieces ? card : null;

    private static List<GivenCard> Record(Workspace workspace, List<GivenCard> cards)
    {
        if (workspace.Logbook.IsReadOnly || cards.Count == 0)
            return cards;
        ILookup<Guid, GivenCard> before = workspace.Logbook.Cards(cards.Count == 1 ? cards[0].PaddlerId : null)
            .ToLookup(card => card.PaddlerId);
        List<GivenCard> kept = [.. cards.Select(card => Open(before[card.PaddlerId], card) ?? card)], fresh = [.. kept.Intersect(cards)];
        if (fresh.Count > 0)
        {
            string what = fresh.Count == 1 ? $"Gave {workspace.Logbook.Paddlers().First(one => one.Id == fresh[0].PaddlerId).Name} a card"
                : $"Gave {fresh.Count} paddlers a card";
            workspace.Logbook.Note(what, logbook => fresh.ForEach(logbook.Put));
        }

        return kept;
    }

    // The card that is open already, where it is the same; a blind one stays open whatever order it has, so that asking again reveals
    // nothing.
    private static GivenCard? Open(IEnumerable<GivenCard> before, GivenCard card)
    {
        GivenCard? latest = before.Where(one => one.HullId == card.HullId && one.PaddleId == card.PaddleId).MaxBy(one => one.GivenAt);
        return latest is { PaddledAs: null } && latest.Outings == card.Outings && latest.Pieces == card.Pieces
            && latest.Blind == card.Blind && latest.By == card.By && latest.Because == card.Because && Same(latest, card) ? latest : null;
    }

    private static bool Same(GivenCard a, GivenCard b) =>
        a.Card.Distance == b.Card.Distance && a.Card.Effort == b.Card.Effort && a.Card.Rest == b.Card.Rest
        && (a.Blind ? a.Card.Lengths.Order().SequenceEqual(b.Card.Lengths.Order()) : a.Card.Lengths.SequenceEqual(b.Card.Lengths));

    private static GivenCard Given(Workspace workspace, Analysis analysis) => new()
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
        AsOfChange = workspace.Logbook.LastChange,
        OutingsToGo = (analysis.OutingsToGo.Median, analysis.OutingsToGo.Low, analysis.OutingsToGo.High),
    };

    private static GivenCard Wished(Workspace workspace, Analysis analysis, CardWish wish)
    {
        GivenCard card = Given(workspace, analysis);
        if (wish.Lengths.Count > 0)
        {
            string by = NameRule.Checked(
                wish.By ?? throw new RequestException("A coach's card says whose it is: --by WHO --because TEXT."), "coach");
            if (string.IsNullOrWhiteSpace(wish.Because))
                throw new RequestException("A coach's card says why: --because TEXT; both cards are kept.");
            foreach (Length length in wish.Lengths)
            {
                if (Logging.OutingProblems.OfLength(analysis.Paddle, length) is { } problem)
                    throw new RequestException(problem);
                if (analysis.SorenessLimit is { } limit && length > limit)
                    throw new RequestException(
                        $"{Say.Length(length, analysis.Paddler.Unit)} is longer than what did not hurt " +
                        $"({Say.Quarter(limit, analysis.Paddler.Unit)}); rest first, or say that it is gone: triallog " +
                        $"soreness clear --by WHO");
            }

            card = card with
            {
                By = by,
                Because = wish.Because,
                Reason = $"{by}: {wish.Because}",
                OwnLengths = analysis.Card.Lengths,
                Card = analysis.Card with { Lengths = Mirrored(wish.Lengths, wish.ThisOuting.Pieces ?? analysis.Card.Lengths.Count) },
            };
        }

        return wish.Blind ? Blinded(card) : card;
    }

    /// <summary>
    /// Lengths in the order to paddle them: a few in mirrored order, as often as there are pieces; as many as there are pieces as they are.
    /// </summary>
    internal static IReadOnlyList<Length> Mirrored(IReadOnlyList<Length> lengths, int pieces)
    {
        if (lengths.Count >= pieces)
            return lengths;
        List<Length> order = [];
        while (order.Count < pieces)
            order.AddRange(order.Count / lengths.Count % 2 == 0 ? lengths : lengths.Reverse());
        return [.. order.Take(Math.Max(pieces - pieces % (2 * lengths.Count), 2 * lengths.Count))];
    }

    // Which length comes first must not be guessed from which comes first as a rule.
    private static GivenCard Blinded(GivenCard card)
    {
        IReadOnlyList<Length> lengths = card.Card.Lengths;
        List<Length> distinct = [.. lengths.Distinct()];
        bool turned = (card.Id.ToByteArray()[^1] & 1) == 1;
        return card with
        {
            Blind = true,
            Reason = "Lengths that the paddler does not know until the times are in.",
            Card = turned ? card.Card
                with
            { Lengths = [.. lengths.Select(length => distinct[distinct.Count - 1 - distinct.IndexOf(length)])] } : card.Card,
        };
    }
}
