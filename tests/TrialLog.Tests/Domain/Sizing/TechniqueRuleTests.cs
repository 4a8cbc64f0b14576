using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Sizing;

public class TechniqueRuleTests
{
    private static TechniqueCheck Check(double hand, double? lean, bool photo = false) => new()
    {
        Id = Guid.Empty,
        PaddlerId = Guid.Empty,
        HullId = Guid.Empty,
        PaddleId = Guid.Empty,
        Length = Length.FromInches(50),
        HandAboveEyeInches = hand,
        ShaftLeanDegrees = lean,
        FromPhoto = photo,
        Date = default,
    };

    // The shaft as a line in the plane: tip at the origin, hand at its upper end. Lengthened as implied, at the same lean,
    // the hand must come to eye level.
    [Fact]
    public void The_implied_change_brings_the_hand_to_eye_level() =>
        Gen.Select(Gen.Double[-12, 12], Gen.Double[0, 60], Gen.Double[40, 60]).Sample((hand, lean, length) =>
        {
            double up = Math.Cos(lean * Math.PI / 180), eye = length * up - hand;
            double changed = length + TechniqueRule.Implied(Check(hand, lean)).ChangeInches;
            Assert.Equal(eye, changed * up, 1e-9);
        });

    [Fact]
    public void A_photo_says_more_than_the_eye_and_either_says_little() =>
        Gen.Select(Gen.Double[-12, 12], Gen.Double[0, 60]).Sample((hand, lean) =>
        {
            double photo = TechniqueRule.Implied(Check(hand, lean, photo: true)).SpreadInches,
                eye = TechniqueRule.Implied(Check(hand, lean)).SpreadInches;
            Assert.True(photo < eye);
            Assert.True(photo > StartLength.SpreadByReachInches, "A technique check must stay weaker than a measured reach.");
        });

    [Fact]
    public void Repeating_a_check_never_makes_it_surer_than_the_rule_itself() =>
        Gen.Select(Gen.Int[1, 200], Gen.Double[-6, 6]).Sample((times, hand) =>
        {
            TechniqueImplication implied = TechniqueRule.Implied(Check(hand, 0, photo: true));
            (double aligned, double spread) = TechniqueRule.Together(Enumerable.Repeat((0.0, implied), times))!.Value;
            Assert.Equal(-hand, aligned, 1e-9);
            Assert.InRange(spread, TechniqueRule.RuleSpreadInches, implied.SpreadInches + 1e-9);
        });

    [Fact]
    public void A_hand_above_the_crown_is_overhead_and_one_at_the_brow_is_not()
    {
        Assert.True(TechniqueRule.Implied(Check(5, null)).Overhead);
        Assert.False(TechniqueRule.Implied(Check(2, null)).Overhead);
        Assert.False(TechniqueRule.Implied(Check(TechniqueRule.OverheadInches, null)).Overhead);
    }

    // A photo errs by half of what the eye does, so it weighs four times as much: (4 · 0 + 1 · 5) / 5 = 1 in too high.
    [Fact]
    public void A_photo_weighs_four_times_what_the_eye_weighs()
    {
        (double aligned, double spread) = TechniqueRule.Together(
            [(0, TechniqueRule.Implied(Check(0, 0, photo: true))), (0, TechniqueRule.Implied(Check(5, 0)))])!.Value;
        Assert.Equal(-1, aligned, 1e-9);
        Assert.Equal(Math.Sqrt(0.8 + 2.25), spread, 1e-9);
    }

    [Fact]
    public void No_check_says_nothing() => Assert.Null(TechniqueRule.Together([]));
}
