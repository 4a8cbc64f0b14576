using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;
using TrialLog.Tuning;
using TrialLog.Tuning.Assessments;

namespace TrialLog.Tests.Tuning.Assessments;

/// <summary>Pain stands until it is gone.</summary>
public class SorenessTests
{
    private static AnalysisInput Log(params double?[] soreness)
    {
        AnalysisInput input = LogOf.Rows(LogOf.Healthy(soreness.Length));
        return input with
        {
            Outings = [.. input.Outings.Select((outing, at) => outing with
            {
                Pieces = [
                    .. outing.Pieces.Select(
                    piece => piece with { Soreness = soreness[at] is { } points ? Soreness.FromPoints(points) : null })],
            })],
        };
    }

    [Fact]
    public void Silence_does_not_heal_however_long() =>
        Gen.Int[0, 3000].Sample(days =>
        {
            AnalysisInput input = Log(0, 0, 0, 8, null, null);
            Analysis analysis = Tuner.Analyse(input with { Today = input.Outings[3].Date.AddDays(days) });
            Assert.Equal(Standing.Sore, analysis.Standing);
            Assert.False(analysis.DiminishingReturns);
            Assert.NotNull(analysis.SorenessLimit);
            Assert.Equal(Soreness.FromPoints(8), analysis.Soreness!.Worst);
            Assert.All(analysis.Card.Lengths, length => Assert.True(length <= analysis.SorenessLimit));
            Assert.True(analysis.Best.Length <= analysis.SorenessLimit);
        }, iter: 10);

    [Theory]
    [InlineData(2.5, false)]
    [InlineData(3, true)]
    [InlineData(6, true)]
    public void A_later_day_below_the_limit_says_that_it_is_gone(double told, bool stands) =>
        Assert.Equal(stands, Tuner.Analyse(Log(0, 7, null, told)).Standing == Standing.Sore);

    [Fact]
    public void A_clearance_ends_what_was_told_up_to_its_day_and_nothing_later()
    {
        AnalysisInput input = Log(0, 7, 5, null);
        Assert.Null(Standing(input, input.Outings[2].Date));
        Assert.NotNull(Standing(input, input.Outings[1].Date));
        Assert.Null(Standing(input, input.Outings[2].Date.AddDays(30)));
        Assert.NotNull(Standing(input, input.Today.AddDays(1)));

        static StandingSoreness? Standing(AnalysisInput input, DateOnly day) => Tuner.Analyse(input with
        {
            SorenessClearances = [new() { Id = Guid.Empty, PaddlerId = input.Paddler.Id, Date = day, By = "Tova Lind" }],
        }).Soreness;
    }

    [Fact]
    public void On_one_day_a_painless_piece_takes_nothing_back()
    {
        AnalysisInput input = Log(0, 0, 7);
        Outing last = input.Outings[2];
        Outing again = last with
        {
            Id = Guid.NewGuid(),
            Label = "again",
            Pieces = [.. last.Pieces.Select(piece => piece with { Id = Guid.NewGuid(), Soreness = Soreness.FromPoints(0) })]
        };
        Assert.NotNull(StandingSoreness.Of([.. input.Outings, again], [], input.Today));
        Assert.Null(StandingSoreness.Of([.. input.Outings, again with { Date = last.Date.AddDays(1) }], [], input.Today));
    }
}
