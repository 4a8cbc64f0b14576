using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Pieces;
using TrialLog.Reports.Documents;
using TrialLog.TestData.Recordings.Simulation;

namespace TrialLog.Tests.Recordings;

/// <summary>The card held against what a recording shows.</summary>
public class CardReadingTests
{
    private static readonly PieceCard FourOfAKilometre = new(4, Distance.FromMetres(1000));

    public static TheoryData<string> Rows => [.. CardStudy.Rows.Select(row => row.Name)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void No_outing_under_slow_noise_is_saved_without_a_question_and_wrong(string name)
    {
        // As `recordings-study`, which runs hundreds.
        List<CardScore> scores = Scores(name);
        // Where only the number is known, half the watches tell no effort and the wind drifts the canoe at will: not quite never.
        Assert.InRange(scores.Count(s => s.WrongButPlausible), 0, name.EndsWith("lengths typed", StringComparison.Ordinal) ? 1 : 0);
        if (name.StartsWith("no noise", StringComparison.Ordinal))
            Assert.DoesNotContain(scores, s => s.Asked);
    }

    [Theory]
    [InlineData("round trips, 1 km", 0.04)]
    [InlineData("round trips, 400 to 750 m", 0.08)]
    [InlineData("one way by turns, 1 km, short rests", 0.04)]
    [InlineData("one way, easy way back, 1 km", 0.04)]
    [InlineData("one way in a row, 400 to 750 m", 0.08)]
    [InlineData("one piece fewer than the card", 0.04)]
    [InlineData("one piece more than the card", 0.04)]
    [InlineData("500 m pieces, card of 1 km", 0.08)]
    public void Few_pieces_are_missed_under_slow_noise_and_the_stated_error_holds(string name, double mostMissed)
    {
        List<CardScore> scores = Scores(name);
        Assert.InRange(scores.Sum(s => s.Missed) / (double)scores.Sum(s => s.True), 0, mostMissed);
        double holds = scores.SelectMany(s => s.Speeds).Average(s => Math.Abs(s.Error) <= 1.6449 * s.Stated ? 1.0 : 0);
        Assert.InRange(holds, 0.8, 0.98);
    }

    [Fact]
    public void Pieces_one_way_with_an_easy_way_back_are_not_taken_for_round_trips_in_a_current_that_is_not_there()
    {
        var plan = new OutingPlan
        {
            Speeds = [3, 3.05, 3.02, 3], Leg = 1000, Shape = OutingShape.EasyReturn, PauseBeforeReturn = 8,
            Sensors = false, Watch = WatchFaults.None
        };
        RecordedOuting read = Recorded.Read(plan);
        RecordedOuting byCard = read.For(FourOfAKilometre);
        Assert.Empty(byCard.Questions);
        Assert.Equal(PieceShape.EasyWayBack, byCard.Shape);
        Assert.All(byCard.Kept.Zip(plan.Speeds), pair => Assert.Equal(pair.Second, pair.First.MetresPerSecond, 0.08));

        // By their number alone four round trips would do as well; how the canoe drifted at rest tells.
        Assert.Empty(read.For(new PieceCard(4)).Questions);
        Assert.Equal(PieceShape.EasyWayBack, read.For(new PieceCard(4)).Shape);

        // Where the wind took it as half of that current would have, nothing does, so it is asked; the usual distance may tell.
        RecordedOuting windy = Recorded.Read(plan with { Drift = (0.21, 0), PauseBeforeReturn = 0 });
        RecordedOuting byNumber = windy.For(new PieceCard(4));
        Assert.Equal([QuestionKind.Shape], byNumber.Questions.Select(q => q.Kind));
        Assert.Empty(byNumber.As(PieceShape.EasyWayBack).Questions);
        Assert.Equal(4, byNumber.As(PieceShape.EasyWayBack).Kept.Count);
        Assert.Equal((PieceShape.EasyWayBack, 0), Told(windy.For(new PieceCard(4, Usual: Distance.FromMetres(1000)))));
        Assert.Equal((PieceShape.RoundTrips, 0), Told(windy.For(new PieceCard(4, Usual: Distance.FromMetres(2000)))));

        // Heart and stroke rate tell.
        RecordedOuting sensed = Recorded.Read(plan with { Sensors = true }).For(new PieceCard(4));
        Assert.Equal(PieceShape.EasyWayBack, sensed.Shape);
        Assert.Empty(sensed.Questions);
    }

    [Fact]
    public void Short_rests_between_pieces_out_and_home_do_not_make_round_trips_of_them()
    {
        RecordedOuting read = Recorded.Read(new OutingPlan
        {
            Speeds = [3, 3.05, 3.02, 3], Leg = 1000, Shape = OutingShape.Alternating, Rest = 30, Watch = WatchFaults.None,
        });
        Assert.Equal([Course.Out, Course.Back, Course.Out, Course.Back], read.For(FourOfAKilometre).Kept.Select(p => p.Course));
        Assert.Empty(read.For(FourOfAKilometre).Questions);
        Assert.Equal([Course.RoundTrip, Course.RoundTrip],
            read.For(new PieceCard(2, Distance.FromMetres(2000))).Kept.Select(p => p.Course));
    }

    [Fact]
    public void Pieces_of_half_the_cards_distance_are_asked_about_and_can_be_confirmed()
    {
        RecordedOuting read = Recorded.Read(new OutingPlan { Speeds = [3, 3.05, 3.02, 3], Leg = 250, Watch = WatchFaults.None })
            .For(FourOfAKilometre);
        RecordingQuestion question = Assert.Single(read.Questions);
        Assert.Equal(QuestionKind.Distance, question.Kind);
        Assert.True(question.CanBeConfirmed);
        Assert.Empty(read.Confirm(QuestionKind.Distance).Questions);
    }

    [Fact]
    public void A_correction_is_undone_and_a_card_does_not_undo_it()
    {
        RecordedOuting read = Recorded.Read(new OutingPlan { Speeds = [3, 3.05, 3.02, 3], Watch = WatchFaults.None }).For(FourOfAKilometre);
        int first = read.Proposals.TakeWhile(p => !p.Kept).Count();
        RecordedOuting dropped = read.Drop(first).For(new PieceCard(3));
        Assert.Equal(3, dropped.Kept.Count);
        Assert.Empty(dropped.Questions);
        Assert.Equal(read.Proposals, dropped.Before!.Proposals);
        Assert.Null(read.Before);
    }

    [Fact]
    public void Twice_the_noise_makes_twice_the_error_and_a_longer_piece_a_smaller_one()
    {
        double Error(double wander, double leg) => Recorded.Read(new OutingPlan
        {
            Speeds = [3, 3.05, 3.02, 3], Leg = leg,
            Watch = new WatchFaults { Wander = wander, WanderSeconds = 60, Slow = 0, Dropouts = 0, Glitches = 0 },
        }).For(new PieceCard(4)).Kept.Average(p => p.SpeedErrorPercent);

        Assert.InRange(Error(3, 500) / Error(1.5, 500), 1.5, 2.6);
        Assert.InRange(Error(2, 1000) / Error(2, 500), 0.4, 0.75);
    }

    [Theory]
    [InlineData("round trips, 1 km, lengths typed beside a card of 1 km")]
    [InlineData("one way, easy way back, 1 km, lengths typed beside a card of 1 km")]
    [InlineData("one way by turns, 1 km, lengths typed")]
    public void Typed_lengths_are_not_asked_about_where_the_usual_distance_or_the_number_tells(string name) =>
        Assert.DoesNotContain(Scores(name), s => s.Asked);

    private static (PieceShape, int) Told(RecordedOuting outing) => (outing.Shape, outing.Questions.Count);

    private static List<CardScore> Scores(string name)
    {
        var draw = CardStudy.Rows.First(row => row.Name == name).Draw;
        return [.. Enumerable.Range(9000, 12).Select(seed => CardStudy.Score(draw, seed))];
    }
}
