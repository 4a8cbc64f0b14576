using TrialLog.Domain.Log;
using TrialLog.Domain.Values;

namespace TrialLog.Application.Coaching;

/// <summary>
/// What was suggested and what was paddled. An outing that was logged as a card's own is that card's. Any other is
/// matched to the newest card for its hull given in the four weeks before it whose lengths it followed at least by half;
/// each outing follows one card, and each card is paddled once.
/// </summary>
public static class AdviceHistory
{
    /// <summary>A card older than this when the outing was paddled is not what the paddler went by. No source: chosen.</summary>
    private const int WeeksACardLasts = 4;

    // Settings closer than this are the same setting: half of an eighth of an inch, and more than a mark on a shaft can be misread by.
    private const double SameSettingInches = 1 / 16.0 + 1e-6;

    /// <summary>The cards by the time they were given, each with the outing paddled by it.</summary>
    /// <param name="cards">One paddler's cards, in any order.</param>
    /// <param name="outings">The same paddler's outings, in any order.</param>
    public static IReadOnlyList<Advice> Of(IEnumerable<GivenCard> cards, IEnumerable<Outing> outings)
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
            GivenCard? followed = given
                .Where(card => card.PaddledAs is null && !byCard.ContainsKey(card.Id) && CouldBe(card, outing)
                    && Follows(card, outing) != AdviceMatch.OtherLengths)
                .OrderBy(card => Follows(card, outing)).ThenByDescending(card => card.GivenAt).ThenBy(card => card.Id)
                .FirstOrDefault();
            if (followed is not null)
                byCard[followed.Id] = outing;
        }

        return [.. given.Select(card => byCard.TryGetValue(card.Id, out Outing? outing)
            ? new Advice(card, outing, Follows(card, outing))
            : new Advice(card, null, AdviceMatch.NotPaddled))];
    }

    // The day of the card is known in UTC and the outing's in local time, so that they may differ by one.
    private static bool CouldBe(GivenCard card, Outing outing)
    {
        int daysAfter = outing.Date.DayNumber - DateOnly.FromDateTime(card.GivenAt.UtcDateTime).DayNumber;
        return outing.HullId == card.HullId && daysAfter is >= -1 and <= 7 * WeeksACardLasts;
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
