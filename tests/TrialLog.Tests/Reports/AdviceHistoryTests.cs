using CsCheck;
using TrialLog.Application.Coaching;
using TrialLog.Application.Reporting;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Reports;

public class AdviceHistoryTests
{
    private static readonly ReportContents Sample = SampleContents.Of(4);

    private static Outing Outing(int number, DateOnly date, params double[] inches) => Sample.Outings[0] with
    {
        Id = SampleContents.Id(3000 + number),
        Date = date,
        Pieces = [
            .. inches.Select((length, at) => Sample.Outings[0].Pieces[0]
            with { Id = SampleContents.Id(4000 + 10 * number + at), Order = at + 1, Length = Length.FromInches(length) })],
    };

    private static GivenCard Card(int number, DateOnly date, params double[] inches) => Sample.Advice[0].Card with
    {
        Id = SampleContents.Id(5000 + number),
        GivenAt = new DateTimeOffset(date, new TimeOnly(12, 0), TimeSpan.Zero),
        Card = SampleContents.Card(inches),
    };

    private static IReadOnlyList<Advice> Of(IEnumerable<GivenCard> cards, IEnumerable<Outing> outings, int hoursEast = 0) =>
        AdviceHistory.Of(cards, outings, moment => DateOnly.FromDateTime(moment.UtcDateTime.AddHours(hoursEast)));

    [Theory]
    [InlineData(new[] { 49, 51, 51, 49.0 }, AdviceMatch.AsSuggested)]
    [InlineData(new[] { 51, 49, 49, 51.0 }, AdviceMatch.OtherOrder)]
    [InlineData(new[] { 49.05, 51, 51, 49.0 }, AdviceMatch.AsSuggested)]
    [InlineData(new[] { 49, 51.0 }, AdviceMatch.Partly)]
    [InlineData(new[] { 49, 51, 51, 49, 50.0 }, AdviceMatch.Partly)]
    [InlineData(new[] { 49, 50, 50, 50.0 }, AdviceMatch.NotPaddled)]
    [InlineData(new double[0], AdviceMatch.NotPaddled)]
    public void An_outing_follows_the_card_whose_lengths_it_has(double[] paddled, AdviceMatch match)
    {
        DateOnly day = new(2026, 5, 1);
        Advice advice = Assert.Single(Of([Card(1, day, 49, 51, 51, 49)], [Outing(1, day.AddDays(3), paddled)]));
        Assert.Equal(match, advice.Match);
        Assert.Equal(match != AdviceMatch.NotPaddled, advice.Paddled is not null);
    }

    [Fact]
    public void Of_two_outings_the_earlier_follows_the_card_in_whatever_order_they_are_told()
    {
        DateOnly day = new(2026, 5, 1);
        double[] lengths = [49, 51, 51, 49];
        Outing first = Outing(1, day, lengths), second = Outing(2, day.AddDays(1), lengths);
        foreach (Outing[] outings in new Outing[][] { [first, second], [second, first] })
            Assert.Equal(first.Id, Assert.Single(Of([Card(1, day, lengths)], outings)).Paddled!.Id);
        Outing evening = first with { Time = new(18, 0) }, morning = second with { Date = day, Time = new(7, 0) };
        Assert.Equal(morning.Id, Assert.Single(Of([Card(1, day, lengths)], [evening, morning])).Paddled!.Id);
    }

    [Fact]
    public void A_card_is_not_followed_before_it_is_given_nor_in_another_hull_nor_with_another_paddle_and_the_newest_counts()
    {
        DateOnly day = new(2026, 5, 1);
        double[] lengths = [49, 51, 51, 49];
        Assert.Null(Of([Card(1, day, lengths)], [Outing(1, day.AddDays(-1), lengths)])[0].Paddled);
        Assert.Null(Of([Card(1, day, lengths) with { PaddleId = SampleContents.Long.Id }], [Outing(1, day, lengths)])[0].Paddled);
        Assert.Null(
            Of([Card(1, day, lengths)], [Outing(1, day, lengths) with { HullId = SampleContents.Six.Id }])[0].Paddled);
        IReadOnlyList<Advice> two = Of(
            [Card(1, day, lengths), Card(2, day.AddDays(2), lengths)], [Outing(1, day.AddDays(4), lengths)]);
        Assert.Equal((null, SampleContents.Id(3001)), (two[0].Paddled?.Id, two[1].Paddled!.Id));
    }

    // Noon in London is the small hours of the next day thirteen hours east of it.
    [Theory]
    [InlineData(0, true)]
    [InlineData(13, false)]
    public void The_day_of_a_card_is_the_day_where_the_paddler_is(int hoursEast, bool followed)
    {
        DateOnly day = new(2026, 5, 1);
        Assert.Equal(followed, Of([Card(1, day, 49, 51)], [Outing(1, day, 49, 51)], hoursEast)[0].Paddled is not null);
    }

    [Fact]
    public void The_card_that_was_open_that_day_counts_and_not_an_older_one_that_fits_better()
    {
        DateOnly day = new(2026, 5, 1);
        IReadOnlyList<Advice> two = Of([Card(1, day, 49, 51), Card(2, day.AddDays(2), 46, 47)], [Outing(1, day.AddDays(4), 49, 51)]);
        Assert.All(two, given => Assert.Null(given.Paddled));
    }

    [Fact]
    public void An_outing_logged_as_the_card_s_own_is_its_own_whatever_its_lengths()
    {
        DateOnly day = new(2026, 5, 1);
        Outing own = Outing(1, day, 46, 47);
        Advice advice = Of(
            [Card(1, day, 49, 51, 51, 49) with { PaddledAs = own.Id }], [own, Outing(2, day, 49, 51, 51, 49)])[0];
        Assert.Equal((own.Id, AdviceMatch.OtherLengths), (advice.Paddled!.Id, advice.Match));
    }

    [Fact]
    public void Every_card_stands_once_every_outing_at_most_once_in_whatever_order_the_log_is_read()
    {
        var genDay = Gen.Int[0, 40].Select(days => new DateOnly(2026, 5, 1).AddDays(days));
        var genLengths = Gen.OneOf(49.0, 50, 51).Array[1, 4];
        Gen.Select(Gen.Select(genDay, genLengths).Array[0, 6], Gen.Select(genDay, genLengths).Array[0, 6]).Sample((cards, outings) =>
        {
            List<GivenCard> given = [.. cards.Select((card, at) => Card(at, card.Item1, card.Item2))];
            List<Outing> paddled = [.. outings.Select((outing, at) => Outing(at, outing.Item1, outing.Item2))];
            IReadOnlyList<Advice> history = Of(given, paddled);
            Assert.Equal(given.Select(card => card.Id).Order(), history.Select(advice => advice.Card.Id).Order());
            List<Guid> followed = [.. history.Where(advice => advice.Paddled is not null).Select(advice => advice.Paddled!.Id)];
            Assert.Equal(followed.Count, followed.Distinct().Count());
            given.Reverse();
            paddled.Reverse();
            Assert.Equal(history, Of(given, paddled));
        });
    }
}
