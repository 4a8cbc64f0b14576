using TrialLog.Application.Logging;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Coaching;

/// <summary>
/// What was suggested and what was paddled. An outing that was logged as a card's own is that card's. Any other, such as one from a
/// file, is that of the card that was open on its day (<see cref="OpenCard"/>), where it followed at least half of its lengths.
/// Each outing follows one card, and each card is paddled once.
/// </summary>
public static class AdviceHistory
{
    // Settings closer than this are the same setting: half of an eighth of an inch, and more than a mark on a shaft can be misread by.
    private const double SameSettingInches = 1 / 16.0 + 1e-6;

    /// <summary>The cards by the time they were given, each with the outing paddled by it.</summary>
    /// <param name="cards">One paddler's cards, in any order.</param>
    /// <param name="outings">The same paddler's outings, in any order.</param>
    /// <param name="dayOf">The day of a moment where the paddler is.</param>
    public static IReadOnlyList<Advice> Of(IEnumerable<GivenCard> cards, IEnumerable<Outing> outings, Func<DateTimeOffset, DateOnly> dayOf)
    {
        List<GivenCard> given = [.. cards.OrderBy(card => card.GivenAt).ThenBy(card => card.Id)];
        List<Outing> paddled = [.. outings.OrderBy(outing => outing.Date).ThenBy(outing => outing.Time ?? TimeOnly.MinValue)
            .ThenBy(outing => outing.Label, StringComparer.Ordinal).ThenBy(outing => outing.Id)];
        var byCard = new Dictionary<Guid, Outing>();
        var taken = new HashSet<Guid>();
        foreach (GivenCard card in given)
        {
            if (paddled.Find(outing => outing.Id == card.PaddledAs) is { } own && taken.Add(own.Id))
                byCard[card.Id] = own;
        }

        foreach (Outing outing in paddled.Where(outing => !taken.Contains(outing.Id)))
        {
            GivenCard? followed = OpenCard.For(outing, given.Select(card =>
                byCard.TryGetValue(card.Id, out Outing? by) ? card with { PaddledAs = by.Id } : card), dayOf);
            if (followed is not null && Follows(followed, outing) != AdviceMatch.OtherLengths)
                byCard[followed.Id] = outing;
        }

        return [.. given.Select(card => byCard.TryGetValue(card.Id, out Outing? outing)
            ? new Advice(card, outing, Follows(card, outing))
            : new Advice(card, null, AdviceMatch.NotPaddled))];
    }

    private static AdviceMatch Follows(GivenCard card, Outing outing)
    {
        IReadOnlyList<Length> suggested = card.Card.Lengths;
        List<Length> paddled = [.. outing.Pieces.OrderBy(piece => piece.Order).Select(piece => piece.Length)];
        if (suggested.Count == paddled.Count && suggested.Zip(paddled).All(pair => Same(pair.First, pair.Second)))
            return AdviceMatch.AsSuggested;

        List<Length> left = [.. paddled];
        int found = 0;
        foreach (Length length in suggested)
        {
            int at = left.FindIndex(other => Same(length, other));
            if (at < 0)
                continue;
            left.RemoveAt(at);
            found++;
        }

        return found == suggested.Count && left.Count == 0 ? AdviceMatch.OtherOrder
            : 2 * found >= suggested.Count && found > 0 ? AdviceMatch.Partly
            : AdviceMatch.OtherLengths;
    }

    private static bool Same(Length a, Length b) => Math.Abs(a.InchesMoreThan(b)) <= SameSettingInches;
}
