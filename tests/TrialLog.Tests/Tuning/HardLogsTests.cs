using TrialLog.Application.Wording;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Tuning;

/// <summary>Logs that tell little or the wrong thing: each gets a finite, sensible, explained answer and no false certainty.</summary>
public class HardLogsTests
{
    private static readonly double[] Pair = [49, 51, 51, 49];

    [Fact]
    public void An_empty_log_works_from_the_start_length_alone()
    {
        Analysis analysis = Sensible(LogOf.Rows());
        Assert.Equal(Length.FromInches(50), analysis.Best.Length);
        Assert.False(analysis.DiminishingReturns);
        Assert.Contains("start length", Verdict.Of(analysis));
        Assert.InRange(Width(analysis), 2, 3.5);
        Assert.Equal(100, analysis.Best.LikelyLow.Inches + analysis.Best.LikelyHigh.Inches, 0.07);
    }

    [Fact]
    public void One_piece_changes_nothing() =>
        Assert.Equal(Width(Sensible(LogOf.Rows())), Width(Sensible(LogOf.Rows(new Row(0, 51)))), 0.13);

    [Fact]
    public void One_length_leaves_the_range_of_the_start_length() =>
        Assert.InRange(Width(Sensible(LogOf.Rows(Outings(8, [50, 50, 50, 50])))), 0.9 * Width(Sensible(LogOf.Rows())), 4);

    [Theory]
    [InlineData(50, 3)]
    [InlineData(50, 16)]
    [InlineData(51, 12)]
    [InlineData(51, 20)]
    [InlineData(52, 20)]
    [InlineData(50, 120)]
    public void However_long_a_log_of_one_length_tells_no_other_and_never_says_stop(double inches, int outings)
    {
        Analysis nothing = Sensible(LogOf.Rows()), analysis = Sensible(LogOf.Rows(Outings(outings, [inches, inches, inches, inches])));
        Assert.False(analysis.DiminishingReturns);
        Assert.Equal(nothing.Best.LikelyLow.Inches, analysis.Best.LikelyLow.Inches, 0.4);
        Assert.Equal(nothing.Best.LikelyHigh.Inches, analysis.Best.LikelyHigh.Inches, 0.4);
    }

    [Fact]
    public void One_piece_in_a_solo_canoe_is_no_reason_to_stop_in_a_six_seat_one() =>
        Assert.False(Sensible(LogOf.Rows(new Row(0, 51)) with { Hull = StandardHulls.All[2] }).DiminishingReturns);

    [Fact]
    public void Lengths_tangled_with_the_order_of_pieces_are_no_reason_to_stop() =>
        Assert.False(Sensible(LogOf.Rows(Outings(12, [49, 49, 51, 51]))).DiminishingReturns);

    [Fact]
    public void Trials_of_several_lengths_are_not_where_the_paddler_is() =>
        Assert.Equal(Length.FromInches(50), Sensible(LogOf.Rows(Outings(3, Pair))).Current);

    [Fact]
    public void A_best_length_beyond_the_paddle_is_said_and_not_stopped_on()
    {
        AnalysisInput question = LogOf.Rows(from outing in Enumerable.Range(0, 8)
                                            from at in Enumerable.Range(0, 4)
                                            let inches = Pair[at] - outing % 2 * 2
                                            select new Row(outing, inches, -0.4 * (inches - 54) * (inches - 54) + Noise(outing, at)));
        Analysis analysis = Sensible(question with { Paddle = question.Paddle with { Longest = Length.FromInches(51) } });
        Assert.False(analysis.DiminishingReturns);
        Assert.Contains("51 in is the longest", Verdict.Of(analysis));
    }

    [Fact]
    public void Two_lengths_narrow_it_and_give_no_false_certainty()
    {
        Analysis analysis = Sensible(LogOf.Rows(Outings(6, Pair)));
        Assert.InRange(Width(analysis), 0.3, 0.9 * Width(Sensible(LogOf.Rows())));
    }

    [Fact]
    public void With_every_piece_excluded_the_start_length_stands()
    {
        Analysis analysis = Sensible(LogOf.Rows(Outings(4, Pair).Select(row => row with { Excluded = "wash" })));
        Assert.Equal(0, analysis.Pieces);
        Assert.Equal(Sensible(LogOf.Rows()).Best.LikelyHigh, analysis.Best.LikelyHigh);
    }

    [Fact]
    public void Lengths_all_on_one_side_leave_the_other_side_open()
    {
        Analysis analysis = Sensible(LogOf.Rows(Outings(6, [51, 53, 53, 51])));
        Assert.True(analysis.Best.Length < Length.FromInches(51.5));
        Assert.True(analysis.Best.WithinQuarterInch < 0.6);
    }

    [Fact]
    public void Three_spoiled_pieces_of_eight_are_outweighed_and_make_nothing_certain()
    {
        double[] eight = [49, 51, 51, 49, 49, 51, 51, 49], slow = [0, 6, 9, 0, 0, 0, 7, 0];
        Analysis analysis = Sensible(LogOf.Rows(
            Enumerable.Range(0, 3).SelectMany(outing => eight.Select((inches, at) => new Row(outing, inches,
                -0.4 * (inches - 50.5) * (inches - 50.5) - (outing == 1 ? slow[at] : 0) + 0.1 * (at % 3))))));
        Assert.InRange(analysis.Best.Length.Inches, 49.5, 51);
        Assert.InRange(Width(analysis), 0.75, 4);
    }

    [Fact]
    public void Pieces_of_200_m_by_watch_tell_less_than_by_hand()
    {
        AnalysisInput hand = LogOf.Rows(LogOf.Healthy().Select(row => row with { Metres = 200 }));
        AnalysisInput watch = hand with
        {
            Outings = [.. hand.Outings.Select(outing => outing with
                { Pieces = [.. outing.Pieces.Select(piece => piece with { TimedBy = TimedBy.Watch })] })],
        };
        Assert.True(Width(Sensible(watch)) > Width(Sensible(hand)) + 0.1, $"{Width(Sensible(watch))} {Width(Sensible(hand))}");
    }

    [Fact]
    public void Two_outings_at_another_length_after_two_hundred_at_one_make_nothing_certain()
    {
        Analysis analysis = Sensible(LogOf.Rows([.. Outings(200, [50, 50, 50, 50]),
            .. Outings(2, [51, 51, 51, 51]).Select(row => row with { Outing = row.Outing + 200 })]));
        Assert.False(analysis.DiminishingReturns, Verdict.Of(analysis));
        Assert.True(Width(analysis) > 1.5, $"{Width(analysis)}");
    }

    [Fact]
    public void An_outing_of_sixty_pieces_is_one_outing() =>
        Assert.Equal(1, Sensible(LogOf.Rows(Enumerable.Range(0, 60).Select(at => new Row(0, Pair[at % 4], -0.2 * at)))).Outings);

    [Fact]
    public void Identical_times_make_nothing_certain()
    {
        Analysis analysis = Sensible(LogOf.Rows(Outings(5, Pair).Select(row => row with { Percent = 0 })));
        Assert.True(analysis.Best.WithinQuarterInch < 0.99);
    }

    [Fact]
    public void Pieces_from_half_a_minute_to_five_hours_go_together() =>
        Sensible(
            LogOf.Rows(
            Enumerable.Range(0, 16).Select(
            at => new Row(at / 4, Pair[at % 4], at % 3) { Metres = (at % 4) switch { 0 => 90, 1 => 1000, 2 => 12_000, _ => 54_000 } })));

    [Fact]
    public void Effort_told_in_part_counts_for_what_it_is_worth()
    {
        Row[] rows = [.. Outings(6, Pair).Select((row, at) => row with { Effort = at % 3 == 0 ? null : 5.5 + at % 3 })];
        Assert.True(Width(Sensible(LogOf.Rows(rows))) >= Width(Sensible(LogOf.Rows(rows.Select(row => row with { Effort = 6 })))) - 0.2);
    }

    [Fact]
    public void A_hull_never_used_takes_the_answer_over_less_surely()
    {
        AnalysisInput question = LogOf.Rows(Outings(10, Pair));
        Analysis tuned = Sensible(question), carried = Sensible(question with { Hull = StandardHulls.All[1] });
        Assert.True(Width(carried) > Width(tuned));
        Assert.Equal(-1, carried.Best.Length.InchesMoreThan(tuned.Best.Length), 0.26);
    }

    [Fact]
    public void A_six_seat_log_says_that_it_can_hardly_tell()
    {
        AnalysisInput question = LogOf.Rows(Outings(8, Pair).Select(row => row with { Hull = 2 }));
        Analysis analysis = Sensible(question with { Hull = StandardHulls.All[2] });
        Assert.Contains("too little to tell lengths apart", Verdict.Of(analysis));
        Assert.True(Width(analysis) > 1.5);
    }

    [Fact]
    public void A_start_length_four_inches_off_is_found_out()
    {
        double[][] cards = [[49, 51, 51, 49], [50, 52, 52, 50], [52, 54, 54, 52], [53, 55, 55, 53], [53, 55, 55, 53], [52, 55.5, 55.5, 52]];
        Analysis analysis = Sensible(LogOf.Rows(cards.SelectMany((card, outing) =>
            card.Select((inches, at) => new Row(outing, inches, 0.5 * outing - 0.4 * (inches - 54) * (inches - 54) + Noise(outing, at))))));
        Assert.InRange(analysis.Best.Length.Inches, 53, 55);
        Assert.True(analysis.Best.LikelyLow < Length.FromInches(54) && analysis.Best.LikelyHigh > Length.FromInches(53.5));
    }

    [Fact]
    public void A_start_length_four_inches_off_is_not_told_from_one_outing_with_certainty()
    {
        Analysis analysis = Sensible(
            LogOf.Rows(Pair.Select((inches, at) => new Row(0, inches, -0.4 * (inches - 54) * (inches - 54) + Noise(0, at)))));
        Assert.False(analysis.DiminishingReturns);
        Assert.True(Width(analysis) > 1);
    }

    [Fact]
    public void A_paddle_that_cannot_be_set_gets_its_one_length()
    {
        AnalysisInput question = LogOf.Rows(Outings(2, Pair));
        Paddle fixedPaddle = question.Paddle with { Shortest = Length.FromInches(50), Longest = Length.FromInches(50) };
        Analysis analysis = Sensible(question with { Paddle = fixedPaddle });
        Assert.Equal(Length.FromInches(50), analysis.Best.Length);
        Assert.Equal(2, analysis.CardPaddles.Distinct().Count());
        Assert.Equal(analysis.Card.Lengths.Count, analysis.CardPaddles.Count);
        Assert.All(analysis.Card.Lengths.Zip(analysis.CardPaddles), piece => Assert.True(piece.Second.Reaches(piece.First)));
        Assert.NotNull(analysis.FixedPaddle!.Against);
        Analysis alone = Tuner.Analyse(question with { Paddle = fixedPaddle, Paddles = [fixedPaddle], Outings = [] });
        Assert.False(alone.HasCard);
        Assert.Null(alone.FixedPaddle!.Against);
    }

    [Fact]
    public void A_wide_range_in_millimetre_steps_is_planned_all_the_same()
    {
        AnalysisInput question = LogOf.Rows(Outings(3, Pair));
        Analysis analysis = Sensible(question with
        {
            Paddler = question.Paddler with { Unit = LengthUnit.Centimetres },
            Paddle = question.Paddle
                with
            { Shortest = Length.FromMillimetres(1100), Longest = Length.FromMillimetres(1450), Step = Length.FromMillimetres(1) },
        });
        Assert.Contains(" cm", Verdict.Of(analysis));
        Assert.DoesNotContain(" in,", Verdict.Of(analysis));
    }

    [Fact]
    public void Nothing_longer_than_what_did_not_hurt_is_proposed_and_the_caution_says_why()
    {
        Analysis analysis = Sensible(Sore(inches => inches > 50 ? 6 : 0));
        Assert.All(analysis.Card.Lengths, length => Assert.True(length <= Length.FromInches(49)));
        Assert.True(analysis.Best.Length <= Length.FromInches(49));
        Assert.Contains(Cautions.Of(analysis), caution => caution.Contains("did not hurt"));
        Assert.False(analysis.DiminishingReturns);
        Assert.Contains("Rest first", Verdict.Of(analysis));
    }

    [Fact]
    public void A_paddle_longer_throughout_than_what_did_not_hurt_is_to_be_left_ashore()
    {
        AnalysisInput question = Sore(inches => inches > 50 ? 6 : 0);
        Analysis analysis = Sensible(question with { Paddle = question.Paddle with { Shortest = Length.FromInches(49.5) } });
        Assert.StartsWith("Do not paddle", CardReason.Of(analysis));
        Assert.False(analysis.DiminishingReturns);
    }

    [Fact]
    public void Sore_at_every_length_the_shortest_of_late_is_the_limit()
    {
        Analysis analysis = Sensible(Sore(_ => 5));
        Assert.All(analysis.Card.Lengths, length => Assert.True(length < Length.FromInches(49)));
        Assert.Contains(Cautions.Of(analysis), caution => caution.Contains("every length") && caution.Contains("clinician"));
    }

    [Fact]
    public void Whoever_cannot_swap_on_the_water_is_told_what_that_costs()
    {
        AnalysisInput question = LogOf.Rows(new Row(0, 51), new Row(0, 51, -0.3), new Row(1, 49), new Row(1, 49, 0.2));
        Analysis swaps = Sensible(question), stays = Sensible(question with { Paddler = question.Paddler with { SwapsOnWater = false } });
        Assert.True(stays.OutingsToGo.Median > swaps.OutingsToGo.Median);
        Assert.Contains("change length in sheltered water", Verdict.Of(stays));
    }

    [Fact]
    public void A_goal_far_longer_than_the_pieces_widens_the_range()
    {
        AnalysisInput question = LogOf.Rows(Outings(10, Pair));
        Analysis near = Sensible(question), far = Sensible(question with
        {
            Paddler = question.Paddler with { Goal = new() { HullId = question.Hull.Id, Time = PieceTime.FromSeconds(4 * 3600) } },
        });
        Assert.True(Width(far) > Width(near) + 0.1);
        Assert.Equal(4 * 3600, far.GoalSeconds);
    }

    [Fact]
    public void One_outing_however_long_is_no_reason_to_stop()
    {
        Analysis analysis = Sensible(LogOf.Rows(Outings(1, [.. Enumerable.Repeat(Pair, 15).SelectMany(pair => pair)])));
        Assert.True(analysis.ProbabilityWorthwhileLeft < 0.05, $"{analysis.ProbabilityWorthwhileLeft}");
        Assert.False(analysis.DiminishingReturns);
        Assert.StartsWith("Paddle once more", Verdict.Of(analysis));
        Assert.Equal(1, analysis.OutingsToGo.Low);
    }

    [Fact]
    public void Whoever_cannot_swap_stops_five_times_surer_and_whoever_could_is_told_to_swap()
    {
        List<Analysis> seasons = [];
        for (int outings = 4; outings <= 56; outings += 4)
        {
            AnalysisInput question = LogOf.Rows(from outing in Enumerable.Range(0, outings)
                                                let inches = outing % 2 == 0 ? 49.0 : 51
                                                from at in Enumerable.Range(0, 4)
                                                select new Row(outing, inches,
                                                    -0.35 * (inches - 50) * (inches - 50) - 0.3 * at + Noise(outing, at)));
            Assert.Equal(Standing.CannotTell, Sensible(question).Standing);
            seasons.Add(Sensible(question with { Paddler = question.Paddler with { SwapsOnWater = false } }));
        }

        double surer = TuningSettings.Default.StopBelow * TuningSettings.Default.StopBetweenOutings;
        Assert.Contains(seasons, season => season.ProbabilityWorthwhileLeft > surer
            && season.ProbabilityWorthwhileLeft < TuningSettings.Default.StopBelow);
        Assert.Contains(seasons, season => season.DiminishingReturns);
        Assert.All(seasons, season => Assert.False(season.DiminishingReturns && season.ProbabilityWorthwhileLeft >= surer));
    }

    [Fact]
    public void A_log_that_is_fastest_at_both_ends_is_not_taken_for_a_flat_one()
    {
        double[] card = [48, 50, 52, 50, 48, 52];
        Analysis analysis = Sensible(LogOf.Rows(from outing in Enumerable.Range(0, 6)
                                                from at in Enumerable.Range(0, 6)
                                                select new Row(outing, card[at], 0.6 * Math.Pow(card[at] - 50, 2) + Noise(outing, at))));
        Assert.Contains(analysis.Checks, check => check.Name == "curve-upside-down");
        Assert.False(analysis.DiminishingReturns);
    }

    [Fact]
    public void Hulls_that_disagree_are_said_and_not_stopped_on()
    {
        AnalysisInput Log(double apart) => LogOf.Rows(from outing in Enumerable.Range(0, 16)
                                                      from at in Enumerable.Range(0, 4)
                                                      select new Row(outing, Pair[at] + 2 * (outing / 8) - 1,
                                                          0)
                                                      { Hull = outing % 2 } into row
                                                      let away = row.Inches - 50 - (row.Hull == 0 ? -apart : apart - 2) / 2
                                                      select row
                                                          with
                                                      {
                                                          Percent = -0.8 * away * away * (row.Hull == 0 ? 1 : 0.5)
                                                          + Noise(row.Outing, (int)row.Inches)
                                                      });
        Assert.DoesNotContain(Sensible(Log(0)).Checks, check => check.Name == "hulls-disagree");
        Analysis apart = Sensible(Log(3));
        Assert.Contains(apart.Checks, check => check.Name == "hulls-disagree");
        Assert.False(apart.DiminishingReturns);
    }

    private static IEnumerable<Row> Outings(int count, double[] card) =>
        from outing in Enumerable.Range(0, count)
        from at in Enumerable.Range(0, card.Length)
        select new Row(outing, card[at], outing % 3 - 0.35 * (card[at] - 50.2) * (card[at] - 50.2) - 0.3 * at + Noise(outing, at));

    private static AnalysisInput Sore(Func<double, double> soreness)
    {
        AnalysisInput question = LogOf.Rows(Outings(3, Pair));
        return question with
        {
            Today = LogOf.FirstDay.AddDays(12),
            Outings = [
                .. question.Outings.Select(outing =>
                outing with { Pieces = [
                .. outing.Pieces.Select(piece => piece with { Soreness = Soreness.FromPoints(soreness(piece.Length.Inches)) })] })],
        };
    }

    /// <summary>Noise of spread about 0.8 % that needs no generator.</summary>
    private static double Noise(int outing, int at) => 1.15 * Math.Sin(12.9898 * outing + 78.233 * at + 1);

    private static double Width(Analysis analysis) => analysis.Best.LikelyHigh.InchesMoreThan(analysis.Best.LikelyLow);

    private static Analysis Sensible(AnalysisInput question)
    {
        Analysis analysis = Tuner.Analyse(question);
        BestLength best = analysis.Best;
        double[] numbers =
        [
            best.WithinQuarterInch, analysis.GainFromMovingPercent, analysis.GainFromMovingSeconds, analysis.GainLeftPercent,
                analysis.GainLeftSeconds,
            analysis.GoalSeconds, analysis.ProbabilityWorthwhileLeft, analysis.Curvature.Low, analysis.Curvature.Median,
                analysis.Curvature.High,
            .. analysis.Curve.Points.SelectMany(point => (double[])[point.Percent, point.Low, point.High]),
            .. analysis.Curve.Pieces.SelectMany(piece => (double[])[piece.Percent, piece.Weight]),
        ];
        Assert.All(numbers, number => Assert.True(double.IsFinite(number)));
        Assert.True(question.Paddle.Reaches(best.Length));
        Assert.True(best.LikelyLow < best.LikelyHigh);
        Assert.InRange(best.WithinQuarterInch, 0, 1);
        Assert.InRange(analysis.ProbabilityWorthwhileLeft, 0, 1);
        // Settings below half a percent are not listed, and with fine steps there are many of those.
        Assert.InRange(best.Probabilities.Sum(one => one.Probability), 0.8, 1.0001);
        Assert.True(analysis.Curvature.Low < analysis.Curvature.Median && analysis.Curvature.Median < analysis.Curvature.High);
        Assert.All(analysis.Curve.Points, point => Assert.True(point.Low <= point.High));
        Assert.True(analysis.OutingsToGo.Low <= analysis.OutingsToGo.Median && analysis.OutingsToGo.Median <= analysis.OutingsToGo.High);
        Assert.True(analysis.GainFromMovingPercent >= 0 && analysis.GainLeftPercent >= 0);
        Assert.All(analysis.Card.Lengths, length => Assert.True(question.Paddle.Reaches(length)));
        Assert.NotEmpty(CardReason.Of(analysis));
        Assert.DoesNotContain("NaN", Verdict.Of(analysis) + CardReason.Of(analysis) + string.Concat(Cautions.Of(analysis)));
        Assert.EndsWith(".", Verdict.Of(analysis));
        return analysis;
    }
}
