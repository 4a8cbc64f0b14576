using TrialLog.Application.Squads;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Tests.Reports;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Application.Squads;

/// <summary>A row of the squad in words and its place on the list, each by examples at its limits.</summary>
public class SquadWordsTests
{
    private static readonly DateOnly Today = new(2026, 5, 31);

    private static readonly Analysis Testing = SampleContents.Of(8).Analysis with
    {
        Standing = Standing.Testing,
        Why = [StandingReason.TestingPays],
        Card = SampleContents.Card(49, 51, 51, 49),
    };

    private static SquadRow Row(Analysis? analysis) => new(Testing.Paddler, Testing.Hull, Testing.Paddle, analysis, Today, null, null);

    [Theory]
    [InlineData(null, "never")]
    [InlineData(-1, "today")]
    [InlineData(0, "today")]
    [InlineData(1, "1 d")]
    [InlineData(14, "14 d")]
    [InlineData(15, "2 wk")]
    [InlineData(365, "52 wk")]
    [InlineData(366, "over 1 yr")]
    public void The_last_outing_is_told_in_days_then_weeks_up_to_a_year(int? days, string says) => Assert.Equal(
        says, SquadWords.Last(Row(null) with { LastOuting = days is int ago ? Today.AddDays(-ago) : null }, Today));

    [Fact]
    public void Each_kind_of_row_says_how_it_stands_and_what_to_do()
    {
        Soreness five = Soreness.FromPoints(5);
        Analysis Best(Standing standing) => Testing with
        {
            Standing = standing,
            Best = Testing.Best with { Length = Length.FromInches(49.25) },
        };
        Analysis fixedLength = Best(Standing.Testing) with { Paddle = Testing.Paddle with { Shortest = Testing.Paddle.Longest } };
        Analysis crew = Best(Standing.CannotTell) with { Why = [StandingReason.LargeCrewsOnly] };
        GivenCard card = SampleContents.Of(8).Advice[0].Card with { By = "Sela Brand", Blind = false };
        Assert.Equal("test 49, 51", SquadWords.StandingAndThisWeek(Row(Testing)));
        Assert.Equal("test 49, 51 (Sela Brand)", SquadWords.StandingAndThisWeek(Row(Testing) with { StandingCard = card }));
        Assert.Equal("test blind", SquadWords.StandingAndThisWeek(Row(Testing) with { StandingCard = card with { Blind = true } }));
        Assert.Equal("settled: race 49¼", SquadWords.StandingAndThisWeek(Row(Best(Standing.Settled))));
        Assert.Equal("flat: race 49¼", SquadWords.StandingAndThisWeek(Row(Best(Standing.Flat))));
        Assert.Equal("cannot tell: try a solo hull", SquadWords.StandingAndThisWeek(Row(crew)));
        Assert.Equal("fixed: keep it", SquadWords.StandingAndThisWeek(Row(fixedLength)));
        Assert.Equal("…", SquadWords.StandingAndThisWeek(Row(null)));
        Assert.Equal("no paddle: choose one", SquadWords.StandingAndThisWeek(Row(null) with { Paddle = null }));
        Assert.Equal("sore 5: rest first", SquadWords.StandingAndThisWeek(Row(null) with { Soreness = five }));
        Assert.Equal("sore 5: silent 12 d", SquadWords.StandingAndThisWeek(Row(null) with { Soreness = five, DaysSilent = 12 }));
    }

    [Fact]
    public void A_coachs_card_is_handed_out_where_the_log_would_give_none_but_never_while_it_hurts()
    {
        GivenCard theirs = SampleContents.Of(8).Advice[0].Card with { By = "Sela Brand" };
        Analysis settled = Testing with { Standing = Standing.Settled }, sore = Testing with { Standing = Standing.Sore };
        Assert.True(SquadRow.CanTest(Testing));
        Assert.False(SquadRow.CanTest(settled));
        Assert.True(SquadRow.CanTest(settled, theirs));
        Assert.False(SquadRow.CanTest(settled, theirs with { By = null }));
        Assert.False(SquadRow.CanTest(sore, theirs));
    }

    [Fact]
    public void Who_hurts_comes_first_the_longest_silent_before_the_sorest()
    {
        SquadRow Sore(string name, int points, int? silent) =>
            Row(null) with { Paddler = Testing.Paddler with { Name = name }, Soreness = Soreness.FromPoints(points), DaysSilent = silent };
        SquadRow Wins(string name, double percent) => Row(Testing with { GainFromMovingPercent = percent, GainLeftPercent = 0 })
            with
        { Paddler = Testing.Paddler with { Name = name } };
        SquadRow[] rows =
        [
            Sore("silent long", 3, 9), Sore("silent, sorer", 8, 2), Sore("silent", 4, 2), Sore("sorest", 7, null), Sore("sore", 5, 0),
            Wins("much to win", 2), Wins("a little", 0.5), Wins("Also a little", 0.5) with { Paddle = null },
            Row(Testing with { Standing = Standing.Settled }),
        ];
        Assert.Equal(rows.Select(row => row.Paddler.Name), SquadOrder.WorstFirst(rows.Reverse()).Select(row => row.Paddler.Name));
    }
}
