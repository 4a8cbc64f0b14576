using TrialLog.Domain.Boats;
using TrialLog.Domain.Sizing;
using TrialLog.Domain.Values;

namespace TrialLog.Tests.Domain.Sizing;

public class SteeringRuleTests
{
    // Two inches lower with a large blade, else the forward length; an inch and a half either way.
    [Theory]
    [InlineData("20.9in", null, false)]
    [InlineData("21in", null, true)]
    [InlineData("24in", 134.0, false)]
    [InlineData("18in", 135.0, true)]
    public void A_blade_is_large_by_its_area_and_else_by_its_length(string blade, double? area, bool large)
    {
        var paddle = new Paddle
        {
            Id = Guid.Empty, Name = "Rudder", Blade = Length.Parse(blade), BladeAreaSquareInches = area, Steering = true,
            Shortest = Length.Parse("52"), Longest = Length.Parse("52"), Step = default,
        };
        SteeringProposal proposal = SteeringRule.Propose(Length.Parse("51.1"), paddle);
        Assert.Equal(
            (large, Length.Parse(large ? "49" : "51"), Length.Parse(large ? "47.5" : "49.5"), Length.Parse(large ? "50.5" : "52.5")),
            (proposal.Large, proposal.Length, proposal.Low, proposal.High));
    }
}
