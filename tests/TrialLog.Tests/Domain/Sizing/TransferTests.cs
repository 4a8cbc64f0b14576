using CsCheck;
using TrialLog.Domain.Boats;
using TrialLog.Domain.Log;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Domain.Sizing;

public class TransferTests
{
    private static readonly Gen<Hull> AnyHull =
        from id in Gen.Guid
        from crew in Gen.Int[1, 12]
        from height in Gen.Double[2, 20]
        from measured in Gen.Bool
        select new Hull { Id = id, Name = $"hull {id}", Crew = crew, SeatHeight = measured ? Length.FromInches(height) : null };

    private static readonly Gen<Length> AnyBlade = Gen.Double[14, 26].Select(Length.FromInches);

    [Fact]
    public void A_transfer_there_and_back_is_the_identity() =>
        Gen.Select(AnyHull.Array[2, 6], AnyBlade, AnyBlade, Gen.Double[40, 60]).Sample((hulls, one, other, inches) =>
        {
            var scale = new Alignment(Length.FromInches(50), hulls);
            Length length = Length.FromInches(inches);
            Length there = scale.Carried(length, hulls[0], one, hulls[1], other);
            Assert.Equal(length, scale.Carried(there, hulls[1], other, hulls[0], one));
        });

    [Fact]
    public void A_detour_over_a_third_hull_and_blade_changes_nothing() =>
        Gen.Select(AnyHull.Array[3], AnyBlade.Array[3]).Sample((hulls, blades) =>
        {
            var scale = new Alignment(Length.FromInches(50), hulls);
            Length length = Length.FromInches(49.75);
            Length detour = scale.Carried(
                scale.Carried(length, hulls[0], blades[0], hulls[1], blades[1]), hulls[1], blades[1], hulls[2], blades[2]);
            Length direct = scale.Carried(length, hulls[0], blades[0], hulls[2], blades[2]);
            Assert.Equal(direct.Inches, detour.Inches, 1e-6);
        });

    [Fact]
    public void The_order_of_hulls_does_not_matter() =>
        Gen.Select(AnyHull.Array[1, 8], Gen.Int).Sample((hulls, seed) =>
        {
            Hull[] shuffled = [.. hulls];
            new Random(seed).Shuffle(shuffled);
            IReadOnlyDictionary<Guid, double> one = SeatHeightRule.OffsetsInches(hulls), other = SeatHeightRule.OffsetsInches(shuffled);
            Assert.All(one, pair => Assert.Equal(pair.Value, other[pair.Key]));
        });

    [Fact]
    public void An_inch_more_seat_height_wants_an_inch_more_paddle() =>
        Gen.Select(AnyHull.Array[2, 6], Gen.Double[0, 5]).Sample((hulls, more) =>
        {
            Hull[] measured = [.. hulls.Select(hull => hull with { SeatHeight = hull.SeatHeight ?? Length.FromInches(9) })];
            // The anchor is the hull that the others are measured from, so the raised one must be another.
            Hull raised = measured.OrderByDescending(hull => hull.Crew).ThenByDescending(hull => hull.Name, StringComparer.Ordinal).First();
            double before = SeatHeightRule.OffsetsInches(measured)[raised.Id];
            double after = SeatHeightRule.OffsetsInches(
                measured.Select(hull => hull.Id == raised.Id ? hull with { SeatHeight = hull.SeatHeight!.Value.PlusInches(more) } : hull))[
                raised.Id];
            Assert.Equal(before + more, after, 1e-6);
        });

    [Fact]
    public void Of_measured_hulls_the_smallest_crews_stands_by_the_crew_rule()
    {
        Hull solo = StandardHulls.All[0] with { SeatHeight = Length.Parse("8") };
        Hull six = StandardHulls.All[2] with { SeatHeight = Length.Parse("13") };
        IReadOnlyDictionary<Guid, double> offsets = SeatHeightRule.OffsetsInches([six, solo]);
        Assert.Equal((0, 5), (offsets[solo.Id], offsets[six.Id]));
    }

    // Common practice, no source: by crew alone.
    [Fact]
    public void Unmeasured_hulls_stand_by_their_crew()
    {
        var scale = new Alignment(Length.FromInches(50), StandardHulls.All);
        string[] names = ["OC1", "OC2", "OC6"];
        Assert.Equal(
            [50, 49, 51],
            names.Select(
            name => scale.LengthInches(0, StandardHulls.All.Single(hull => hull.Name == name), ExposedShaftRule.ReferenceBlade)));
    }

    // The trade's worked check (common practice, no source): a paddle 2 in longer overall, whose blade is 4 in longer, has 2 in
    // less shaft, puts the top hand 2 in lower when the blade is buried, and would need 2 in more overall length.
    [Fact]
    public void A_paddle_two_inches_longer_with_a_blade_four_inches_longer_needs_two_inches_more()
    {
        Hull solo = StandardHulls.All[0];
        var scale = new Alignment(Length.FromInches(50), [solo]);
        Length length = Length.FromInches(50), longer = Length.FromInches(52), blade = Length.FromInches(18),
            longBlade = Length.FromInches(22);

        double shaft = length.InchesMoreThan(blade), otherShaft = longer.InchesMoreThan(longBlade);
        Assert.Equal(2, shaft - otherShaft);

        Length needed = scale.Carried(length, solo, blade, solo, longBlade);
        Assert.Equal(2, needed.InchesMoreThan(longer));

        // The top hand sits a shaft's length above the water once the blade is buried: 2 in lower, upright shaft, and by the
        // technique check that very hand asks for the same 2 in.
        var lowHand = new TechniqueCheck
        {
            Id = Guid.Empty,
            PaddlerId = Guid.Empty,
            HullId = solo.Id,
            PaddleId = Guid.Empty,
            Length = longer,
            HandAboveEyeInches = otherShaft - shaft,
            ShaftLeanDegrees = 0,
            Date = default,
        };
        Assert.Equal(needed.InchesMoreThan(longer), TechniqueRule.Implied(lowHand).ChangeInches, 1e-9);
    }
}
