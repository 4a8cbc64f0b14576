using CsCheck;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Sizing;

public class BodyChecksTests
{
    private static BodyMeasures With(BodyMeasure measure, string text) => BodyMeasures.Unknown.With(measure, Length.Parse(text));

    [Theory]
    [InlineData(BodyMeasure.SeatedReach, "130in", "A seated reach of 130 in is 3.3 m; did you mean 130 cm?")]
    [InlineData(BodyMeasure.Stature, "173", "A stature of 173 in is 4.4 m; did you mean 173 cm?")]
    [InlineData(BodyMeasure.SeatedReach, "50.5cm", "A seated reach of 50.5 cm is 19.9 in; did you mean 50.5 in?")]
    [InlineData(BodyMeasure.ShoulderElbow, "36", "A shoulder-elbow length of 36 in is 91 cm; did you mean 36 cm?")]
    [InlineData(BodyMeasure.SeatedReach, "3in",
        "A seated reach of 3 in is not believable (30 in to 70 in); check the number and its unit.")]
    public void A_wrong_unit_is_caught_and_asked_about(BodyMeasure measure, string typed, string says) =>
        Assert.Equal([says], BodyChecks.Problems(With(measure, typed)));

    [Fact]
    public void Every_body_measured_in_centimetres_but_read_as_inches_is_refused() =>
        Gen.Select(Bodies.All, Gen.Enum<BodyMeasure>()).Sample((body, measure) =>
        {
            Length right = body[measure]!.Value;
            string? problem = BodyChecks.ProblemWith(measure, Length.FromInches(Math.Round(right.Centimetres, 1)));
            Assert.NotNull(problem);
            Assert.EndsWith("cm?", problem);
        });

    [Fact]
    public void Bodies_like_those_of_the_survey_are_neither_refused_nor_asked_about() =>
        Bodies.All.Sample(body =>
        {
            Assert.Empty(BodyChecks.Problems(body));
            if (!BodySurvey.IsBelow(body))
                Assert.Empty(BodyChecks.Questions(body, null));
        });

    [Theory]
    [InlineData("69in", "68in", "The seated reach of 69 in is not below the stature of 68 in; measure the reach from the seat, " +
        "not from the floor.")]
    [InlineData("175cm", "173cm", "The seated reach of 68.9 in is not below the stature of 68.1 in; measure the reach from the seat, " +
        "not from the floor.")]
    public void A_reach_longer_than_stature_is_refused(string reach, string stature, string says) =>
        Assert.Equal([says], BodyChecks.Problems(new() { SeatedReach = Length.Parse(reach), Stature = Length.Parse(stature) }));

    [Fact]
    public void A_shoulder_above_the_raised_hand_is_refused() =>
        Assert.Contains("sitting shoulder height of 31 in is not below the seated reach of 30.5 in",
            Assert.Single(BodyChecks.Problems(new() { SeatedReach = Length.Parse("30.5"), SittingShoulderHeight = Length.Parse("31") })));

    // Each part of the body lies below another, however it was measured; where both are the same, one of them was measured wrongly.
    [Theory]
    [InlineData(BodyMeasure.SeatedReach, "66", BodyMeasure.Stature, "66", "from the seat, not from the floor")]
    [InlineData(BodyMeasure.SittingShoulderHeight, "32", BodyMeasure.SeatedReach, "32", "with the arm raised")]
    [InlineData(BodyMeasure.SittingShoulderHeight, "30", BodyMeasure.EyeHeight, "30", "sitting upright")]
    [InlineData(BodyMeasure.SeatedReach, "54", BodyMeasure.OverheadReach, "54", "middle of the palm")]
    [InlineData(BodyMeasure.OverheadReach, "66", BodyMeasure.Stature, "66", "from the seat, not from the floor")]
    [InlineData(BodyMeasure.PalmLength, "6", BodyMeasure.HandLength, "6", "root of the middle finger")]
    [InlineData(BodyMeasure.EyeHeight, "36", BodyMeasure.SeatedReach, "36", "with the arm raised")]
    public void A_part_that_is_no_shorter_than_what_it_is_part_of_is_refused_with_how_to_measure(
        BodyMeasure part, string partText, BodyMeasure whole, string wholeText, string advice)
    {
        string problem = Assert.Single(BodyChecks.Problems(With(part, partText).With(whole, Length.Parse(wholeText))));
        Assert.StartsWith($"The {Bare(part)} of {partText} in is not below the {Bare(whole)} of", problem);
        Assert.EndsWith(advice + (advice.StartsWith("root", StringComparison.Ordinal) ? ", the hand to its tip." : "."), problem);
        Assert.Empty(BodyChecks.Problems(With(part, partText).With(whole, Length.Parse(wholeText).PlusInches(0.1))));

        static string Bare(BodyMeasure measure) => BodyChecks.Name(measure).Split(' ', 2)[1];
    }

    [Fact]
    public void A_paddle_far_from_the_body_is_asked_about() =>
        Assert.Contains("6 in longer", Assert.Single(BodyChecks.Questions(With(BodyMeasure.SeatedReach, "50"), Length.Parse("56"))));

    [Fact]
    public void An_unlikely_share_of_stature_is_asked_about() =>
        Assert.Contains("unusually little for a stature of 75 in",
            Assert.Single(BodyChecks.Questions(With(BodyMeasure.EyeHeight, "27").With(BodyMeasure.Stature, Length.Parse("75")), null)));

    [Theory]
    [InlineData("55", LengthUnit.Inches, "5.2 in more", "not to the fingertip? In inches, not cm?")]
    [InlineData("45", LengthUnit.Centimetres, "12.3 cm less", "In cm, not inches?")]
    public void A_reach_far_from_the_other_measures_is_asked_about(string reach, LengthUnit unit, string off, string asks)
    {
        string question = Assert.Single(
            BodyChecks.Questions(With(BodyMeasure.SeatedReach, reach).With(BodyMeasure.Stature, Length.Parse("68")), null, unit));
        Assert.Contains(off, question);
        Assert.Contains("not taken", question);
        Assert.Contains(asks, question);
    }

    [Fact]
    public void A_body_below_the_surveys_smallest_hears_that_the_survey_does_not_reach_there() =>
        Assert.Matches(
            "no adult so small.*expect to end up further from it.$",
            Assert.Single(BodyChecks.Questions(With(BodyMeasure.Stature, "54"), null)));

    [Theory]
    [InlineData("3m", "A seat height of 118.1 in is not believable (0 in to 24 in); check the number and its unit.")]
    [InlineData("30in", "A seat height of 30 in is 76 cm; did you mean 30 cm?")]
    public void A_seat_as_high_as_a_house_is_refused(string typed, string says) =>
        Assert.Equal(says, Plausible.ProblemWithSeatHeight(Length.Parse(typed)));

    [Fact]
    public void A_blade_longer_than_the_paddle_is_refused() =>
        Assert.Contains("longer than the whole paddle", Plausible.ProblemWithBlade(Length.Parse("35"), Length.Parse("34")));

    [Fact]
    public void A_paddle_typed_in_centimetres_is_asked_about() =>
        Assert.Equal("A paddle of 126.4 in is 3.2 m; did you mean 126.4 cm?", Plausible.ProblemWithPaddleLength(Length.Parse("126.4")));

    [Fact]
    public void Seat_heights_far_from_the_crew_rule_are_asked_about()
    {
        Hull solo = StandardHulls.All[0] with { SeatHeight = Length.Parse("8") };
        Hull six = StandardHulls.All[2] with { SeatHeight = Length.Parse("13") };
        Assert.Contains("OC6 4 in above", Assert.Single(HullChecks.Questions([solo, six], LengthUnit.Inches)));
        Assert.Empty(HullChecks.Questions([solo, six with { SeatHeight = Length.Parse("10") }], LengthUnit.Inches));
        Assert.Empty(HullChecks.Questions([solo, six with { SeatHeight = Length.Parse("11.5") }], LengthUnit.Inches));
        Hull low = six with { Id = Guid.NewGuid(), Name = "A low one", SeatHeight = Length.Parse("5") };
        Assert.Collection(
            HullChecks.Questions([solo, six, low], LengthUnit.Inches),
            first => Assert.Contains("A low one 4 in below", first), second => Assert.Contains("OC6 4 in above", second));
    }

    // Every share of stature is asked about on both sides, by the measure's name.
    [Theory]
    [InlineData(BodyMeasure.EyeHeight, "sitting eye height")]
    [InlineData(BodyMeasure.SittingShoulderHeight, "sitting shoulder height")]
    [InlineData(BodyMeasure.ShoulderElbow, "shoulder-elbow length")]
    [InlineData(BodyMeasure.ElbowGrip, "elbow-grip length")]
    [InlineData(BodyMeasure.ShoulderBreadth, "shoulder breadth")]
    [InlineData(BodyMeasure.ArmSpan, "arm span")]
    [InlineData(BodyMeasure.OverheadReach, "overhead fingertip reach")]
    [InlineData(BodyMeasure.HandLength, "hand length")]
    [InlineData(BodyMeasure.PalmLength, "palm length")]
    public void A_share_of_stature_far_beyond_the_surveys_is_asked_about_by_name(BodyMeasure measure, string name)
    {
        Length stature = Length.FromInches(66), usual = Bodies.Usual(measure, stature);
        Assert.Empty(Asked(usual));
        Assert.Contains($" {name} of", Assert.Single(Asked(Length.FromInches(0.7 * usual.Inches))));
        Assert.Contains("unusually much", Assert.Single(Asked(Length.FromInches(1.4 * usual.Inches))));

        IEnumerable<string> Asked(Length length) => BodyChecks.Questions(new BodyMeasures { Stature = stature }.With(measure, length), null)
            .Where(question => question.Contains("unusually", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reach_that_is_asked_about_hears_what_to_do_if_it_is_right() =>
        Assert.Matches("If it is right, tell the overhead fingertip reach too, or .* the other measures.$", Assert.Single(
            BodyChecks.Questions(With(BodyMeasure.SeatedReach, "55").With(BodyMeasure.Stature, Length.Parse("68")), null)));
}
