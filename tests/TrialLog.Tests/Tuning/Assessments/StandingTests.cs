using CsCheck;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Tuning.Assessments;

/// <summary>Where a search stands, and that nothing ends it that should not.</summary>
public class StandingTests
{
    /// <summary>A log that settles the length: mirrored outings a sharp curve apart, with a little noise.</summary>
    private static Row[] Settling(int outings = 8, double curvature = 0.8) =>
    [
        .. from outing in Enumerable.Range(0, outings)
           from one in (int[])[0, 1, 2, 3]
           let inches = 50 + ((outing + (one is 0 or 3 ? 0 : 1)) % 2 == 0 ? -1.25 : 1.25)
           select new Row(
               outing, inches, 3 * Math.Sin(outing) - curvature * (inches - 50) * (inches - 50) + 0.3 * Math.Sin(7 * outing + 3 * one)),
    ];

    [Fact]
    public void A_log_that_pins_the_length_down_is_settled()
    {
        Analysis analysis = Tuner.Analyse(LogOf.Rows(Settling()));
        Assert.Equal(Standing.Settled, analysis.Standing);
        Assert.Equal([StandingReason.NothingWorthwhileLeft], analysis.Why);
        Assert.True(analysis.DiminishingReturns);
        Assert.Equal(new OutingsToGo(0, 0, 0), analysis.OutingsToGo);
    }

    [Fact]
    public void However_many_outings_one_day_does_not_settle_it()
    {
        AnalysisInput input = LogOf.Rows(Settling());
        input = input with { Outings = [.. input.Outings.Select(outing => outing with { Date = LogOf.FirstDay })] };
        Analysis analysis = Tuner.Analyse(input);
        Assert.Equal((Standing.Testing, StandingReason.OneDayOnly), (analysis.Standing, analysis.Why[0]));
        Assert.True(analysis.OutingsToGo.Low >= 1);
    }

    [Fact]
    public void Nothing_is_settled_before_a_length_on_each_side_of_the_best_was_paddled()
    {
        AnalysisInput shorter = LogOf.Rows(
            Settling().Where(row => row.Inches < 50)
            .SelectMany(row => (Row[])[row, row with { Inches = 50, Percent = row.Percent + 1.2 }]));
        shorter = shorter with { Outings = [.. shorter.Outings.Select(Mirrored)] };
        Analysis oneSided = Tuner.Analyse(shorter);
        Assert.Contains(StandingReason.NothingLongerTried, oneSided.Why);
        Assert.False(oneSided.DiminishingReturns);

        static Outing Mirrored(Outing outing) => outing with
        {
            Pieces = [.. outing.Pieces.Take(4).Select((piece, at) => piece with { Order = at switch { 0 => 1, 1 => 2, 2 => 4, _ => 3 } })],
        };
    }

    [Fact]
    public void One_length_an_outing_by_whoever_could_change_it_cannot_tell()
    {
        Row[] rows = [
            .. from outing in Enumerable.Range(0, 20) from one in (int[])[0, 1] select new Row(
            outing, 49 + outing % 5 * 0.5, Math.Sin(3 * outing))];
        AnalysisInput input = LogOf.Rows(rows);
        Assert.Equal([StandingReason.OneLengthAnOuting], Tuner.Analyse(input).Why);
        Assert.Equal(Standing.CannotTell, Tuner.Analyse(input).Standing);
        Assert.NotEqual(Standing.CannotTell, Tuner.Analyse(input with { Paddler = input.Paddler with { SwapsOnWater = false } }).Standing);
    }

    // Three outings of one length each can still be a beginning; from the fourth on it is the way of the log.
    [Theory]
    [InlineData(3, false)]
    [InlineData(4, true)]
    public void One_length_an_outing_is_said_from_the_fourth_outing_on(int outings, bool said)
    {
        AnalysisInput input = LogOf.Rows(
            [.. from outing in Enumerable.Range(0, outings) from one in (int[])[0, 1] select new Row(
                outing, 49 + outing % 3, Math.Sin(3 * outing))]);
        Assert.Equal(said, Tuner.Analyse(input).Why.Contains(StandingReason.OneLengthAnOuting));
    }

    [Fact]
    public void A_log_of_six_seat_crews_alone_cannot_tell_in_any_hull()
    {
        AnalysisInput input = LogOf.Rows(Settling(3).Select(row => row with { Hull = Six }));
        Assert.Equal("OC6", input.Hulls[Six].Name);
        Assert.All(Tuner.Carry(input, input.Hulls, [input.Paddle]),
            one => Assert.Equal((Standing.CannotTell, StandingReason.LargeCrewsOnly), (one.Standing, one.Why[0])));
    }

    [Fact]
    public void An_odd_outing_in_another_hull_does_not_make_a_settled_length_hardly_matter() =>
        Gen.Select(Gen.Double[-6, 6], Gen.Double[-6, 6], Gen.Int[0, 4]).Sample((first, second, hull) =>
        {
            Row[] odd = [new(20, 48.75, first), new(20, 51.25, second), new(20, 51.25, -second), new(20, 48.75, first)];
            Analysis analysis = Tuner.Analyse(LogOf.Rows([.. Settling(), .. odd.Select(row => row with { Hull = hull })]));
            Assert.NotEqual(Standing.Flat, analysis.Standing);
            Assert.False(analysis.Flat);
        }, iter: 20);

    [Fact]
    public void A_hull_that_was_never_paddled_is_not_done_however_little_length_matters_in_it()
    {
        AnalysisInput input = LogOf.Rows(Settling());
        Assessment carried = Tuner.Carry(input, [input.Hulls[Six]], [input.Paddle]).Single();
        Assert.True(carried.ProbabilityWorthwhileLeft < input.Settings.StopBelow);
        Assert.Equal((Standing.Testing, StandingReason.NotPaddledHere), (carried.Standing, carried.Why[0]));
    }

    [Fact]
    public void A_dear_outing_ends_nothing_while_the_chance_is_high_but_is_said()
    {
        AnalysisInput input = LogOf.Rows(LogOf.Healthy(2));
        Analysis cheap = Tuner.Analyse(input),
            dear = Tuner.Analyse(input with { Paddler = input.Paddler with { Trials = new() { PricePercent = 1 } } });
        Assert.True(cheap.ProbabilityWorthwhileLeft > input.Settings.StopBelow);
        Assert.Contains(StandingReason.TestingPays, cheap.Why);
        Assert.DoesNotContain(StandingReason.TestingPays, dear.Why);
        Assert.Contains(StandingReason.CostsMoreThanItWins, dear.Why);
        Assert.False(dear.DiminishingReturns);
    }

    [Fact]
    public void A_long_outing_costs_more_unless_the_paddler_has_said_what_it_costs()
    {
        AnalysisInput input = LogOf.Rows(LogOf.Healthy());
        double four = Price(input), eight = Price(Asking(input, new() { Pieces = 8 }));
        Assert.Equal(0.005, four, 12);
        Assert.InRange(eight, 0.007, 0.009);
        Assert.Equal(0.02, Price(Asking(input, new() { Pieces = 8, PricePercent = 0.02 })), 12);

        static double Price(AnalysisInput input) => AssessedFit.Of(input).Says.PricePercent;
        static AnalysisInput Asking(AnalysisInput input, TrialHabits trials) =>
            input with { Paddler = input.Paddler with { Trials = trials } };
    }

    [Fact]
    public void Time_to_stop_is_said_where_it_is_settled_or_flat_and_only_there() =>
        Gen.Select(Gen.Int[1, 8], Gen.Double[0, 1.2]).Sample((outings, curvature) =>
        {
            Analysis analysis = Tuner.Analyse(LogOf.Rows(Settling(outings, curvature)));
            Assert.Equal(analysis.Standing is Standing.Settled or Standing.Flat, analysis.DiminishingReturns);
            Assert.NotEmpty(analysis.Why);
        }, iter: 15);

    private static int Six => StandardHulls.All.Select((hull, at) => (hull, at)).First(one => one.hull.Name == "OC6").at;
}
