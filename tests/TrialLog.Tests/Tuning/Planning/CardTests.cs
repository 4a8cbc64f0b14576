using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;
using TrialLog.Tuning.Information;
using TrialLog.Tuning.Planning;

namespace TrialLog.Tests.Tuning.Planning;

/// <summary>Cards to the time there is, and steps that narrow.</summary>
public class CardTests
{
    private static readonly double[] Pair = [49, 51, 51, 49];

    [Fact]
    public void A_straight_fade_moves_no_length_against_another_by_more_than_a_third_of_a_piece()
    {
        for (int pieces = 4; pieces <= 16; pieces += 2)
        {
            Even(CardOrder.OfTwo(pieces), pieces % 4 == 0 ? 1e-9 : 0.34);
            if (pieces >= 6)
                Even(CardOrder.OfThree(pieces), 1e-9);
        }

        Assert.Equal([0, 1, 1, 0, 0, 1], CardOrder.OfTwo(6));
        Assert.Equal([0, 1, 1, 0, 1, 0, 0, 1], CardOrder.OfTwo(8));
        Assert.Equal([0, 1, 2, 2, 1, 0], CardOrder.OfThree(6));

        static void Even(int[] order, double most)
        {
            double[] places = [.. order.Select((length, place) => (length, place)).GroupBy(one => one.length)
                .Select(one => one.Average(two => two.place))];
            Assert.True(places.Max() - places.Min() <= most, string.Join(' ', order));
        }
    }

    [Fact]
    public void The_first_two_cards_compare_three_lengths_with_the_best_in_the_middle()
    {
        for (int outings = 0; outings < 3; outings++)
        {
            Analysis analysis = Tuner.Analyse(LogOf.Rows(Outings(outings, Pair)));
            Length[] lengths = [.. analysis.Card.Lengths.Distinct().Order()];
            Assert.Equal(outings < 2 ? (3, 6) : (2, 4), (lengths.Length, analysis.Card.Lengths.Count));
            if (outings < 2)
                Assert.Equal(analysis.Best.Length, lengths[1]);
        }
    }

    [Fact]
    public void Whoever_has_time_for_four_pieces_gets_four()
    {
        AnalysisInput input = LogOf.Rows();
        Assert.Equal(4, Tuner.Analyse(input with { ThisOuting = new() { Pieces = 4 } }).Card.Lengths.Count);
        Assert.Equal(
            4, Tuner.Analyse(input with { ThisOuting = new() { Minutes = 42, Distance = Distance.FromMetres(1000) } }).Card.Lengths.Count);
        Assert.Equal(8, Tuner.Analyse(input with { Paddler = input.Paddler with { Trials = new() { Pieces = 8 } } }).Card.Lengths.Count);
    }

    [Theory]
    [InlineData(40, TimedBy.Hand, 500, 6)]
    [InlineData(40, TimedBy.Watch, 500, 6)]
    [InlineData(60, TimedBy.Watch, 1000, 6)]
    [InlineData(60, TimedBy.Hand, 500, 10)]
    public void The_minutes_choose_pieces_and_distance(int minutes, TimedBy timedBy, double metres, int pieces)
    {
        TrialCard card = Tuner.Analyse(LogOf.Rows() with { ThisOuting = new() { Minutes = minutes, TimedBy = timedBy } }).Card;
        Assert.Equal((metres, pieces), (card.Distance.Metres, card.Lengths.Count));
    }

    [Fact]
    public void A_distance_as_a_watch_has_it_becomes_one_that_a_person_would_paddle() =>
        Gen.Double[180, 6000].Sample(metres =>
        {
            TrialCard card = Tuner.Analyse(LogOf.Rows(Outings(3, Pair).Select(row => row with { Metres = metres }))).Card;
            Assert.Contains(card.Distance.Metres, (double[])[250, 500, 750, 1000, 1500, 2000, 3000, 4000, 5000]);
        }, iter: 10);

    [Fact]
    public void Told_pieces_that_cannot_be_mirrored_are_refused_with_the_reason()
    {
        Assert.DoesNotContain(new[] { 5, 2, 18 }, TrialHabits.MayHave);
        Assert.True(TrialHabits.MayHave(6));
    }

    [Fact]
    public void The_short_and_the_long_length_begin_by_turns_and_no_card_is_wider_than_the_one_before_unless_the_best_has_moved() =>
        Gen.Int[1, 1000].Sample(seed =>
        {
            Random random = new(seed);
            List<Row> rows = [];
            (double width, Length best, bool shortFirst)? before = null;
            for (int outing = 0; outing < 7; outing++)
            {
                Analysis analysis = Tuner.Analyse(LogOf.Rows(rows) with { GivenCards = [] });
                IReadOnlyList<Length> lengths = analysis.Card.Lengths;
                double width = lengths.Max().InchesMoreThan(lengths.Min());
                bool shortFirst = lengths[0] == lengths.Min();
                Assert.True(shortFirst || lengths[0] == lengths.Max());
                Assert.Equal(before is null || !before.Value.shortFirst, shortFirst);
                double middle = 0.5 * (lengths.Min().Inches + lengths.Max().Inches);
                if (outing >= 2 && before is { } last && Math.Abs(analysis.Best.Length.Inches - last.best.Inches) < 0.5 - 1e-6)
                    Assert.True(width <= last.width + 1e-6, $"{width} after {last.width} in outing {outing}");
                // Without a note of the best length then, the middle of the card stands for it.
                before = (width, Length.FromInches(middle), shortFirst);
                rows.AddRange(
                    lengths.Select(
                    length => new Row(outing, length.Inches, -0.35 * Math.Pow(length.Inches - 50.5, 2) + random.NextDouble() - 0.5)));
            }
        }, iter: 6);

    [Fact]
    public void A_forecast_that_was_outlived_makes_the_next_longer()
    {
        AnalysisInput input = LogOf.Rows(LogOf.Healthy(3).Select(row => row with { Percent = row.Percent * 3 }));
        Analysis first = Tuner.Analyse(input);
        Assert.Equal(Standing.Testing, first.Standing);
        GivenCard Said(int outings) => new()
        {
            Id = new Guid(outings, 1, 1, new byte[8]), PaddlerId = input.Paddler.Id, HullId = input.Hull.Id, PaddleId = input.Paddle.Id,
            GivenAt = DateTimeOffset.UnixEpoch.AddDays(outings), Card = first.Card, Best = first.Best.Length,
            LikelyLow = first.Best.LikelyLow, LikelyHigh = first.Best.LikelyHigh,
            GainLeftPercent = 0.1, DiminishingReturns = false, Outings = outings, Pieces = 4 * outings, AsOfChange = outings,
            OutingsToGo = (1, 1, 1),
        };
        OutingsToGo after = Tuner.Analyse(input with { GivenCards = [Said(0), Said(1), Said(2)] }).OutingsToGo;
        Assert.True(after.Median + after.High > first.OutingsToGo.Median + first.OutingsToGo.High, $"{first.OutingsToGo} then {after}");
    }

    [Fact]
    public void More_pieces_are_offered_with_what_they_win_and_take()
    {
        IReadOnlyList<CardOption> options = Tuner.Analyse(LogOf.Rows(LogOf.Healthy(2))).CardOptions;
        Assert.Equal(2, options.Count);
        Assert.True(options[1].Pieces == options[0].Pieces + 2 && options[1].Minutes > options[0].Minutes
            && options[1].ValuePercent > options[0].ValuePercent);
    }

    [Fact]
    public void For_a_long_race_longer_pieces_are_offered_and_take_fewer_outings()
    {
        AnalysisInput input = LogOf.Rows([]);
        IReadOnlyList<CardOption> options = Tuner.Analyse(
            input with
            {
                Paddler = input.Paddler
                with
                { Goal = new() { HullId = input.Hull.Id, Distance = Distance.FromMetres(10_000) } }
            }).CardOptions;
        Assert.Equal((4, 3000), (options[1].Pieces, options[1].Distance.Metres));
        Assert.InRange(options[1].Minutes, options[0].Minutes, 120);
        Assert.True(options[1].OutingsToGo.Median < options[0].OutingsToGo.Median / 2, $"{options[0]}, {options[1]}");
    }

    /// <summary>A race of an hour asks for a kilometre, but half an hour has no room for four of them.</summary>
    [Theory]
    [InlineData(30, 500)]
    [InlineData(45, 1000)]
    public void Little_time_is_kept_to_whatever_the_race_asks_for(int minutes, double metres)
    {
        AnalysisInput input = LogOf.Rows([]);
        Analysis analysis = Tuner.Analyse(input with
        {
            Paddler = input.Paddler with { Goal = new() { HullId = input.Hull.Id, Distance = Distance.FromMetres(10_000) } },
            ThisOuting = new() { Minutes = minutes },
        });
        Assert.Equal((4, metres), (analysis.Card.Lengths.Count, analysis.Card.Distance.Metres));
    }

    [Fact]
    public void The_bound_on_the_value_of_a_pair_is_below_the_value_and_two_lengths_have_one_contrast() =>
        Gen.Int[0, 6].Sample(outings =>
        {
            AssessedFit assessed = AssessedFit.Of(LogOf.Rows(Outings(outings, Pair)));
            TrialForm form = TrialForm.Of(assessed.Input, assessed.Fit.Table, outings).With(4);
            TrialValue value = TrialValue.Of(assessed.Input, assessed.Fit, assessed.Allowed.Settings, 50, form);
            Assert.True(value.AtLeast(1) <= 1.02 * value.Pairs.Max(pair => pair.Worth.Value));
            double ofOrder = value.Worth([48.5, 51, 51, 48.5]).Value, ofPair = value.Contrast(48.5, 51, value.PieceNoise).Value;
            Assert.Equal(1, ofOrder / ofPair, 0.02);
        }, iter: 7);

    private static IEnumerable<Row> Outings(int count, double[] card) =>
        from outing in Enumerable.Range(0, count)
        from at in Enumerable.Range(0, card.Length)
        select new Row(outing, card[at],
            outing % 3 - 0.35 * (card[at] - 50.2) * (card[at] - 50.2) - 0.3 * at + 0.6 * Math.Sin(12.9898 * outing + 78.233 * at));
}
