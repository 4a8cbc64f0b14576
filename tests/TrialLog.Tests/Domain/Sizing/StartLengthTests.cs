using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Sizing;

public class StartLengthTests
{
    [Fact]
    public void A_longer_body_never_gets_a_shorter_paddle() =>
        Gen.Select(Bodies.Some, Gen.Int[0, 6], Gen.Double[0.01, 4]).Sample((body, which, more) =>
        {
            var measure = (BodyMeasure)which;
            if (body[measure] is not { } length)
                return;
            Length longer = StartLength.From(body.With(measure, length.PlusInches(more)), null).Length;
            Assert.True(longer >= StartLength.From(body, null).Length);
        }, iter: 10_000);

    [Fact]
    public void Knowing_one_measure_more_never_widens_the_spread() =>
        Gen.Select(Bodies.Some, Bodies.All, Gen.Int[0, 6]).Sample((body, all, which) =>
        {
            var measure = (BodyMeasure)which;
            double before = StartLength.From(body.With(measure, null), null).SpreadInches;
            double after = StartLength.From(body.With(measure, all[measure]), null).SpreadInches;
            Assert.True(after <= before);
        }, iter: 10_000);

    // Published line and spread: derived from ANSUR II, n = 6,068 (Gordon et al. 2014, NATICK/TR-15/007).
    [Fact]
    public void Stature_alone_goes_by_the_surveys_line()
    {
        var start = StartLength.From(new() { Stature = Length.FromInches(68) }, null);
        Assert.Equal(0.7420 * 68 + 0.4205, start.Length.Inches, 6);
        Assert.Equal(1.24, start.SpreadInches, 2);
    }

    [Fact]
    public void A_paddle_that_suits_counts_before_reach_and_reach_before_the_rest() =>
        Bodies.All.Sample(body =>
        {
            Assert.Equal(Length.FromInches(51), StartLength.From(body, Length.FromInches(51)).Length);
            Assert.Equal(body.SeatedReach, StartLength.From(body, null).Length);
            Assert.Equal(StartLengthBasis.Segments, StartLength.From(body with { SeatedReach = null }, null).Basis);
        });
}
