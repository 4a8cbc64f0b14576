using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Sizing;

public class StartLengthTests
{
    // But for two: a reach grown beyond what the other measures bear out is no longer taken; and a longer hand under the same
    // fingertip puts the palm lower.
    [Fact]
    public void A_longer_body_never_gets_a_shorter_paddle() =>
        Gen.Select(Bodies.Some, Gen.Enum<BodyMeasure>(), Gen.Double[0.01, 4]).Sample((body, measure, more) =>
        {
            if (body[measure] is not { } length || measure == BodyMeasure.HandLength)
                return;
            BodyMeasures longer = body.With(measure, length.PlusInches(more));
            if (measure == BodyMeasure.SeatedReach && BodyChecks.ReachTooFar(longer) is not null)
                return;
            Assert.True(StartLength.From(longer, null).Length >= StartLength.From(body, null).Length);
        }, iter: 10_000);

    [Fact]
    public void Knowing_one_measure_more_never_widens_the_spread() =>
        Gen.Select(Bodies.Some, Bodies.All, Gen.Enum<BodyMeasure>()).Sample((body, all, measure) =>
        {
            BodyMeasures more = body.With(measure, body[measure] ?? all[measure]);
            if (BodyChecks.ReachTooFar(more) is not null)
                return;
            Assert.True(StartLength.From(more, null).SpreadInches <= StartLength.From(body.With(measure, null), null).SpreadInches);
        }, iter: 10_000);

    // Published line and spread: derived from ANSUR II, n = 6,068 (Gordon et al. 2014, NATICK/TR-15/007).
    [Fact]
    public void Stature_alone_goes_by_the_surveys_line()
    {
        var start = StartLength.From(new() { Stature = Length.FromInches(68) }, null);
        Assert.Equal(0.7735 * 68 - 2.759, start.Length.Inches, 6);
        Assert.Equal(1.755, start.SpreadInches, 3);
        Assert.Equal(StartLengthBasis.Stature, start.Basis);
        Assert.Equal(StartLengthBasis.SomeMeasures, StartLength.From(new() { ArmSpan = Length.FromInches(68) }, null).Basis);
    }

    [Fact]
    public void A_paddle_that_suits_counts_before_reach_and_reach_before_the_rest() =>
        Bodies.All.Sample(body =>
        {
            Assert.Equal(Length.FromInches(51), StartLength.From(body, Length.FromInches(51)).Length);
            Assert.Equal(body.SeatedReach, StartLength.From(body, null).Length);
            Assert.Equal(StartLengthBasis.OverheadReach, StartLength.From(body with { SeatedReach = null }, null).Basis);
            Assert.Equal(StartLengthBasis.SomeMeasures,
                StartLength.From(body with { SeatedReach = null, OverheadReach = null }, null).Basis);
        });

    // Fingertip for palm: some five inches too long (hand − palm / 2).
    [Fact]
    public void A_reach_to_the_fingertip_is_not_taken()
    {
        BodyMeasures body = new() { Stature = Length.FromInches(68), SeatedReach = Length.FromInches(55) };
        Assert.Equal(5.2, BodyChecks.ReachTooFar(body)!.Value, 0.05);
        Assert.Equal(StartLength.From(body with { SeatedReach = null }, null), StartLength.From(body, null));
        Assert.Equal(Length.FromInches(53), StartLength.From(body with { SeatedReach = Length.FromInches(53) }, null).Length);
    }

    // Someone with arms that long shows it by the fingertip too, and is believed.
    [Fact]
    public void A_reach_that_the_fingertip_bears_out_is_taken()
    {
        BodyMeasures body = new()
        {
            Stature = Length.FromInches(68), SeatedReach = Length.FromInches(55),
            OverheadReach = Length.FromInches(60.5)
        };
        Assert.Equal(Length.FromInches(55), StartLength.From(body, null).Length);
        Assert.NotNull(BodyChecks.ReachTooFar(body with { OverheadReach = Length.FromInches(56) }));
    }
}
