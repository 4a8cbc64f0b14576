using System.Text.Json;
using TrialLog.Application.Coaching;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tests.Commands;
using TrialLog.Tests.Reports;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Application;

/// <summary>The tool's own report card: what was said is taken as it was said, and judged by what came after.</summary>
public class HeldSoFarTests
{
    private static readonly HeldSoFar Nothing = new(0, 0, 0, 0, 0, 0);

    private static Length In(double inches) => Length.FromInches(inches);

    // The best length is 49¼ in; half of the chance lies there, which covers an eighth of an inch on either side.
    private static Analysis Now(int outings, Standing standing = Standing.Testing)
    {
        Analysis sample = SampleContents.Of(4).Analysis;
        return sample with
        {
            Outings = outings,
            Standing = standing,
            Best = sample.Best with
            {
                Length = In(49.25),
                Probabilities = [new(In(49), 0.2), new(In(49.25), 0.5), new(In(49.5), 0.3)],
            },
        };
    }

    private static SaidThen Said(int outings, double low, double high, bool stop = false, (int, int, int)? toGo = null) =>
        new(outings, In(low), In(high), stop, toGo);

    [Theory]
    [InlineData(49.125, 49.375, 1, 0.5)]
    [InlineData(49.25, 49.375, 1, 0.25)]
    [InlineData(49, 49.5, 1, 1)]
    [InlineData(49.375, 51, 0, 0.3)]
    [InlineData(50, 51, 0, 0)]
    public void A_range_holds_the_true_best_length_with_the_chance_that_lies_in_it(double low, double high, int held, double chance)
    {
        HeldSoFar all = Nothing.With([Said(2, low, high), Said(4, 40, 60)], Now(4));
        Assert.Equal((1, held), (all.Ranges, all.RangesHeld));
        Assert.Equal(chance, all.RangesChance, 9);
    }

    [Theory]
    [InlineData(3, 1, 1, 0)]
    [InlineData(5, 1, 1, 0)]
    [InlineData(6, 1, 0, 0)]
    [InlineData(2, 1, 0, 0)]
    [InlineData(null, 0, 0, 1)]
    public void A_forecast_comes_true_where_it_was_time_to_stop_within_its_range(int? stopped, int judged, int held, int open)
    {
        // After one outing: two to four more. Four outings are logged where it never was time to stop.
        List<SaidThen> said = [Said(1, 48, 51, toGo: (3, 2, 4)), .. stopped is { } end ? (SaidThen[])[Said(end, 48, 51, stop: true)] : []];
        HeldSoFar all = Nothing.With(said, Now(stopped is null ? 4 : 9));
        Assert.Equal((judged, held, open), (all.Forecasts, all.ForecastsHeld, all.ForecastsOpen));
    }

    [Fact]
    public void What_a_card_said_counts_as_it_was_said_and_the_log_as_it_stood_where_none_was_given()
    {
        ProgressPoint[] replayed = [.. SampleContents.Of(4).Progress];
        GivenCard card = SampleContents.Of(4).Advice[0].Card with { Outings = 2, LikelyLow = In(40), LikelyHigh = In(41) };
        IReadOnlyList<SaidThen> said = HeldSoFar.Said([card], replayed);
        Assert.Equal(replayed.Select(point => point.Outings), said.Select(then => then.Outings));
        Assert.Equal((In(40), In(41)), (said[2].Low, said[2].High));
        Assert.Equal((replayed[1].LikelyLow, replayed[1].LikelyHigh), (said[1].Low, said[1].High));
    }

    [Fact]
    public void A_log_in_which_no_card_was_given_is_judged_outing_by_outing_and_by_nothing_that_came_later()
    {
        using TestProgram program = TestProgram.WithIlse();
        for (int day = 1; day <= 3; day++)
            program.Must("log", "--date", $"2026-05-0{day}", "49in,1km,5:30,6", "51in,1km,5:31,6", "51in,1km,5:32,6", "49in,1km,5:33,6");
        JsonElement held = JsonDocument.Parse(program.Must("history", "--held", "--json")).RootElement;
        Assert.Equal(3, held.GetProperty("ranges").GetInt32());
        Assert.InRange(held.GetProperty("p_range_holds").GetDouble(), 0.5, 1);
    }
}
